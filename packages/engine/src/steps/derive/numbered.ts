import type { Motion, Precedence, WorkStep } from "../../model/index.ts";
import { motion, secondsOf, type TimeNumbers } from "../motions/motions.ts";
import type { StepWork } from "../motions/work.ts";
import type { Draft } from "./draft.ts";

/** Steps before which their panel is turned over. A panel may begin on either side. */
function turnedSteps(order: readonly Draft[]): ReadonlySet<string> {
  const sides = new Map<string, Draft["side"]>();
  const turned = new Set<string>();
  for (const { id, panelId, side } of order) {
    if (panelId === null) continue;
    const last = sides.get(panelId);
    if (last !== undefined && last !== side) turned.add(id);
    sides.set(panelId, side);
  }
  return turned;
}

/** A step with its place in the order. */
export interface NumberedDraft {
  readonly draft: Draft;
  readonly number: number;
  /** Its panel is turned over before it. */
  readonly isTurned: boolean;
  /** Those that come directly before it, in the order of the steps. */
  readonly afterIds: readonly string[];
}

/** Steps in their order, numbered from 1. */
export function numberSteps(
  drafts: readonly Draft[],
  edges: readonly Precedence[],
  order: readonly string[],
): readonly NumberedDraft[] {
  const byId = new Map(drafts.map((draft) => [draft.id, draft]));
  const inOrder = order.flatMap((id) => byId.get(id) ?? []);
  const turned = turnedSteps(inOrder);
  const numbers = new Map(inOrder.map((draft, i) => [draft.id, i + 1]));
  const before = new Map<string, string[]>();
  for (const { beforeId, afterId } of edges) {
    const known = before.get(afterId);
    if (known === undefined) before.set(afterId, [beforeId]);
    else known.push(beforeId);
  }
  const numberOf = (id: string): number => numbers.get(id) ?? 0;
  return inOrder.map((draft) => ({
    draft,
    number: numberOf(draft.id),
    isTurned: turned.has(draft.id),
    afterIds: (before.get(draft.id) ?? []).sort((a, b) => numberOf(a) - numberOf(b)),
  }));
}

/** A step in its place. What somebody has set as its time holds, turn-over and all. */
export function workStep(
  { draft, number, isTurned, afterIds }: NumberedDraft,
  work: StepWork,
  t: TimeNumbers,
): WorkStep {
  const turn: readonly Motion[] = motion("turn-over", isTurned ? 1 : 0, t.turn_over_s);
  const motions = [...turn, ...work.motions];
  const { setSeconds } = draft;
  const isAllSet = motions.length > 0 && motions.every(({ set }) => set);
  return {
    id: draft.id,
    number,
    kind: draft.kind,
    labels: draft.labels,
    panelId: draft.panelId,
    side: draft.side,
    itemIds: work.itemIds,
    fastenerIds: work.fastenerIds,
    recheckIds: work.recheckIds,
    harnessId: draft.harnessId,
    mechanismTypeId: draft.mechanismTypeId,
    times: draft.times,
    afterIds,
    motions,
    seconds: setSeconds ?? secondsOf(motions, t.rest_pct),
    secondsFrom: setSeconds !== null || isAllSet ? "designer" : "motions",
    skill: draft.skill,
    tools: work.tools,
    cautions: draft.cautions,
    stationId: draft.stationId,
  };
}
