import type { ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";
import type { Side } from "../layout/scene.ts";

type Step = ViewEntry<"stepLines">;
type Mark = ViewEntry<"screwMarks">;

/** Screws of one panel side as a step's card prints them. */
export interface ShownMarks {
  /** Of earlier steps. */
  readonly before: readonly Mark[];
  /** Of this step, in the order in which they are driven. */
  readonly now: readonly Mark[];
  /** Of the type that is looked for, wherever they come. */
  readonly sought: readonly Mark[];
}

/**
 * What of the screws is drawn: this step's as far as they are driven, earlier ones; of later ones none.
 * @param step null: there are no steps, so that every screw is drawn
 * @param driven how many of the step's screws are in
 */
export function shownMarks(
  marks: Entries<"screwMarks">,
  side: Side,
  step: Step | null,
  driven: number,
  typeId: string | null,
): ShownMarks {
  const own = [...marks.values()].filter((mark) => mark.side === side);
  const sought = typeId === null ? [] : own.filter((mark) => mark.typeId === typeId);
  if (step === null) return { before: [], now: own, sought };
  const recheck = new Map(step.recheckIds.map((id, i) => [id, i + 1]));
  const now = own
    .flatMap((mark) => {
      const turn = mark.stepId === step.id ? mark.turn : recheck.get(mark.id);
      return turn === undefined || turn > driven ? [] : [{ mark, turn }];
    })
    .sort((a, b) => a.turn - b.turn)
    .map(({ mark }) => mark);
  const before = own.filter(
    (mark) => mark.stepId !== null && mark.stepNumber < step.number && !recheck.has(mark.id),
  );
  return { before, now, sought };
}

/** Numbers of the steps in which items come onto the panel; the earliest counts. */
export function mountedAt(steps: Entries<"stepLines">): ReadonlyMap<string, number> {
  const at = new Map<string, number>();
  for (const { number, itemIds } of steps.values())
    for (const id of itemIds) at.set(id, Math.min(at.get(id) ?? Number.POSITIVE_INFINITY, number));
  return at;
}

type Items = Entries<"layoutItems">;

/** Items that stand on the panel already, and those that this step brings. What comes later is left out. */
export function shownItems(
  items: Items,
  mounted: ReadonlyMap<string, number>,
  step: Step | null,
): { readonly before: Items; readonly now: Items } {
  const before = new Map<string, ViewEntry<"layoutItems">>();
  const now = new Map<string, ViewEntry<"layoutItems">>();
  const own = new Set(step?.itemIds);
  for (const [id, item] of items) {
    if (item.kind === "fastener") continue;
    const root = item.parentId ?? id;
    const number = mounted.get(root);
    if (own.has(root)) now.set(id, item);
    else if (step === null || number === undefined || number < step.number) before.set(id, item);
  }
  return { before, now };
}
