import "../continuity/continuity.css";
import { IconCheck } from "@tabler/icons-react";
import { type ReactNode, useState } from "react";
import { useDesk, useOne } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import type { AskAnswer } from "../../worker/protocol.ts";
import { DiagnosisView } from "../continuity/diagnosis.tsx";
import { NetworkTesters } from "../continuity/network-testers.tsx";
import { Probes } from "../continuity/probes.tsx";
import { AdapterList, ScanFile } from "../continuity/scan-file.tsx";
import { useScanWarnings } from "../continuity/scan-text.ts";
import { readingFacts } from "../measuring/reading-facts.ts";
import { useInstruments } from "../measuring/use-instruments.ts";
import { type Source, TYPED } from "../measuring/use-reader.ts";
import { useBench } from "./bench-context.tsx";
import { groupsOfPairs, type OddPair } from "./measured.ts";
import { PairEntry } from "./pair-entry.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";
import { keptTugs } from "./tugs.ts";

/** What was found, and by what. */
interface Found {
  readonly diagnosis: NonNullable<AskAnswer<"diagnoseBench">>;
  readonly source: Source;
  readonly warnings: readonly string[];
}

type Mode = "ways" | "pairs" | "probes" | "file";

/**
 * Every point of a harness against all others: by a tester on the network, by the file of one, with two probes, or read off by
 * hand. Whatever is found is named.
 */
export function ContinuityTask({ task }: { readonly task: Extract<Task, { kind: "continuity" }> }) {
  const { floor } = useWords();
  const desk = useDesk();
  const bench = useBench();
  const warningsOf = useScanWarnings();
  const { unit, test } = task;
  const on = useOne("floorBench", bench.type);
  const [mode, setMode] = useState<Mode>("ways");
  const [pairs, setPairs] = useState<readonly OddPair[]>([]);
  const [found, setFound] = useState<Found | null>(null);
  if (on === undefined) return <p className="floor-body dim">{floor.loading}</p>;
  const placeIds = on.bench.places.map(({ id }) => id);
  const diagnose = async (
    measured: readonly number[],
    source: Source = TYPED,
    warnings: readonly string[] = [],
  ): Promise<void> => {
    const diagnosis = await desk.ask("diagnoseBench", {
      ...{ harnessId: bench.type, measured, tugs: [...keptTugs(unit)] },
    });
    if (diagnosis !== null) setFound({ diagnosis, source, warnings });
  };
  const back = (): void => setMode("ways");
  if (found !== null)
    return (
      <DiagnosisView
        bench={on.bench}
        unit={unit}
        test={test}
        {...found}
        again={() => {
          setFound(null);
          back();
        }}
      />
    );
  switch (mode) {
    case "probes":
      return <Probes on={on} unit={unit} read={(groups) => void diagnose(groups)} back={back} />;
    case "file":
      return (
        <ScanFile
          bench={on.bench}
          unit={unit}
          read={(reading) =>
            void diagnose(reading.groups, { instrument: reading.tester, note: "" }, warningsOf(reading))
          }
          back={back}
        />
      );
    case "pairs":
      return (
        <>
          <div className="floor-body">
            <h1>{floor.continuity.mode}</h1>
            <PairEntry bench={on} pairs={pairs} setPairs={setPairs} />
          </div>
          <TaskFoot>
            <button type="button" className="floor-plain" onClick={back}>
              {floor.back}
            </button>
            <button
              type="button"
              className="floor-main"
              disabled={pairs.length === 0}
              onClick={() => void diagnose(groupsOfPairs(placeIds, on.expected, pairs))}
            >
              {floor.continuity.diagnose}
            </button>
          </TaskFoot>
        </>
      );
    case "ways":
      return (
        <Ways
          unit={unit}
          test={test}
          setMode={setMode}
          testers={
            <NetworkTesters
              bench={on.bench}
              unit={unit}
              read={({ reading, instrument, note, warning }) =>
                void diagnose(reading.groups, { instrument, note }, [
                  ...(warning === "" ? [] : [warning]),
                  ...warningsOf(reading),
                ])
              }
            />
          }
          adapter={<AdapterList bench={on.bench} />}
        />
      );
  }
}

/** The ways to test a harness, the quickest first. */
function Ways({
  unit,
  test,
  setMode,
  testers,
  adapter,
}: {
  readonly unit: string;
  readonly test: string;
  readonly setMode: (mode: Mode) => void;
  readonly testers: ReactNode;
  readonly adapter: ReactNode;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.ways;
  const bench = useBench();
  // What the program reads by itself goes before what somebody says of a lamp.
  const hasTester = useInstruments().some(({ kind }) => kind === "continuity");
  const last = bench.states.get(unit)?.readings.get(test)?.at(-1);
  const recordGood = async (): Promise<void> => {
    if (await bench.record(readingFacts(bench, { unit, test, good: true }))) bench.next();
  };
  return (
    <>
      <div className="floor-body">
        <h1>
          {floor.steps.continuity} <small className="dim">{unit}</small>
        </h1>
        <p>{floor.continuity.how}</p>
        {last !== undefined && (
          <p className={last.good ? "" : "error-text"}>
            {floor.test.lastly(last.good ? floor.test.passed : floor.test.failed)}
          </p>
        )}
        {testers}
        <div className="floor-tiles">
          <button type="button" onClick={() => setMode("probes")}>
            {own.probes}
            <small>{own.probesHint}</small>
          </button>
          <button type="button" onClick={() => setMode("file")}>
            {own.file}
            <small>{own.fileHint}</small>
          </button>
        </div>
        {adapter}
      </div>
      <TaskFoot>
        <button type="button" className="floor-bad-plain" onClick={() => setMode("pairs")}>
          {floor.continuity.bad}
        </button>
        <button
          type="button"
          className={hasTester ? "floor-plain" : "floor-main"}
          onClick={() => void recordGood()}
        >
          <IconCheck size={30} aria-hidden /> {floor.continuity.good}
        </button>
      </TaskFoot>
    </>
  );
}
