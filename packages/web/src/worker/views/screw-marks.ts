import type { FastenerItem, Side } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** A fastener on a panel, with the step that drives it. */
export interface ScrewMark {
  readonly id: string;
  readonly typeId: string;
  readonly side: Side;
  readonly xMm: number;
  readonly yMm: number;
  /** Null when no step drives it. */
  readonly stepId: string | null;
  readonly stepNumber: number;
  /** Its turn within the step, from 1. */
  readonly turn: number;
}

interface Turn {
  readonly stepId: string;
  readonly stepNumber: number;
  readonly turn: number;
}

/** Which step drives each fastener, and when within it. */
export function turnsOf({ line }: Model): ReadonlyMap<string, Turn> {
  const turns = new Map<string, Turn>();
  for (const { id, number, fastenerIds } of line.steps.steps)
    for (const [i, fastenerId] of fastenerIds.entries())
      turns.set(fastenerId, { stepId: id, stepNumber: number, turn: i + 1 });
  return turns;
}

const onPanel = ({ line }: Model, panelId: string): readonly FastenerItem[] =>
  [...line.machine.items.values()].flatMap((item) =>
    item.kind === "fastener" && item.place.panelId === panelId ? [item] : [],
  );

/** The fasteners of one panel, both sides. */
export const screwMarks = view<{ readonly panelId: string }, ScrewMark>({
  uses: ({ line }) => [line.machine.items, line.steps.steps],
  entries: (model, { panelId }) => {
    const turns = turnsOf(model);
    return new Map(
      onPanel(model, panelId).map(({ id, type, place: { side, xMm, yMm } }) => {
        const { stepId = null, stepNumber = 0, turn = 0 } = turns.get(id) ?? {};
        return [id, { id, typeId: type.id, side, xMm, yMm, stepId, stepNumber, turn }];
      }),
    );
  },
  restsInPreview: true,
});
