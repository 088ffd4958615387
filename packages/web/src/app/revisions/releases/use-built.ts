import type { KeptUnit } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { call } from "../../../api/call.ts";
import { useDesk } from "../../book/desk.tsx";

/** Units of the open book by the revision that they were begun to. */
export function useBuilt(): ReadonlyMap<string, readonly KeptUnit[]> {
  const desk = useDesk();
  const { bookId } = desk;
  const [units, setUnits] = useState<readonly KeptUnit[]>([]);
  useEffect(() => {
    let wanted = true;
    const ask = (): void => {
      call("units", { parts: {}, query: { book: bookId } }).then(
        (all) => wanted && setUnits(all),
        () => undefined,
      );
    };
    ask();
    const stop = desk.onServer(({ type }) => type === "facts" && ask());
    return () => {
      wanted = false;
      stop();
    };
  }, [desk, bookId]);
  const by = new Map<string, KeptUnit[]>();
  for (const unit of units) by.set(unit.revision, [...(by.get(unit.revision) ?? []), unit]);
  return by;
}
