import { usePick, useWords } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import type { Task } from "../tasks/tasks.ts";

export type TestOf = Extract<Task, { kind: "test" }>;

/** Tests that nobody can pass over, as the release has it. */
const FIRM = new Set(["bond", "insulation", "polarity", "interlock"]);
/** What can hurt whoever tests a whole machine. */
const HURTS = new Set([...FIRM, "supply", "coil", "motor", "burn-in"]);

/** Name of a test in the reader's language. */
export function useTestName(): (test: TestOf["test"]) => string {
  const pick = usePick();
  return ({ id, label, labelZh }) => pick(label, labelZh) || id;
}

/** The caution of a test; that of the program where the book says none and something can hurt. */
export function useCaution({ test }: TestOf): string {
  const pick = usePick();
  const { walk } = useWords().floorMeasure;
  const { what } = useBench();
  const own = pick(test.caution, test.cautionZh);
  return own === "" && what === "machine" && HURTS.has(test.purpose) ? walk.careful : own;
}

/** What to do, on which unit, from where to where. */
export function Told({ task }: { readonly task: TestOf }) {
  const { test, unit } = task;
  const own = useWords().floor.test;
  const pick = usePick();
  const nameOf = useTestName();
  const caution = useCaution(task);
  const { states, unitIds } = useBench();
  const last = states.get(unit)?.readings.get(test.id)?.at(-1);
  const result = [
    last?.value === null || last?.value === undefined ? "" : `${last.value} ${test.unit}`,
    last?.good === true ? own.passed : own.failed,
  ];
  return (
    <>
      {/* Of several on the bench the wrong one is taken more easily than the wrong test. */}
      {unitIds.length > 1 ? (
        <p className="floor-under-test">{own.of(unit)}</p>
      ) : (
        <p className="dim">
          {own.kinds[test.kind]} · {own.of(unit)}
        </p>
      )}
      <h1>{nameOf(test)}</h1>
      <p className="floor-do">{pick(test.do, test.doZh)}</p>
      {test.from !== "" && <p>{own.from(test.from, test.to)}</p>}
      {caution !== "" && <p className="caution">{caution}</p>}
      {FIRM.has(test.purpose) && <p className="dim">{own.firm}</p>}
      {last !== undefined && (
        <p className={last.good ? "dim" : "error-text"}>
          {own.lastly(result.filter((text) => text !== "").join(", "))}
        </p>
      )}
    </>
  );
}
