import type { HarnessRoute, HarnessWires, Machine, RouteWork } from "../model/index.ts";
import { type HarnessProblem, harnessProblem, insertions, landingsOf } from "./harness-problem.ts";
import { type HeldRoute, heldRoutes } from "./held.ts";
import { type LaneGraph, laneGraph } from "./lane-graph.ts";
import { routeLowerBound } from "./search/bound.ts";
import { measureRoute, type RouteMeasure } from "./search/measure.ts";
import type { RouteProblem, RouteSolution } from "./search/problem.ts";
import { searchRoute } from "./search/search.ts";
import { treeOf } from "./tree-of.ts";

export interface RouteOptions {
  /** The machine's lane graph, when it is at hand; else it is made. */
  readonly graph?: LaneGraph;
  /** Elementary steps of the search. */
  readonly steps?: number;
}

/** Lane graphs up to this size are searched more thoroughly: there every tenth of a per cent can be had. */
const SMALL_LANES = 150;

/** Steps of the search: some 25 ms for a small lane graph, 5 ms for a harness of 30 landings in a whole machine. */
export const usualSteps = (problem: RouteProblem): number =>
  problem.lanes.length <= SMALL_LANES ? 1_500_000 : 20_000 + 6_000 * problem.landings.length;

/** Minutes added to a lane off the settled trunk while the trunk is being kept. Our own choice, no source. */
const OFF_TRUNK_MIN = 30;

/**
 * Routes one harness: a tree of lanes and crossings, and a tail from every landing to a waypoint of its own panel
 * and side, of the least total = minutes + metres × `lay_wire_m_min`; minutes = breakouts × `breakout_min` (d
 * branches at a waypoint: (d − 2) ÷ `breakout_branches`, rounded up) + ties × `tie_min` (a lane, or a tail of two
 * or more wires, has its length ÷ `tie_spacing_mm` ties, a crossing none) + contacts × `insertion_min` + splices
 * × `splice_min`. Lane capacity, classes that a lane keeps out and classes that must be
 * apart are obeyed wherever some tree obeys them. `trunk`, `attach` and `splice-place` choices are held.
 * The same harness always gets the same route, however the rows of the tables are ordered.
 */
export function routeHarness(
  machine: Machine,
  harness: HarnessWires,
  options: RouteOptions = {},
): HarnessRoute {
  return routeOn(machine, harness, heldRoutes(machine, harness.harnessId), options);
}

/** Routes a harness with the first of several sets of held choices that reaches all landings and breaks no rule. */
export function routeOn(
  machine: Machine,
  harness: HarnessWires,
  tries: readonly HeldRoute[],
  options: RouteOptions,
): HarnessRoute {
  const graph = options.graph ?? laneGraph(machine);
  let best: Attempt | null = null;
  for (const held of tries) {
    const set = harnessProblem(machine, harness, graph, held);
    const steps = options.steps ?? usualSteps(set.problem);
    const solution = searchRoute(preferring(set, held.rather), { steps, seed: 1 });
    const measure = solution === null ? null : measureRoute(set.problem, solution);
    const attempt = { set, solution, measure };
    if (best === null || isBetter(attempt, best)) best = attempt;
    if (set.unreached.length === 0 && measure !== null && measure.penaltyMin === 0) break;
  }
  if (best === null || best.solution === null || best.measure === null) return loneRoute(machine, harness);
  return {
    ...treeOf(machine, harness, best.set, best.solution, best.measure),
    work: workOf(machine, harness, best),
  };
}

interface Attempt {
  readonly set: HarnessProblem;
  readonly solution: RouteSolution | null;
  readonly measure: RouteMeasure | null;
}

/** Fewer landings left out go first, then less of broken rules; what is held more strictly wins ties. */
function isBetter(a: Attempt, b: Attempt): boolean {
  const left = a.set.unreached.length - b.set.unreached.length;
  if (left !== 0) return left < 0;
  if (a.measure === null || b.measure === null) return b.measure === null && a.measure !== null;
  return a.measure.penaltyMin < b.measure.penaltyMin - 1e-9;
}

/** The problem with the lanes that are not wanted made dear. */
function preferring(set: HarnessProblem, rather: ReadonlySet<string> | null): RouteProblem {
  if (rather === null) return set.problem;
  return {
    ...set.problem,
    lanes: set.problem.lanes.map((lane, i) => {
      const id = set.lanes[i]?.id;
      return id !== undefined && rather.has(id) ? lane : { ...lane, minutes: lane.minutes + OFF_TRUNK_MIN };
    }),
  };
}

/** What a route costs, beside the least that any route of the same landings under the same pins could cost. */
function workOf(machine: Machine, harness: HarnessWires, attempt: Attempt): RouteWork {
  const { set, measure } = attempt;
  const { numbers } = machine.shop;
  const branchMin = measure?.branchMin ?? 0;
  const breakouts = measure?.breakouts ?? 0;
  const value = measure?.totalMin ?? set.problem.fixedMin;
  const metres = measure?.metres ?? 0;
  const lowerBound = Math.min(value, routeLowerBound(set.problem));
  return {
    breakouts,
    ties: numbers.tie_min > 0 ? branchMin / numbers.tie_min : 0,
    insertions: insertions(harness),
    splices: harness.splices.length,
    minutes: value - metres * numbers.lay_wire_m_min,
    metres,
    total: { value, lowerBound, gap: lowerBound > 0 ? (value - lowerBound) / lowerBound : 0 },
  };
}

/** A harness whose landings no lane joins: one landing alone has nothing to be joined to, several are unreached. */
function loneRoute(machine: Machine, harness: HarnessWires): HarnessRoute {
  const landings = landingsOf(machine, harness);
  const first = landings[0];
  const { numbers } = machine.shop;
  const contacts = insertions(harness);
  const minutes = contacts * numbers.insertion_min + harness.splices.length * numbers.splice_min;
  const alone = landings.length === 1;
  return {
    harnessId: harness.harnessId,
    rootId: first === undefined ? "" : `landing:${first.id}`,
    nodes:
      first === undefined
        ? []
        : [{ id: `landing:${first.id}`, kind: "landing", place: first.place, breakout: false }],
    branches: [],
    paths: new Map(alone && harness.splices.length === 0 ? harness.wires.map((w) => [w.id, []]) : []),
    spliceAt: new Map(),
    unreached: alone ? [] : landings.map((l) => l.id),
    work: {
      breakouts: 0,
      ties: 0,
      insertions: contacts,
      splices: harness.splices.length,
      minutes,
      metres: 0,
      total: { value: minutes, lowerBound: minutes, gap: 0 },
    },
  };
}
