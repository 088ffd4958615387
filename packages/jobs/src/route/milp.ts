import { breakoutsAt, measureRoute, type RouteProblem, type RouteSolution } from "@pinwright/engine";
import loadHighs from "highs";
import { breakoutSpots, names, routeModel } from "./model.ts";

/** What the solver proved of a routing problem. */
export interface RouteProof {
  /** `optimal`: proven within the tolerance; `limit`: time ran out; `infeasible`: no tree obeys the rules. */
  readonly status: "optimal" | "limit" | "infeasible";
  /** Total of the best tree found, minutes; null when none was. */
  readonly valueMin: number | null;
  /** No tree that obeys the rules has a smaller total, minutes. */
  readonly boundMin: number;
  readonly solution: RouteSolution | null;
}

export interface RouteMilpOptions {
  /** Most seconds; a proof that takes longer is given up. */
  readonly seconds?: number;
  /** A tree that is known already: the solver starts from it. */
  readonly start?: RouteSolution;
}

/** Relative gap at which the solver may stop: far below the 1 % that routes are judged by. */
const RELATIVE_GAP = 1e-6;

type Highs = Awaited<ReturnType<typeof loadHighs>>;
let loaded: Promise<Highs> | null = null;

/**
 * Solves the routing of one harness exactly, for small lane graphs (about 40 spots and 12 wires take seconds). The
 * objective is that of `searchRoute` without penalties: what would be penalised is forbidden here.
 * @throws Error when the solver can't read the model, which is a fault of this program
 */
export async function routeMilp(problem: RouteProblem, options: RouteMilpOptions = {}): Promise<RouteProof> {
  const main = mainLanding(problem);
  const { start, ...limits } = options;
  const proof = await solve(rooted(problem, main), {
    ...limits,
    ...(start === undefined ? {} : { start: reordered(start, main) }),
  });
  return { ...proof, solution: proof.solution === null ? null : reordered(proof.solution, main) };
}

/** The landing that most wires end at: with it as root most flows share the direction of the tree. */
function mainLanding(problem: RouteProblem): number {
  const ends = problem.landings.map(
    (_, l) => problem.wires.filter(({ a, b }) => a !== b && (a === l || b === l)).length,
  );
  return Math.max(0, ends.indexOf(Math.max(...ends)));
}

/** A list with its first entry and another one exchanged. */
const exchanged = <T>(list: readonly T[], other: number): T[] => {
  const place = (i: number): number => (i === 0 ? other : i === other ? 0 : i);
  return list.flatMap((_, i) => list.slice(place(i), place(i) + 1));
};

/** The problem with a landing as the first one, and the first one in its place. */
function rooted(problem: RouteProblem, main: number): RouteProblem {
  const place = (terminal: number): number => (terminal === 0 ? main : terminal === main ? 0 : terminal);
  return {
    ...problem,
    landings: exchanged(problem.landings, main),
    wires: problem.wires.map((wire) => ({ ...wire, a: place(wire.a), b: place(wire.b) })),
  };
}

const reordered = (solution: RouteSolution, main: number): RouteSolution => ({
  ...solution,
  attach: exchanged(solution.attach, main),
});

async function solve(problem: RouteProblem, options: RouteMilpOptions): Promise<RouteProof> {
  loaded ??= loadHighs();
  const highs = await loaded;
  return highs.withModel({ format: "lp", data: routeModel(problem) }, (model): RouteProof => {
    model.options.set({ output_flag: false, mip_rel_gap: RELATIVE_GAP, random_seed: 1 });
    if (options.seconds !== undefined) model.options.set("time_limit", options.seconds);
    if (options.start !== undefined) {
      const entries = startValues(problem, options.start).map(([name, value]): [number, number] => [
        model.getColByName(name),
        value,
      ]);
      entries.sort(([a], [b]) => a - b);
      model.setSolution({ indices: entries.map(([i]) => i), values: entries.map(([, value]) => value) });
    }
    const { modelStatus } = model.run();
    const codes = highs.constants.modelStatus;
    if (modelStatus === codes.infeasible)
      return { status: "infeasible", valueMin: null, boundMin: Number.POSITIVE_INFINITY, solution: null };
    if (modelStatus !== codes.optimal && modelStatus !== codes.timeLimit)
      throw new Error(`route model: the solver ended with status ${modelStatus}`);
    const boundMin = Number(model.info.get("mip_dual_bound")) + problem.fixedMin;
    const { colValue } = model.getSolution();
    const chosen = (name: string): boolean => (colValue[model.getColByName(name)] ?? 0) > 0.5;
    const solution = colValue.length === 0 ? null : readSolution(problem, chosen);
    const optimal = modelStatus === codes.optimal;
    return {
      status: optimal ? "optimal" : "limit",
      valueMin: solution === null ? null : measureRoute(problem, solution).totalMin,
      boundMin,
      solution,
    };
  });
}

/** Every whole-numbered variable of a tree. */
function startValues(problem: RouteProblem, start: RouteSolution): (readonly [string, number])[] {
  const used = new Set(start.lanes);
  const ways = waysFromFirst(problem, start);
  const { branchesAt } = measureRoute(problem, start);
  const breakouts = new Set(breakoutSpots(problem));
  return [
    ...problem.lanes.flatMap((_, e): [string, number][] => [
      [names.arc(e, 0), used.has(e) && ways.get(e) === 0 ? 1 : 0],
      [names.arc(e, 1), used.has(e) && ways.get(e) === 1 ? 1 : 0],
    ]),
    ...problem.landings.flatMap(({ candidates }, l) =>
      candidates.map((_, k): [string, number] => [names.tail(l, k), start.attach[l] === k ? 1 : 0]),
    ),
    ...problem.splices.flatMap(({ places }, s) =>
      places.map((_, k): [string, number] => [names.splice(s, k), start.spliceAt[s] === k ? 1 : 0]),
    ),
    ...[...breakouts].map((v): [string, number] => [
      names.breakout(v),
      breakoutsAt(branchesAt[v] ?? 0, problem.breakoutBranches),
    ]),
  ];
}

/** Direction of every lane of a tree, away from the first landing: 0 from a to b, 1 from b to a. */
function waysFromFirst(problem: RouteProblem, start: RouteSolution): ReadonlyMap<number, 0 | 1> {
  const ways = new Map<number, 0 | 1>();
  const queue = [problem.landings[0]?.candidates[start.attach[0] ?? -1]?.spot];
  for (const spot of queue)
    for (const e of start.lanes) {
      const lane = problem.lanes[e];
      if (lane === undefined || ways.has(e) || (lane.a !== spot && lane.b !== spot)) continue;
      ways.set(e, lane.a === spot ? 0 : 1);
      queue.push(lane.a === spot ? lane.b : lane.a);
    }
  return ways;
}

function readSolution(problem: RouteProblem, chosen: (name: string) => boolean): RouteSolution {
  return {
    lanes: [...problem.lanes.keys()].filter((e) => chosen(names.arc(e, 0)) || chosen(names.arc(e, 1))),
    attach: problem.landings.map(({ candidates }, l) =>
      candidates.findIndex((_, k) => chosen(names.tail(l, k))),
    ),
    spliceAt: problem.splices.map(({ places }, s) => places.findIndex((_, k) => chosen(names.splice(s, k)))),
  };
}
