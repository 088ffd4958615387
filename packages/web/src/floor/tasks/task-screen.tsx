import { ContinuityTask } from "./continuity-task.tsx";
import { FitTask } from "./fit-task.tsx";
import { KitTask } from "./kit-task.tsx";
import { StageTask } from "./stage-task.tsx";
import { StepTask } from "./step-task.tsx";
import type { Task } from "./tasks.ts";
import { TestTask } from "./test-task.tsx";
import { TugTask } from "./tug-task.tsx";
import { WireTask } from "./wire-task.tsx";

/** The one thing that fills the screen. */
export function TaskScreen({ task }: { readonly task: Task }) {
  switch (task.kind) {
    case "step":
      return <StepTask task={task} />;
    case "fit":
      return <FitTask task={task} />;
    case "own":
      return task.step === "kit" ? <KitTask task={task} /> : <WireTask task={task} />;
    case "stage":
      return <StageTask task={task} />;
    case "tug":
      return <TugTask task={task} />;
    case "continuity":
      return <ContinuityTask task={task} />;
    case "test":
      return <TestTask task={task} />;
  }
}
