import { Link, useLocation } from "wouter";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import { compareAddress, runsAddress } from "./address.ts";
import { ComparePlans } from "./compare-plans.tsx";
import { PickRun } from "./pick-run.tsx";
import { PlanProgress } from "./plan-progress.tsx";
import { today } from "./today.ts";
import { type Preparing, usePlanAnswer } from "./use-prepared.ts";

/** Two runs side by side. */
export function CompareRuns({
  a,
  b,
  runs,
  preparing,
}: {
  readonly a: string;
  readonly b: string;
  readonly runs: Entries<"runs">;
  readonly preparing: Preparing;
}) {
  const own = useWords().runs;
  const pick = usePick();
  const { bookId } = useDesk();
  const [, go] = useLocation();
  const day = today();
  const [first, second] = [runs.get(a), runs.get(b)];
  const one = usePlanAnswer(
    "runPlan",
    first === undefined ? null : { runId: a, today: day, change: null },
    preparing,
  );
  const other = usePlanAnswer(
    "runPlan",
    second === undefined ? null : { runId: b, today: day, change: null },
    preparing,
  );
  return (
    <>
      <h2>{own.compareTwo}</h2>
      <p>
        <Link href={runsAddress(bookId)}>{own.all}</Link>
      </p>
      <div className="question">
        <PickRun label={own.first} runs={runs} value={a} onPick={(id) => go(compareAddress(bookId, id, b))} />
        <PickRun
          label={own.second}
          runs={runs}
          value={b}
          onPick={(id) => go(compareAddress(bookId, a, id))}
        />
      </div>
      {first === undefined && <p>{own.noSuchRun(a)}</p>}
      {second === undefined && <p>{own.noSuchRun(b)}</p>}
      {first !== undefined && second !== undefined && (
        <>
          <PlanProgress preparing={preparing} answering={one.answer === undefined ? one : other} />
          {one.answer !== undefined && other.answer !== undefined && (
            <ComparePlans
              a={one.answer}
              b={other.answer}
              aName={pick(first.label, first.labelZh) || a}
              bName={pick(second.label, second.labelZh) || b}
              aRun={first}
              bRun={second}
              isOnePlan
            />
          )}
        </>
      )}
    </>
  );
}
