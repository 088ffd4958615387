import type { FactBody } from "@pinwright/contract";
import { IconCheck } from "@tabler/icons-react";
import { useState } from "react";
import { useDesk, useOne } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import type { AskAnswer } from "../../worker/protocol.ts";
import { madeUp } from "../outbox/outbox.ts";
import { atStation, useBench } from "./bench-context.tsx";
import { FaultText, useFaultText } from "./fault-text.tsx";
import { groupsOfPairs, type OddPair } from "./measured.ts";
import { PairEntry } from "./pair-entry.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { TesterFile } from "./tester-file.tsx";
import { keptTugs } from "./tugs.ts";

type Diagnosis = NonNullable<AskAnswer<"diagnoseBench">>;

/** Every point of a harness against all others: good, or what was found, which is named. */
export function ContinuityTask({ task }: { readonly task: Extract<Task, { kind: "continuity" }> }) {
  const { floor } = useWords();
  const own = floor.continuity;
  const desk = useDesk();
  const bench = useBench();
  const { unit, test } = task;
  const onTester = useOne("floorBench", bench.type);
  const [mode, setMode] = useState<"ask" | "pairs">("ask");
  const [pairs, setPairs] = useState<readonly OddPair[]>([]);
  const [diagnosis, setDiagnosis] = useState<Diagnosis | null>(null);
  const textOf = useFaultText();
  const placeIds = onTester?.bench.places.map(({ id }) => id) ?? [];
  const last = bench.states.get(unit)?.readings.get(test)?.at(-1);
  const diagnose = async (measured: readonly number[]): Promise<void> =>
    setDiagnosis(
      await desk.ask("diagnoseBench", { harnessId: bench.type, measured, tugs: [...keptTugs(unit)] }),
    );
  const recordGood = async (): Promise<void> => {
    if (await bench.record([{ kind: "reading", unit, test, good: true, ...atStation(bench) }])) bench.next();
  };
  const recordBad = async (): Promise<void> => {
    const defects = (diagnosis?.explanations ?? []).map(({ ways: [likeliest], placeIds: at }): FactBody => {
      const [first] = likeliest ?? [];
      return {
        kind: "defect",
        unit,
        defect: madeUp("d"),
        what: first?.kind ?? "test-failed",
        says: likeliest === undefined ? at.join(" ").slice(0, 2000) : likeliest.map(textOf).join(own.and),
        where: at[0] === undefined ? {} : { point: at[0] },
        ...atStation(bench),
      };
    });
    const reading: FactBody = { kind: "reading", unit, test, good: false, ...atStation(bench) };
    if (await bench.record([reading, ...defects])) bench.show("/mend");
  };
  if (diagnosis !== null)
    return (
      <>
        <div className="floor-body">
          <h1>{diagnosis.good ? own.readGood(placeIds.length) : own.named}</h1>
          {diagnosis.explanations.map(({ placeIds: at, ways }) => (
            <Explained key={at.join(" ")} ways={ways} />
          ))}
        </div>
        <TaskFoot>
          <button type="button" className="floor-plain" onClick={() => setDiagnosis(null)}>
            {floor.test.again}
          </button>
          {diagnosis.good ? (
            <button type="button" className="floor-main" onClick={() => void recordGood()}>
              <IconCheck size={30} aria-hidden /> {floor.work.doneNext}
            </button>
          ) : (
            <button type="button" className="floor-main floor-bad-main" onClick={() => void recordBad()}>
              {own.record}
            </button>
          )}
        </TaskFoot>
      </>
    );
  if (mode === "ask" || onTester === undefined)
    return (
      <>
        <div className="floor-body">
          <h1>
            {floor.steps.continuity} <small className="dim">{unit}</small>
          </h1>
          <p>{own.how}</p>
          {last !== undefined && (
            <p className={last.good ? "" : "error-text"}>
              {floor.test.lastly(last.good ? floor.test.passed : floor.test.failed)}
            </p>
          )}
          <TesterFile placeIds={placeIds} read={(groups) => void diagnose(groups)} />
        </div>
        <TaskFoot>
          <button type="button" className="floor-bad-plain" onClick={() => setMode("pairs")}>
            {own.bad}
          </button>
          <button type="button" className="floor-main" onClick={() => void recordGood()}>
            <IconCheck size={30} aria-hidden /> {own.good}
          </button>
        </TaskFoot>
      </>
    );
  return (
    <>
      <div className="floor-body">
        <h1>{own.mode}</h1>
        <PairEntry bench={onTester} pairs={pairs} setPairs={setPairs} />
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" onClick={() => setMode("ask")}>
          {floor.back}
        </button>
        <button
          type="button"
          className="floor-main"
          disabled={pairs.length === 0}
          onClick={() => void diagnose(groupsOfPairs(placeIds, onTester.expected, pairs))}
        >
          {own.diagnose}
        </button>
      </TaskFoot>
    </>
  );
}

/** One set of readings and what explains them: the likeliest large, the others below. */
function Explained({ ways }: { readonly ways: Diagnosis["explanations"][number]["ways"] }) {
  const own = useWords().floor.continuity;
  const [first, ...others] = ways;
  if (first === undefined) return <p className="floor-fault">{own.nothingFits}</p>;
  return (
    <section className="floor-fault">
      <p>
        <small className="dim">{own.likeliest}</small>
        <b>
          <FaultText faults={first} />
        </b>
      </p>
      {others.length > 0 && (
        <details>
          <summary>
            {own.other} ({others.length})
          </summary>
          <ul>
            {others.slice(0, 8).map((faults) => (
              <li key={JSON.stringify(faults)}>
                <FaultText faults={faults} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
