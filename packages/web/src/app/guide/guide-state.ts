import type { ChangeSet, Job } from "@pinwright/contract";

/** Steps of the guide, in order. */
export const STEPS = ["move", "finding", "pinboard", "cell", "undo", "sheet"] as const;
export type Step = (typeof STEPS)[number];

/** How far someone is with the guide, kept in this browser. */
export interface GuideState {
  readonly book: string;
  readonly done: readonly Step[];
  /** False when the person left; it is resumed from the start page. */
  readonly open: boolean;
}

/** What the guide notices. */
export type Noticed =
  /** The person is at a place: section, and what comes after it in the address. */
  | { readonly kind: "place"; readonly section: string; readonly rest: string }
  /** The person made a change set, while in this section. */
  | {
      readonly kind: "change";
      readonly section: string;
      readonly set: Pick<ChangeSet, "kind" | "changes">;
    }
  | { readonly kind: "job"; readonly job: Pick<Job, "book" | "state"> };

export const begin = (book: string): GuideState => ({ book, done: [], open: true });

/** The step to do next; null when all are done. */
export const nextStep = ({ done }: GuideState): Step | null =>
  STEPS.find((step) => !done.includes(step)) ?? null;

const PLACE_COLUMNS: ReadonlySet<string> = new Set(["x_mm", "y_mm"]);

function isDone(step: Step, noticed: Noticed, { book }: GuideState): boolean {
  switch (step) {
    case "move":
      return (
        noticed.kind === "change" &&
        noticed.set.kind === "edit" &&
        noticed.set.changes.some(({ table, column }) => table === "devices" && PLACE_COLUMNS.has(column))
      );
    case "finding":
      return noticed.kind === "place" && noticed.section === "findings";
    case "pinboard":
      return noticed.kind === "place" && noticed.section === "harnesses" && noticed.rest !== "";
    case "cell":
      return noticed.kind === "change" && noticed.section === "tables" && noticed.set.kind === "edit";
    case "undo":
      return noticed.kind === "change" && noticed.set.kind === "undo";
    case "sheet":
      return noticed.kind === "job" && noticed.job.book === book && noticed.job.state === "done";
  }
}

/** The state after something was noticed; only the step that is next can be done by it. */
export function advance(state: GuideState, noticed: Noticed): GuideState {
  const step = nextStep(state);
  return step === null || !isDone(step, noticed, state) ? state : { ...state, done: [...state.done, step] };
}

/** Reads what was kept; null when there is nothing, or nothing that can be used. */
export function guideIn(text: string | null): GuideState | null {
  try {
    const kept: unknown = JSON.parse(text ?? "null");
    if (typeof kept !== "object" || kept === null) return null;
    const { book, done, open }: { book?: unknown; done?: unknown; open?: unknown } = kept;
    if (typeof book !== "string" || !Array.isArray(done)) return null;
    return { book, done: STEPS.filter((step) => done.includes(step)), open: open === true };
  } catch {
    return null;
  }
}
