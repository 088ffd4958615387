import { measureRoute } from "../search/measure.ts";
import type { RouteProblem, RouteSolution } from "../search/problem.ts";

/**
 * The least total of any tree, minutes, by trying all sets of lanes, all tails and all places of splices: for
 * problems with very few of each.
 */
export function leastTotalMin(problem: RouteProblem): number {
  let least = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 2 ** problem.lanes.length; set++) {
    const lanes = problem.lanes.map((_, i) => i).filter((i) => (set & (1 << i)) !== 0);
    for (const attach of choices(problem.landings.map((l) => l.candidates.length)))
      for (const spliceAt of choices(problem.splices.map((s) => s.places.length))) {
        const total = totalOf(problem, { lanes, attach, spliceAt });
        if (total !== null && total < least) least = total;
      }
  }
  return least;
}

function totalOf(problem: RouteProblem, solution: RouteSolution): number | null {
  try {
    const { totalMin, penaltyMin } = measureRoute(problem, solution);
    return totalMin + penaltyMin;
  } catch {
    return null;
  }
}

function choices(counts: readonly number[]): readonly (readonly number[])[] {
  let all: readonly (readonly number[])[] = [[]];
  for (const count of counts)
    all = all.flatMap((head) => Array.from({ length: count }, (_, k) => [...head, k]));
  return all;
}
