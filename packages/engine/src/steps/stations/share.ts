import type { BalanceProblem } from "@pinwright/kernel";
import type { WayBack, WorkStep } from "../../model/index.ts";

/** A step with the places that may do it, counted along its own line; null: any. */
export interface PlacedStep {
  readonly step: WorkStep;
  readonly places: readonly number[] | null;
}

/** Steps of one line made ready to be shared out. */
export interface Shared {
  readonly steps: readonly WorkStep[];
  readonly problem: BalanceProblem;
  readonly waysBack: readonly WayBack[];
}

/** A step with the ones before it, and the first place at which it can be. */
interface Standing {
  readonly before: readonly number[];
  readonly first: number;
}

/**
 * The balance of some steps. What comes before a step through steps that are not among them still comes before it.
 * Where fixed places stand the other way round than the steps, the panel goes back along the line: that precedence is
 * left out and told.
 * @param all every step in the order of assembly
 * @param mine those that are shared out, in that order
 */
export function shareOf(all: readonly WorkStep[], mine: readonly PlacedStep[]): Shared {
  const index = new Map(mine.map(({ step }, i) => [step.id, i]));
  const nearest = nearestBefore(all, index);
  const standings: Standing[] = [];
  const before: (readonly [number, number])[] = [];
  const waysBack: WayBack[] = [];
  mine.forEach(({ step, places }, i) => {
    const last = places?.at(-1) ?? Number.POSITIVE_INFINITY;
    const kept = new Set<number>();
    const seen = new Set<number>();
    const ask = [...(nearest.get(step.id) ?? [])];
    const direct = new Set(ask);
    for (let p = ask.pop(); p !== undefined; p = ask.pop()) {
      const standing = standings[p];
      if (standing === undefined || seen.has(p)) continue;
      seen.add(p);
      if (standing.first <= last) {
        kept.add(p);
        continue;
      }
      if (direct.has(p)) waysBack.push({ beforeId: mine[p]?.step.id ?? "", afterId: step.id });
      ask.push(...standing.before);
    }
    const sorted = [...kept].sort((a, b) => a - b);
    const least = sorted.reduce((most, p) => Math.max(most, standings[p]?.first ?? 0), 0);
    standings.push({ before: sorted, first: places?.find((place) => place >= least) ?? least });
    for (const p of sorted) before.push([p, i]);
  });
  const times = mine.map(({ step }) => step.seconds);
  return {
    steps: mine.map(({ step }) => step),
    problem: { times, before, allowed: mine.map(({ places }) => places) },
    waysBack,
  };
}

/** For each step the steps of `index` that come before it, directly or through others that are not in `index`. */
function nearestBefore(
  all: readonly WorkStep[],
  index: ReadonlyMap<string, number>,
): ReadonlyMap<string, readonly number[]> {
  const nearest = new Map<string, readonly number[]>();
  for (const step of all) {
    const found = new Set<number>();
    for (const id of step.afterIds) {
      const own = index.get(id);
      if (own !== undefined) found.add(own);
      else for (const far of nearest.get(id) ?? []) found.add(far);
    }
    nearest.set(step.id, [...found]);
  }
  return nearest;
}
