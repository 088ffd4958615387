import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { useBench } from "./bench-context.tsx";
import { stageOf, type Task } from "./tasks.ts";

/** Says what a step is: of the book, or of the bench of a board or a harness. */
export function useStepName(): (step: string) => string {
  const { steps } = useWords().floor;
  const pick = usePick();
  const lines = useView("stepLines", null);
  return (id) => {
    const step = lines?.get(id);
    if (step !== undefined) return pick(step.label, step.labelZh) || step.id;
    if (id === "kit" || id === "cut" || id === "lay-up" || id === "tug") return steps[id];
    const stage = stageOf(id);
    return stage === null ? id : steps.stage(stage);
  };
}

/** Says what a task is. */
export function useTaskName(): (task: Task) => string {
  const { steps } = useWords().floor;
  const pick = usePick();
  const stepName = useStepName();
  const { unitIds } = useBench();
  const of = (unit: string): string => (unitIds.length > 1 ? ` · ${unit}` : "");
  return (task) => {
    switch (task.kind) {
      case "step":
      case "own":
      case "stage":
        return stepName(task.step);
      case "fit":
        return `${steps.fit} (${task.places.length})`;
      case "tug":
        return stepName(task.step) + of(task.unit);
      case "continuity":
        return steps.continuity + of(task.unit);
      case "test":
        return (pick(task.test.label, task.test.labelZh) || task.test.id) + of(task.unit);
    }
  };
}
