import type { FactBody } from "@pinwright/contract";
import { IconCheck } from "@tabler/icons-react";
import { useSpeech } from "../../app/words.tsx";
import { atStation, clockOf, useBench } from "./bench-context.tsx";
import { stepDone } from "./tasks.ts";
import { takeMinutes } from "./use-clock.ts";

/** The button that ends a step on all units at the bench; of one that is done it says when, and can take it back. */
export function FinishStep({
  taskKey,
  step,
  count,
  says,
  disabled = false,
  unitIds: only,
  also,
}: {
  readonly taskKey: string;
  readonly step: string;
  /** What was counted, on all units together. */
  readonly count?: number;
  readonly says?: string;
  readonly disabled?: boolean;
  readonly unitIds?: readonly string[];
  /** What is recorded together with the step: the lots of it. */
  readonly also?: { readonly facts: () => readonly FactBody[]; readonly recorded: () => void };
}) {
  const { words, language } = useSpeech();
  const own = words.floor.work;
  const bench = useBench();
  const unitIds = only ?? bench.unitIds;
  const done = unitIds.flatMap((unit) => stepDone(bench.states.get(unit), step) ?? []);
  const first = done[0];
  const isDone = done.length === unitIds.length && first !== undefined;
  const finish = async (): Promise<void> => {
    const minutes = Math.round((takeMinutes(clockOf(bench.unitIds, taskKey)) / unitIds.length) * 100) / 100;
    const counted = count === undefined ? {} : { count: Math.round(count / unitIds.length) };
    const steps = unitIds.map(
      (unit): FactBody => ({ kind: "step-done", unit, step, ...atStation(bench), minutes, ...counted }),
    );
    if (!(await bench.record([...(also?.facts() ?? []), ...steps]))) return;
    also?.recorded();
    bench.next();
  };
  const takeBack = (): Promise<boolean> =>
    bench.record(
      done.map(({ source: { stream, seq } }) => ({ kind: "correction", stream, seq, why: own.notDoneWhy })),
    );
  if (!isDone)
    return (
      <button type="button" className="floor-main" disabled={disabled} onClick={() => void finish()}>
        <IconCheck size={30} aria-hidden /> {says ?? own.doneNext}
      </button>
    );
  const when = new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
    dateStyle: "short",
    timeStyle: "short",
  }).format(new Date(first.source.at));
  return (
    <>
      <button type="button" className="floor-plain" onClick={() => void takeBack()}>
        {own.notDone}
        <small>{own.already("", when)}</small>
      </button>
      <button type="button" className="floor-main" onClick={bench.next}>
        {own.next}
      </button>
    </>
  );
}
