import type { ReactNode } from "react";
import { useOne, useView } from "../../app/book/desk.tsx";
import { BenchPicture } from "../../app/screws/bench/bench-picture.tsx";
import { BenchText } from "../../app/screws/bench/bench-text.tsx";
import { useWords } from "../../app/words.tsx";
import { FitQuestion } from "../fit/fit-question.tsx";
import { type Fit, useFit } from "../fit/use-fit.ts";
import { sheetsView } from "../sheets/sheets-page.tsx";
import { useScanner } from "../shell/use-scanner.ts";
import { useBench } from "./bench-context.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import { type Place, standingAt, type Task } from "./tasks.ts";

type StepOf = Extract<Task, { kind: "step" }>;

/** A step of the book: its picture, its screws, its cautions. */
export function StepTask({ task }: { readonly task: StepOf }) {
  const places = useBench().work.places.filter(({ stepId }) => stepId === task.step);
  return places.length === 0 ? (
    <StepScreen task={task} />
  ) : (
    <FittingStep key={task.key} task={task} places={places} />
  );
}

/** A step that puts in what has a number of its own. */
function FittingStep({ task, places }: { readonly task: StepOf; readonly places: readonly Place[] }) {
  const fit = useFit(places, null);
  useScanner((text) => void fit.scanned(text));
  if (fit.question !== null) return <FitQuestion fit={fit} question={fit.question} />;
  return (
    <StepScreen task={task}>
      <FitHere places={places} fit={fit} />
    </StepScreen>
  );
}

function StepScreen({ task, children }: { readonly task: StepOf; readonly children?: ReactNode }) {
  const { floor, floorRevision } = useWords();
  const { release, show } = useBench();
  const lines = useView("stepLines", null);
  const parts = useOne("stepParts", { id: task.step });
  const step = lines?.get(task.step);
  const screws = step?.types.reduce((sum, { count }) => sum + count, 0) ?? 0;
  return (
    <>
      {lines === null || step === undefined ? (
        <p className="floor-body dim">{floor.loading}</p>
      ) : (
        <div className={step.panelId === null ? "bench-body" : "bench-body with-picture"}>
          {step.panelId !== null && (
            <BenchPicture key={step.id} steps={lines} step={step} panelId={step.panelId} />
          )}
          <BenchText step={step} />
        </div>
      )}
      {children}
      {release !== null && (
        <p className="floor-kept-sheet">
          <button
            type="button"
            className="floor-plain"
            onClick={() => show(sheetsView("step-cards", task.step))}
          >
            {floorRevision.stepSheet(release)}
          </button>
        </p>
      )}
      <TaskFoot defect={defectParams(task.step, step)}>
        <FinishStep
          taskKey={task.key}
          step={task.step}
          {...(screws > 0 ? { count: screws } : {})}
          disabled={parts === undefined}
        />
      </TaskFoot>
    </>
  );
}

/** What is known of where a defect is: the step, and the panel side that lies before the builder. */
function defectParams(
  stepId: string,
  step: { readonly panelId: string | null; readonly side: string } | undefined,
) {
  const params = new URLSearchParams({ step: stepId });
  if (step !== undefined && step.panelId !== null) {
    params.set("panel", step.panelId);
    params.set("side", step.side);
  }
  return `?${params}`;
}

/** What this step puts in has numbers of its own: scanned here, it is fitted. */
function FitHere({ places, fit }: { readonly places: readonly Place[]; readonly fit: Fit }) {
  const { floor, floorBench } = useWords();
  const { state, says, last, looking } = fit;
  const filled = places.filter(({ id }) => standingAt(state, id) !== null).length;
  return (
    <p className="floor-fit" role="status">
      <b>{floor.fit.filled(filled, places.length)}</b>{" "}
      {looking ? (
        floorBench.fitting.looking
      ) : says !== "" ? (
        <span className="error-text">{says}</span>
      ) : last !== "" ? (
        last
      ) : (
        floor.fit.scan
      )}
    </p>
  );
}
