import { UnionFind } from "@pinwright/kernel";
import type { RouteProblem } from "./problem.ts";

/**
 * Whether a problem leaves nothing to search: every landing has one tail, every splice one place, and the lanes
 * make no loop, so that there is one tree at the most. A settled harness is like that.
 */
export function isForced(problem: RouteProblem): boolean {
  if (problem.landings.some((landing) => landing.candidates.length !== 1)) return false;
  if (problem.splices.some((splice) => splice.places.length !== 1)) return false;
  const parts = new UnionFind(problem.spots);
  return problem.lanes.every((lane) => parts.join(lane.a, lane.b));
}
