import {
  apartPenaltyMin,
  breakoutsAt,
  overfullPenaltyMin,
  PENALTY,
  type RouteProblem,
  type RouteSolution,
} from "./problem.ts";

/** A solution measured from scratch: what the search is judged by, and the optimum of a solver as well. */
export interface RouteMeasure {
  readonly breakouts: number;
  /** Minutes of lanes and tails: ties. */
  readonly branchMin: number;
  readonly metres: number;
  /** Breakouts, branches, fixed minutes and the price of the metres. */
  readonly totalMin: number;
  /** Minutes that stand for broken rules; 0 when none is broken. */
  readonly penaltyMin: number;
  /** For each wire the lanes from its first end to its second. */
  readonly paths: readonly (readonly number[])[];
  /** Branches that meet at each spot: lanes and tails. */
  readonly branchesAt: readonly number[];
}

/**
 * Measures a solution: breakouts (`breakoutsAt` of every spot), minutes of the branches, metres over all wires' paths, and penalties. total = breakouts × price + branches + metres × price + fixed.
 * @throws RangeError when the lanes are no tree that joins all terminals.
 */
export function measureRoute(problem: RouteProblem, solution: RouteSolution): RouteMeasure {
  const { parent, parentLane, depth } = walkTree(problem, solution);
  const branchesAt = new Array<number>(problem.spots).fill(0);
  const add = (spot: number): void => {
    branchesAt[spot] = (branchesAt[spot] ?? 0) + 1;
  };
  let branchMin = 0;
  for (const index of solution.lanes) {
    const lane = laneOf(problem, index);
    add(lane.a);
    add(lane.b);
    branchMin += lane.minutes;
  }
  const at: number[] = [];
  const tailMm: number[] = [];
  problem.landings.forEach((landing, i) => {
    const tail = landing.candidates[solution.attach[i] ?? -1];
    if (tail === undefined) throw new RangeError(`landing ${i} has no tail`);
    add(tail.spot);
    branchMin += tail.minutes;
    at.push(tail.spot);
    tailMm.push(tail.lengthMm);
  });
  let penaltyMin = 0;
  problem.splices.forEach((splice, i) => {
    const place = splice.places[solution.spliceAt[i] ?? -1];
    if (place === undefined) throw new RangeError(`splice ${i} has no place`);
    penaltyMin += place.penaltyMin;
    at.push(place.spot);
  });
  for (const spot of at) if ((depth[spot] ?? -1) < 0) throw new RangeError(`spot ${spot} is not on the tree`);

  const square = new Map<number, number>();
  const classes = new Map<number, Set<number>>();
  let wireMm = 0;
  const paths = problem.wires.map((wire) => {
    if (wire.a === wire.b) return [];
    wireMm += (tailMm[wire.a] ?? 0) + (tailMm[wire.b] ?? 0);
    let a = at[wire.a] ?? 0;
    let b = at[wire.b] ?? 0;
    const fromA: number[] = [];
    const fromB: number[] = [];
    while (a !== b) {
      if ((depth[a] ?? 0) >= (depth[b] ?? 0)) {
        fromA.push(parentLane[a] ?? 0);
        a = parent[a] ?? 0;
      } else {
        fromB.push(parentLane[b] ?? 0);
        b = parent[b] ?? 0;
      }
    }
    const path = [...fromA, ...fromB.reverse()];
    for (const index of path) {
      const lane = laneOf(problem, index);
      wireMm += lane.lengthMm;
      square.set(index, (square.get(index) ?? 0) + wire.squareMm2);
      classes.set(index, (classes.get(index) ?? new Set()).add(wire.classIndex));
      if (lane.forbidden.includes(wire.classIndex)) penaltyMin += PENALTY.forbiddenMin;
    }
    return path;
  });
  for (const [index, squareMm2] of square)
    penaltyMin += overfullPenaltyMin(squareMm2, laneOf(problem, index).maxSquareMm2);
  for (const [index, present] of classes)
    if (problem.apart.some(([x, y]) => present.has(x) && present.has(y)))
      penaltyMin += apartPenaltyMin(laneOf(problem, index).lengthMm);

  const breakouts = branchesAt.reduce((sum, n) => sum + breakoutsAt(n, problem.breakoutBranches), 0);
  const metres = wireMm / 1000;
  const totalMin =
    breakouts * problem.breakoutMin + branchMin + metres * problem.layMinPerM + problem.fixedMin;
  return { breakouts, branchMin, metres, totalMin, penaltyMin, paths, branchesAt };
}

const laneOf = (problem: RouteProblem, index: number) => {
  const lane = problem.lanes[index];
  if (lane === undefined) throw new RangeError(`there is no lane ${index}`);
  return lane;
};

/** Parents, lanes to the parent and depths (−1 off the tree) of the spots, from the first landing's spot. */
function walkTree(problem: RouteProblem, solution: RouteSolution) {
  const start = problem.landings[0]?.candidates[solution.attach[0] ?? -1]?.spot ?? 0;
  const parent = new Array<number>(problem.spots).fill(-1);
  const parentLane = new Array<number>(problem.spots).fill(-1);
  const depth = new Array<number>(problem.spots).fill(-1);
  const beside = new Map<number, { lane: number; to: number }[]>();
  const link = (from: number, to: number, lane: number): void => {
    const list = beside.get(from);
    if (list === undefined) beside.set(from, [{ lane, to }]);
    else list.push({ lane, to });
  };
  for (const index of solution.lanes) {
    const lane = laneOf(problem, index);
    link(lane.a, lane.b, index);
    link(lane.b, lane.a, index);
  }
  depth[start] = 0;
  const queue = [start];
  for (const spot of queue)
    for (const { lane, to } of beside.get(spot) ?? []) {
      if (lane === parentLane[spot]) continue;
      if ((depth[to] ?? -1) >= 0) throw new RangeError(`lane ${lane} closes a loop`);
      depth[to] = (depth[spot] ?? 0) + 1;
      parent[to] = spot;
      parentLane[to] = lane;
      queue.push(to);
    }
  if (queue.length !== solution.lanes.length + 1) throw new RangeError("the lanes are not one tree");
  return { parent, parentLane, depth };
}
