import { Button } from "@mantine/core";
import type { KeptDefect } from "@pinwright/contract";
import { Link } from "wouter";
import { useDesk } from "../../book/desk.tsx";
import { newProblemAddress } from "../../service/address.ts";
import { useWords } from "../../words.tsx";
import { useDefectWords } from "../unit/unit-defects.tsx";

/** What most of some defects are of: an item or point of the machine, else the type of the units. */
function commonest(defects: readonly KeptDefect[]): string | undefined {
  const counts = new Map<string, number>();
  for (const { what, type, where } of defects) {
    // References of a board mean something on boards of that type only.
    const at = what === "board" || what === "mechanism" ? type : (where.item ?? where.point ?? type);
    counts.set(at, (counts.get(at) ?? 0) + 1);
  }
  return [...counts].sort(([, a], [, b]) => b - a)[0]?.[0];
}

/** Leads to a new problem of the design, with what these defects have in common filled in. */
export function ProblemOfDefects({
  defects,
  name,
}: {
  readonly defects: readonly KeptDefect[];
  /** What they were chosen by; blank: nothing. */
  readonly name: string;
}) {
  const own = useWords().serviceProblems.make;
  const { bookId } = useDesk();
  const says = useDefectWords();
  const about = commonest(defects);
  const first = defects[0];
  if (first === undefined || about === undefined) return null;
  const what = name === "" ? says.what(first.kind) : name;
  return (
    <Button
      component={Link}
      variant="default"
      href={newProblemAddress(bookId, {
        ...{ from: "defects", about, unit: first.unit },
        says: own.defectsSay(what, defects.length),
      })}
    >
      {own.fromDefects}
    </Button>
  );
}
