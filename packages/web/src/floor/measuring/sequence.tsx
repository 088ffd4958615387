import { usePick, useWords } from "../../app/words.tsx";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useHere } from "../shell/at-place.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { useAt } from "../tasks/use-ticked.ts";
import { Judged } from "./judged.tsx";
import { MeasureScreen } from "./measure-screen.tsx";
import { type Reading, readingFacts } from "./reading-facts.ts";
import { type TestOf, Told, useTestName } from "./told.tsx";

type Step = ViewEntry<"floorTestSteps">;

/**
 * A test that is a sequence: one step after the other, each with its own reading. The last good one ends it well; the first
 * one that is not good ends it, and it is done from the start once that is mended.
 */
export function Sequence({ task, steps }: { readonly task: TestOf; readonly steps: readonly Step[] }) {
  const { floorMeasure } = useWords();
  const own = floorMeasure.sequence;
  const pick = usePick();
  const nameOf = useTestName();
  const { book } = useHere();
  const bench = useBench();
  const { unit, test } = task;
  const [kept, go] = useAt(`sequence ${task.key}`);
  const at = Math.min(kept, steps.length - 1);
  const step = steps[at];
  if (step === undefined) return null;
  const name = pick(step.label, step.labelZh) || String(step.no);
  const record = async (reading: Pick<Reading, "good" | "value" | "source">): Promise<void> => {
    const isLast = at === steps.length - 1;
    const whole: readonly Reading[] =
      !reading.good || isLast ? [{ unit, test: test.id, good: reading.good }] : [];
    const facts = [{ unit, test: `${test.id}/${step.no}`, ...reading }, ...whole].flatMap((one) =>
      readingFacts(bench, one),
    );
    if (!(await bench.record(facts))) return;
    go(whole.length > 0 ? 0 : at + 1);
    if (!reading.good) bench.show(`/defect?what=test-failed&unit=${encodeURIComponent(unit)}`);
    else if (isLast) bench.next();
  };
  const told = (
    <>
      <Told task={task} />
      <p className="floor-step-of" role="status">
        {own.step(at + 1, steps.length)}
      </p>
      <h2 className="floor-step-name">{name}</h2>
    </>
  );
  const aside = (
    <button type="button" className="floor-plain" disabled={at === 0} onClick={() => go(at - 1)}>
      {own.before}
    </button>
  );
  return step.unit === "" ? (
    <Judged key={step.no} told={told} aside={aside} take={(good) => void record({ good })} />
  ) : (
    <MeasureScreen
      key={step.no}
      of={{ book, test: test.id, step: step.no, name: `${nameOf(test)}: ${name}` }}
      wanted={step}
      told={told}
      aside={aside}
      take={(good, value, source) => void record({ good, value, source })}
    />
  );
}
