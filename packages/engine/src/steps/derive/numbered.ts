import type { Motion, Precedence, WorkStep } from "../../model/index.ts";
import { motion, secondsOf, type TimeNumbers } from "../motions/motions.ts";
import type { StepWork } from "../motions/work.ts";
import type { Draft } from "./draft.ts";

/** Steps before which their panel is turned over. A panel may begin on either side. */
export function turnedSteps(order: readonly Draft[]): ReadonlySet<string> {
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

/** For each step those that come directly before it, in the order of the steps. */
export function stepsBefore(
  edges: readonly Precedence[],
  numbers: ReadonlyMap<string, number>,
): ReadonlyMap<string, readonly string[]> {
  const before = new Map<string, string[]>();
  for (const { beforeId, afterId } of edges) {
    const known = before.get(afterId);
    if (known === undefined) before.set(afterId, [beforeId]);
    else known.push(beforeId);
  }
  for (const ids of before.values()) ids.sort((a, b) => (numbers.get(a) ?? 0) - (numbers.get(b) ?? 0));
  return before;
}

/** A step in its place. What somebody has set as its time holds, turn-over and all. */
export function workStep(
  draft: Draft,
  work: StepWork,
  at: { readonly number: number; readonly isTurned: boolean; readonly afterIds: readonly string[] },
  t: TimeNumbers,
): WorkStep {
  const turn: readonly Motion[] = motion("turn-over", at.isTurned ? 1 : 0, t.turn_over_s);
  const motions = [...turn, ...work.motions];
  const { setSeconds } = draft;
  const isAllSet = motions.length > 0 && motions.every(({ set }) => set);
  return {
    id: draft.id,
    number: at.number,
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
    afterIds: at.afterIds,
    motions,
    seconds: setSeconds ?? secondsOf(motions, t.rest_pct),
    secondsFrom: setSeconds !== null || isAllSet ? "designer" : "motions",
    skill: draft.skill,
    tools: work.tools,
    cautions: draft.cautions,
    stationId: draft.stationId,
  };
}
