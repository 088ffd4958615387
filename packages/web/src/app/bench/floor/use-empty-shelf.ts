import { numberOfDecimal } from "@pinwright/kernel";
import { useMemo } from "react";
import { useView } from "../../book/desk.tsx";
import { usePick } from "../../words.tsx";

/** Parts of the book of which nothing lies on the shelf, as far as its movements tell: what a machine takes most of first. */
export function useEmptyShelf(): readonly string[] {
  const pick = usePick();
  const stock = useView("stock", null);
  return useMemo(
    () =>
      [...(stock?.values() ?? [])]
        .filter(
          ({ count, isInBook, inMachine }) => isInBook && inMachine > 0n && count !== null && count <= 0n,
        )
        .sort((a, b) => numberOfDecimal(b.inMachine) - numberOfDecimal(a.inMachine))
        .map(({ id, label, labelZh }) => pick(label, labelZh) || id),
    [stock, pick],
  );
}
