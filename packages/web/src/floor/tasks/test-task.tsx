import "../measuring/measuring.css";
import { IconAlertTriangle } from "@tabler/icons-react";
import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { useWords } from "../../app/words.tsx";
import { Judged } from "../measuring/judged.tsx";
import { MeasureScreen } from "../measuring/measure-screen.tsx";
import { type Reading, readingFacts } from "../measuring/reading-facts.ts";
import { Sequence } from "../measuring/sequence.tsx";
import { type TestOf, Told, useCaution, useTestName } from "../measuring/told.tsx";
import { Walk } from "../measuring/walk.tsx";
import { useHere } from "../shell/at-place.tsx";
import { useBench } from "./bench-context.tsx";
import { TaskFoot } from "./task-foot.tsx";

/** Who has read a caution has read it for all tests of this unit that have the same. */
const understoodKey = (unit: string, caution: string): string =>
  `pinwright.floor.understood.${unit} ${caution}`;

/** A test of the book: its caution first, then what to do, then one tap, one number, or one step after the other. */
export function TestTask({ task }: { readonly task: TestOf }) {
  const { work } = useWords().floor;
  const caution = useCaution(task);
  const key = understoodKey(task.unit, caution);
  const [understood, setUnderstood] = useState(() => caution === "" || sessionStorage.getItem(key) !== null);
  if (understood) return <Tested task={task} />;
  return (
    <>
      <div className="floor-body floor-caution">
        <h1>{work.caution}</h1>
        <p>
          <IconAlertTriangle size={56} aria-hidden />
          {caution}
        </p>
      </div>
      <TaskFoot>
        <button
          type="button"
          className="floor-main"
          onClick={() => {
            sessionStorage.setItem(key, "1");
            setUnderstood(true);
          }}
        >
          {work.understood}
        </button>
      </TaskFoot>
    </>
  );
}

function Tested({ task }: { readonly task: TestOf }) {
  const { loading } = useWords().floor;
  const bench = useBench();
  const { book } = useHere();
  const nameOf = useTestName();
  const { unit, test } = task;
  const steps = useView("floorTestSteps", test.id);
  const walk = useView("floorTestWalk", bench.what === "machine" ? test.purpose : "");
  const record = async (reading: Pick<Reading, "good" | "value" | "source">): Promise<void> => {
    if (!(await bench.record(readingFacts(bench, { unit, test: test.id, ...reading })))) return;
    if (reading.good) bench.next();
    else bench.show(`/defect?what=test-failed&unit=${encodeURIComponent(unit)}`);
  };
  if (test.kind === "measure")
    return (
      <MeasureScreen
        of={{ book, test: test.id, name: nameOf(test) }}
        wanted={test}
        told={<Told task={task} />}
        take={(good, value, source) => void record({ good, value, source })}
      />
    );
  if (steps === null || walk === null) return <p className="floor-body dim">{loading}</p>;
  if (test.kind === "sequence" && steps.size > 0) return <Sequence task={task} steps={[...steps.values()]} />;
  // A second look at coils is one look at all of them: only the first test of a purpose is walked through.
  if (walk.size > 0 && bench.work.tests.find(({ purpose }) => purpose === test.purpose) === test)
    return <Walk task={task} walk={[...walk.values()]} />;
  return <Judged told={<Told task={task} />} take={(good) => void record({ good })} />;
}
