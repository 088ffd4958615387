import type { FactBody } from "@pinwright/contract";
import type { HarnessFault, TestBench } from "@pinwright/engine";
import { IconCheck } from "@tabler/icons-react";
import { useState } from "react";
import { useWords } from "../../app/words.tsx";
import type { AskAnswer } from "../../worker/protocol.ts";
import { readingFacts } from "../measuring/reading-facts.ts";
import type { Source } from "../measuring/use-reader.ts";
import { madeUp } from "../outbox/outbox.ts";
import { atStation, useBench } from "../tasks/bench-context.tsx";
import { useFaultText } from "../tasks/fault-text.tsx";
import { TaskFoot } from "../tasks/task-foot.tsx";
import { keepTugs } from "../tasks/tugs.ts";
import { HousingMarks } from "./housing-marks.tsx";
import { placesOfFault, usePlaceText } from "./places.ts";

type Diagnosis = NonNullable<AskAnswer<"diagnoseBench">>;
type Explanation = Diagnosis["explanations"][number];

/** Other ways that are offered for one set of readings. */
const MOST_OTHERS = 8;

/** What a test of a harness found: good, or each fault by its name, with where to look. One tap makes defects of them. */
export function DiagnosisView({
  bench: on,
  diagnosis,
  warnings,
  unit,
  test,
  source,
  again,
}: {
  readonly bench: TestBench;
  readonly diagnosis: Diagnosis;
  /** What is to be known of the readings themselves. */
  readonly warnings: readonly string[];
  readonly unit: string;
  readonly test: string;
  readonly source: Source;
  readonly again: () => void;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floorMeasure.ways;
  const bench = useBench();
  const textOf = useFaultText(on);
  const placeText = usePlaceText(on);
  const [chosen, setChosen] = useState<Readonly<Record<number, number>>>({});
  const { explanations } = diagnosis;
  const chosenWay = (at: number): readonly HarnessFault[] => explanations[at]?.ways[chosen[at] ?? 0] ?? [];
  const unnamed = ({ placeIds }: Explanation): string =>
    own.unnamed(placeIds.map(placeText).join(", ")).slice(0, 2000);
  const defects = explanations.flatMap((one, at): readonly FactBody[] => {
    const defect = (what: string, says: string, point: string | undefined): FactBody => ({
      ...{ kind: "defect", unit, defect: madeUp("d"), what, says },
      where: point === undefined ? {} : { point },
      ...atStation(bench),
    });
    const pointOf = (placeId: string | undefined): string | undefined =>
      on.places.find(({ id }) => id === placeId)?.pointId;
    const way = chosenWay(at);
    if (way.length === 0) return [defect("test-failed", unnamed(one), pointOf(one.placeIds[0]))];
    return way.map((fault) =>
      defect(
        fault.kind,
        textOf(fault),
        pointOf(placesOfFault(on, fault).find((id) => pointOf(id) !== undefined)),
      ),
    );
  });
  const record = async (): Promise<void> => {
    const reading = readingFacts(bench, { unit, test, good: diagnosis.good, source });
    if (!(await bench.record([...reading, ...(diagnosis.good ? [] : defects)]))) return;
    if (diagnosis.good) {
      bench.next();
      return;
    }
    // Whatever is mended in a housing is tugged again.
    keepTugs(unit, new Map());
    bench.show("/mend");
  };
  return (
    <>
      <div className="floor-body">
        <h1>{diagnosis.good ? own.good(on.places.length) : floor.continuity.named}</h1>
        {warnings.map((text) => (
          <p key={text} role="alert" className="amber-text">
            {text}
          </p>
        ))}
        {explanations.map((one, at) => (
          <Explained
            key={one.placeIds.join(" ")}
            bench={on}
            explanation={one}
            chosen={chosen[at] ?? 0}
            choose={(way) => setChosen({ ...chosen, [at]: way })}
            unnamed={unnamed(one)}
          />
        ))}
      </div>
      <TaskFoot>
        <button type="button" className="floor-plain" onClick={again}>
          {own.again}
        </button>
        {diagnosis.good ? (
          <button type="button" className="floor-main" onClick={() => void record()}>
            <IconCheck size={30} aria-hidden /> {floor.work.doneNext}
          </button>
        ) : (
          <button type="button" className="floor-main floor-bad-main" onClick={() => void record()}>
            {own.record(defects.length)}
          </button>
        )}
      </TaskFoot>
    </>
  );
}

/** One set of readings and what explains them: the chosen one large, the others below, each one tap away. */
function Explained({
  bench,
  explanation: { ways },
  chosen,
  choose,
  unnamed,
}: {
  readonly bench: TestBench;
  readonly explanation: Explanation;
  readonly chosen: number;
  readonly choose: (way: number) => void;
  readonly unnamed: string;
}) {
  const { floor, floorMeasure } = useWords();
  const own = floor.continuity;
  const textOf = useFaultText(bench);
  const placeText = usePlaceText(bench);
  const way = ways[chosen];
  if (way === undefined)
    return (
      <section className="floor-fault">
        <p>
          <b>{unnamed}</b>
        </p>
        <p>{own.nothingFits}</p>
      </section>
    );
  const placeIds = [...new Set(way.flatMap((fault) => placesOfFault(bench, fault)))];
  const pointIds = new Set(
    bench.places.filter(({ id }) => placeIds.includes(id)).map(({ pointId }) => pointId),
  );
  const says = (faults: readonly HarnessFault[]): string => faults.map(textOf).join(own.and);
  return (
    <section className="floor-fault">
      <p>
        <small className="dim">{chosen === 0 ? own.likeliest : floorMeasure.ways.chosen}</small>
        <b>{says(way)}</b>
        <small>
          {floorMeasure.ways.look}: {placeIds.map(placeText).join(" · ")}
        </small>
      </p>
      <HousingMarks pointIds={pointIds} />
      {ways.length > 1 && (
        <details>
          <summary>
            {own.other} ({ways.length - 1})
          </summary>
          <ul className="floor-other-ways">
            {ways.slice(0, MOST_OTHERS + 1).map(
              (faults, i) =>
                i !== chosen && (
                  <li key={JSON.stringify(faults)}>
                    <span>{says(faults)}</span>
                    <button type="button" className="floor-plain" onClick={() => choose(i)}>
                      {floorMeasure.ways.choose}
                    </button>
                  </li>
                ),
            )}
          </ul>
        </details>
      )}
    </section>
  );
}
