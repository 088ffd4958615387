import type { FactBody } from "@pinwright/contract";
import { isWithin } from "@pinwright/engine";
import { IconAlertTriangle, IconCheck, IconX } from "@tabler/icons-react";
import { useState } from "react";
import { usePick, useWords } from "../../app/words.tsx";
import { atStation, useBench } from "./bench-context.tsx";
import { NumberPad, tapped } from "./number-pad.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task, Test } from "./tasks.ts";

type TestOf = Extract<Task, { kind: "test" }>;

/** Tests that nobody can pass over, as the release has it. */
const FIRM = new Set(["bond", "insulation", "polarity", "interlock"]);
const understoodKey = (test: string): string => `pinwright.floor.understood.${test}`;

/** A test of the book: its caution first, then what to do, then one tap or one number. */
export function TestTask({ task }: { readonly task: TestOf }) {
  const { floor } = useWords();
  const pick = usePick();
  const { test } = task;
  const [understood, setUnderstood] = useState(
    () => test.caution === "" || sessionStorage.getItem(understoodKey(test.id)) !== null,
  );
  if (!understood)
    return (
      <>
        <div className="floor-body floor-caution">
          <h1>{floor.work.caution}</h1>
          <p>
            <IconAlertTriangle size={56} aria-hidden />
            {pick(test.caution, test.cautionZh)}
          </p>
        </div>
        <TaskFoot>
          <button
            type="button"
            className="floor-main"
            onClick={() => {
              sessionStorage.setItem(understoodKey(test.id), "1");
              setUnderstood(true);
            }}
          >
            {floor.work.understood}
          </button>
        </TaskFoot>
      </>
    );
  return test.kind === "measure" ? <Measured task={task} /> : <Judged task={task} />;
}

function useRecorder({ unit, test }: TestOf): (good: boolean, value?: number) => Promise<void> {
  const bench = useBench();
  return async (good, value) => {
    const reading: FactBody = {
      kind: "reading",
      unit,
      test: test.id,
      good,
      ...(value === undefined ? {} : { value }),
      ...atStation(bench),
    };
    if (!(await bench.record([reading]))) return;
    if (good) bench.next();
    else bench.show(`/defect?what=test-failed&unit=${encodeURIComponent(unit)}`);
  };
}

/** What to do, on which unit, from where to where. */
function Told({ task: { test, unit } }: { readonly task: TestOf }) {
  const { floor } = useWords();
  const own = floor.test;
  const pick = usePick();
  const { states } = useBench();
  const last = states.get(unit)?.readings.get(test.id)?.at(-1);
  return (
    <>
      <p className="dim">
        {own.kinds[test.kind]} · {own.of(unit)}
      </p>
      <h1>{pick(test.label, test.labelZh) || test.id}</h1>
      <p className="floor-do">{pick(test.do, test.doZh)}</p>
      {test.from !== "" && <p>{own.from(test.from, test.to)}</p>}
      {test.caution !== "" && <p className="caution">{pick(test.caution, test.cautionZh)}</p>}
      {FIRM.has(test.purpose) && <p className="dim">{own.firm}</p>}
      {last !== undefined && (
        <p className={last.good ? "dim" : "error-text"}>
          {own.lastly(
            [last.value === null ? "" : `${last.value} ${test.unit}`, last.good ? own.passed : own.failed]
              .filter((text) => text !== "")
              .join(", "),
          )}
        </p>
      )}
    </>
  );
}

function Judged({ task }: { readonly task: TestOf }) {
  const own = useWords().floor.test;
  const record = useRecorder(task);
  return (
    <>
      <div className="floor-body">
        <Told task={task} />
      </div>
      <TaskFoot>
        <button type="button" className="floor-bad-plain" onClick={() => void record(false)}>
          <IconX size={30} aria-hidden /> {own.bad}
        </button>
        <button type="button" className="floor-main" onClick={() => void record(true)}>
          <IconCheck size={30} aria-hidden /> {own.good}
        </button>
      </TaskFoot>
    </>
  );
}

const limitsOf = ({ min, max }: Test): boolean => min !== null || max !== null;

function Measured({ task }: { readonly task: TestOf }) {
  const own = useWords().floor.test;
  const { test } = task;
  const [text, setText] = useState("");
  const [out, setOut] = useState(false);
  const record = useRecorder(task);
  const value = tapped(text);
  const good = value !== null && isWithin(test, { value, good: true });
  const limits = own.limits(test.min, test.max, test.unit);
  const take = (): void => {
    if (value === null) return;
    if (good) void record(true, value);
    else setOut(true);
  };
  if (out && value !== null)
    return (
      <>
        <div className="floor-body floor-out" role="alert">
          <h1>
            <IconAlertTriangle size={48} aria-hidden /> {own.out}
          </h1>
          <p className="floor-figure">{own.outSays(value, test.unit, limits)}</p>
          <p>{own.outDo}</p>
        </div>
        <TaskFoot>
          <button type="button" className="floor-bad-plain" onClick={() => void record(false, value)}>
            <IconX size={30} aria-hidden /> {own.recordBad}
          </button>
          <button
            type="button"
            className="floor-main"
            onClick={() => {
              setText("");
              setOut(false);
            }}
          >
            {own.again}
          </button>
        </TaskFoot>
      </>
    );
  return (
    <>
      <div className="floor-body floor-split floor-measure">
        <section>
          <Told task={task} />
          {limitsOf(test) ? (
            <p className="floor-limits">
              <b>{limits}</b>
              {test.nominal !== null && <small>{own.nominal(test.nominal, test.unit)}</small>}
            </p>
          ) : (
            <p className="amber-text">{own.noLimits}</p>
          )}
        </section>
        <section>
          <output
            className="floor-figure"
            aria-label={own.value}
            data-out={value !== null && !good ? "" : undefined}
          >
            {text === "" ? "–" : text} <small>{test.unit}</small>
          </output>
          <p role="status" className={value === null || good ? "dim" : "error-text"}>
            {value === null ? " " : good ? own.within : own.out}
          </p>
          <NumberPad text={text} setText={setText} />
        </section>
      </div>
      <TaskFoot>
        <button type="button" className="floor-main" disabled={value === null} onClick={take}>
          <IconCheck size={30} aria-hidden /> {own.take}
        </button>
      </TaskFoot>
    </>
  );
}
