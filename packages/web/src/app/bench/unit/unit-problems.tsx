import type { UnitState } from "@pinwright/engine";
import { Link } from "wouter";
import { useDesk, useOne } from "../../book/desk.tsx";
import { newProblemAddress } from "../../service/address.ts";
import { openAbout } from "../../service/problems/chosen-problems.ts";
import { ProblemLines } from "../../service/problems/open-problems.tsx";
import { useProblems } from "../../service/problems/use-problems.ts";
import { useWords } from "../../words.tsx";

/** Problems that were seen on a unit, and those that are open against what it is. */
export function UnitProblems({
  unit,
  begun: { what, type },
}: {
  readonly unit: string;
  readonly begun: NonNullable<UnitState["begun"]>;
}) {
  const { serviceProblems: own } = useWords();
  const { bookId } = useDesk();
  const { answer } = useProblems();
  const scope = useOne("problemScope", { what, type });
  if (answer === undefined || scope === undefined) return null;
  const seen = answer.filter((one) => one.unit === unit || one.notes.some((note) => note.unit === unit));
  const open = openAbout(answer, what === "machine" ? null : new Set(scope.ids));
  const shown = [...seen, ...open.filter((one) => !seen.includes(one))];
  return (
    <section aria-labelledby="unit-problems">
      <h3 id="unit-problems">{own.title}</h3>
      {shown.length === 0 ? <p className="dim">{own.open.none}</p> : <ProblemLines problems={shown} />}
      <Link
        href={newProblemAddress(bookId, {
          ...{ unit, from: "letter" },
          ...(what === "machine" ? {} : { about: type }),
        })}
      >
        {own.make.button}
      </Link>
    </section>
  );
}
