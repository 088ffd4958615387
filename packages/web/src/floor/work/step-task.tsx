import { useOne, useView } from "../../app/book/desk.tsx";
import { BenchPicture } from "../../app/screws/bench/bench-picture.tsx";
import { BenchText } from "../../app/screws/bench/bench-text.tsx";
import { useWords } from "../../app/words.tsx";
import { FinishStep } from "./finish-step.tsx";
import { TaskFoot } from "./task-foot.tsx";
import type { Task } from "./tasks.ts";

/** A step of the book: its picture, its screws, its cautions. */
export function StepTask({ task }: { readonly task: Extract<Task, { kind: "step" }> }) {
  const { floor } = useWords();
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
      <TaskFoot
        defect={step?.panelId == null ? "" : `?panel=${encodeURIComponent(step.panelId)}&side=${step.side}`}
      >
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
