import { createGraph, IndexHeap, steinerLowerBound } from "@pinwright/kernel";
import { drawnTogether, surroundings } from "./narrow.ts";
import type { RouteProblem } from "./problem.ts";

/**
 * A total (minutes) that no route which obeys the rules can beat. Three parts are added up:
 * - dual ascent for the Steiner tree of the landings over the lanes, priced by their own work (`steinerLowerBound`;
 *   every tail is made equally dear, which is taken off again, so that trees do not run through landings), and the
 *   cheapest tail of each landing with the wires that it carries in any case;
 * - for every pair of landings with wires between them the shortest way, priced by the wires, by an equal share of
 *   what dual ascent left of the lanes, and of what each tail costs more than the cheapest; for a splice of k wires
 *   the ways between its ends ÷ (k − 1);
 * - the fewest breakouts that the degrees allow.
 * Of a large lane graph, panels on which nothing of the harness lies count as one spot each.
 */
export function routeLowerBound(problem: RouteProblem): number {
  if (problem.landings.length < 2) return problem.fixedMin;
  const large = problem.lanes.length > FINE_LANES;
  const less = large ? drawnTogether(problem, surroundings(problem)) : problem;
  const tree = treeBound(less);
  return (
    problem.fixedMin + tree.bound + wireBound(less, tree) + leastBreakouts(problem) * problem.breakoutMin
  );
}

interface TreeBound {
  readonly bound: number;
  /** What is left of the cost of each lane, whichever way it is passed, and of each landing's tails. */
  readonly lanes: readonly number[];
  readonly tails: readonly (readonly number[])[];
}

function treeBound(problem: RouteProblem): TreeBound {
  const ends = new Array<number>(problem.landings.length).fill(0);
  for (const { a, b } of problem.wires)
    if (a !== b) for (const end of [a, b]) if (end < ends.length) ends[end] = (ends[end] ?? 0) + 1;
  const dear = problem.lanes.reduce((most, lane) => Math.max(most, lane.minutes), 1) * 4;
  const grain = grainOf(problem);
  const edges = problem.lanes.map((lane) => ({
    a: lane.a,
    b: lane.b,
    cost: grain === 0 ? lane.minutes : Math.floor(lane.minutes / grain) * grain,
  }));
  let leastTails = 0;
  const tails = problem.landings.map((landing, i) => {
    const prices = landing.candidates.map(
      (tail) => tail.minutes + (tail.lengthMm / 1000) * problem.layMinPerM * (ends[i] ?? 0),
    );
    const least = prices.reduce((x, y) => Math.min(x, y), Number.POSITIVE_INFINITY);
    leastTails += least;
    for (const tail of landing.candidates) edges.push({ a: tail.spot, b: problem.spots + i, cost: dear });
    return prices.map((price) => price - least);
  });
  const count = problem.landings.length;
  const graph = createGraph(problem.spots + count, edges);
  const terminals = farApart(problem);
  const { bound, reduced } = steinerLowerBound(
    graph,
    terminals.map((i) => problem.spots + i),
  );
  return {
    bound: Math.max(0, bound - terminals.length * dear) + leastTails,
    lanes: problem.lanes.map(
      (lane, i) =>
        Math.min(reduced[2 * i] ?? 0, reduced[2 * i + 1] ?? 0) + lane.minutes - (edges[i]?.cost ?? 0),
    ),
    tails,
  };
}

/** More lanes than this are priced in steps for dual ascent, which then meets many of them at once. */
const FINE_LANES = 150;
/** Steps in an average lane: an eighth is lost of the shortest lanes, a sixteenth of most. */
const STEPS_PER_LANE = 8;

/** Step in minutes that lanes are rounded down to, 0 for none; what is rounded off stays with what is left of a lane. */
function grainOf(problem: RouteProblem): number {
  const count = problem.lanes.length;
  if (count <= FINE_LANES) return 0;
  return problem.lanes.reduce((sum, lane) => sum + lane.minutes, 0) / count / STEPS_PER_LANE;
}

/** As many landings as dual ascent takes without being slow. */
const ENOUGH_LANDINGS = 12;

/**
 * The landings to join in the bound: all, or of many such that no two share a spot for their tails, those with the
 * fewest spots first. The tree of some landings costs no more than the tree of all.
 */
function farApart(problem: RouteProblem): readonly number[] {
  const all = problem.landings.map((_, i) => i);
  if (all.length <= ENOUGH_LANDINGS) return all;
  const spotsOf = (i: number) => problem.landings[i]?.candidates ?? [];
  const taken = new Set<number>();
  const chosen: number[] = [];
  for (const i of all.sort((a, b) => spotsOf(a).length - spotsOf(b).length || a - b)) {
    if (spotsOf(i).some((c) => taken.has(c.spot))) continue;
    chosen.push(i);
    for (const { spot } of spotsOf(i)) taken.add(spot);
  }
  return chosen;
}

function wireBound(problem: RouteProblem, tree: TreeBound): number {
  const count = problem.landings.length;
  const groups = new Map<string, { a: number; b: number; classIndex: number; wires: number }>();
  const spliceEnds = new Map<number, { landing: number; classIndex: number }[]>();
  for (const { a, b, classIndex } of problem.wires) {
    const [x, y] = a < b ? [a, b] : [b, a];
    if (x === y || x >= count) continue;
    if (y >= count) {
      spliceEnds.set(y, [...(spliceEnds.get(y) ?? []), { landing: x, classIndex }]);
      continue;
    }
    const key = `${x} ${y} ${classIndex}`;
    const group = groups.get(key) ?? { a: x, b: y, classIndex, wires: 0 };
    group.wires++;
    groups.set(key, group);
  }
  const ways = new Ways(problem);
  const share = 1 / Math.max(1, groups.size);
  const perLanding = new Array<number>(count).fill(0);
  for (const { a, b } of groups.values())
    for (const end of [a, b]) perLanding[end] = (perLanding[end] ?? 0) + 1;
  const tailLeft = (landing: number, k: number): number =>
    (tree.tails[landing]?.[k] ?? 0) / Math.max(1, perLanding[landing] ?? 1);
  let sum = 0;
  for (const { a, b, classIndex, wires } of groups.values())
    sum += ways.shortest(
      a,
      b,
      classIndex,
      (lane) => wires * lanePrice(problem, lane) + share * (tree.lanes[lane] ?? 0),
      tailLeft,
    );
  for (const ends of spliceEnds.values()) {
    let pairs = 0;
    for (const [i, x] of ends.entries())
      for (const y of ends.slice(i + 1))
        if (x.landing !== y.landing)
          pairs += ways.shortest(
            x.landing,
            y.landing,
            x.classIndex,
            (lane) => lanePrice(problem, lane),
            () => 0,
          );
    if (ends.length > 1) sum += pairs / (ends.length - 1);
  }
  return sum;
}

const lanePrice = (problem: RouteProblem, lane: number): number =>
  ((problem.lanes[lane]?.lengthMm ?? 0) / 1000) * problem.layMinPerM;

/** Shortest ways from one landing to another over lanes that a class may use. */
class Ways {
  private readonly beside: readonly (readonly { lane: number; to: number }[])[];
  private readonly heap: IndexHeap;
  private readonly label: Float64Array;
  private readonly goal: Float64Array;
  private readonly problem: RouteProblem;

  constructor(problem: RouteProblem) {
    this.problem = problem;
    const beside: { lane: number; to: number }[][] = Array.from({ length: problem.spots }, () => []);
    problem.lanes.forEach(({ a, b }, lane) => {
      beside[a]?.push({ lane, to: b });
      beside[b]?.push({ lane, to: a });
    });
    this.beside = beside;
    this.heap = new IndexHeap(problem.spots);
    this.label = new Float64Array(problem.spots);
    this.goal = new Float64Array(problem.spots).fill(Number.POSITIVE_INFINITY);
  }

  /** Price of the cheapest way with its two tails; 0 when the class cannot get there. */
  shortest(
    from: number,
    to: number,
    classIndex: number,
    priceOf: (lane: number) => number,
    tailPrice: (landing: number, candidate: number) => number,
  ): number {
    const { goal, heap, label, problem } = this;
    const goals = problem.landings[to]?.candidates ?? [];
    for (const [k, { spot }] of goals.entries())
      goal[spot] = Math.min(goal[spot] ?? Number.POSITIVE_INFINITY, tailPrice(to, k));
    label.fill(Number.POSITIVE_INFINITY);
    heap.clear();
    problem.landings[from]?.candidates.forEach(({ spot }, k) => {
      const price = tailPrice(from, k);
      if (price >= (label[spot] ?? 0)) return;
      label[spot] = price;
      heap.set(spot, price);
    });
    let best = Number.POSITIVE_INFINITY;
    while (heap.leastKey() < best) {
      const reached = heap.leastKey();
      const spot = heap.pop();
      best = Math.min(best, reached + (goal[spot] ?? Number.POSITIVE_INFINITY));
      for (const { lane, to: next } of this.beside[spot] ?? []) {
        if (problem.lanes[lane]?.forbidden.includes(classIndex) === true) continue;
        const price = reached + priceOf(lane);
        if (price >= (label[next] ?? 0)) continue;
        label[next] = price;
        heap.set(next, price);
      }
    }
    for (const { spot } of goals) goal[spot] = Number.POSITIVE_INFINITY;
    return Number.isFinite(best) ? best : 0;
  }
}

/**
 * Fewest breakouts of any tree with n landings at its ends: over its spots with more than two branches
 * Σ(branches − 2) is n − 2 or more; a breakout takes `breakoutBranches` of them, and a spot has no more branches
 * than lanes and possible tails meet there.
 */
export function leastBreakouts(problem: RouteProblem): number {
  const spare = new Int32Array(problem.spots).fill(-2);
  const add = (spot: number): void => {
    spare[spot] = (spare[spot] ?? 0) + 1;
  };
  for (const { a, b } of problem.lanes) {
    add(a);
    add(b);
  }
  for (const { candidates } of problem.landings)
    for (const spot of new Set(candidates.map((c) => c.spot))) add(spot);
  const each = problem.breakoutBranches;
  const takes = new Int32Array(each + 1);
  const take = (branches: number, times: number): void => {
    takes[branches] = (takes[branches] ?? 0) + times;
  };
  for (const more of spare)
    if (more > 0) {
      take(each, Math.floor(more / each));
      take(more % each, 1);
    }
  let missing = problem.landings.length - 2;
  let breakouts = 0;
  for (let branches = each; branches > 0 && missing > 0; branches--) {
    const times = Math.min(takes[branches] ?? 0, Math.ceil(missing / branches));
    missing -= times * branches;
    breakouts += times;
  }
  return breakouts;
}
