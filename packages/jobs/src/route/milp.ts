import { measureRoute, type RouteProblem, type RouteSolution } from "@pinwright/engine";
import loadHighs from "highs";
import { names, routeModel } from "./model.ts";

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
  loaded ??= loadHighs();
  const highs = await loaded;
  return highs.withModel({ format: "lp", data: routeModel(problem) }, (model): RouteProof => {
    model.options.set({ output_flag: false, mip_rel_gap: RELATIVE_GAP, random_seed: 1 });
    if (options.seconds !== undefined) model.options.set("time_limit", options.seconds);
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

function readSolution(problem: RouteProblem, chosen: (name: string) => boolean): RouteSolution {
  return {
    lanes: [...problem.lanes.keys()].filter((e) => chosen(names.arc(e, 0)) || chosen(names.arc(e, 1))),
    attach: problem.landings.map(({ candidates }, l) =>
      candidates.findIndex((_, k) => chosen(names.tail(l, k))),
    ),
    spliceAt: problem.splices.map(({ places }, s) => places.findIndex((_, k) => chosen(names.splice(s, k)))),
  };
}
