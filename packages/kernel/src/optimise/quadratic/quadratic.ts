import { gilmoreLawlerBound } from "./bound.ts";
import { type QuadraticProblem, tablesOf } from "./problem.ts";
import { greedyPlacement, tabuSearch } from "./search.ts";

/** How long is searched, in counted steps, not in seconds. */
export interface QuadraticEffort {
  /** Exchanges and moves that are looked at. */
  readonly steps: number;
}

/** A place for every thing. */
export interface QuadraticAssignment {
  readonly placeOf: readonly number[];
  /** Sum over all pairs of things, each once, of weight × cost of their places. */
  readonly value: number;
  /** No placement costs less. */
  readonly lowerBound: number;
  /** Exchanges and moves that were looked at. */
  readonly steps: number;
}

const EFFORT: QuadraticEffort = { steps: 200_000 };

/**
 * Quadratic assignment (T. C. Koopmans, M. Beckmann, Econometrica 25 (1957) 53–76), symmetric and without costs of a
 * single thing at a place: things get places so that the sum over pairs of weight × cost is small. Greedy start, then
 * tabu search, and the bound of Gilmore and Lawler. The same problem gives the same answer.
 * @throws RangeError as `tablesOf` does.
 */
export function assignQuadratic(
  problem: QuadraticProblem,
  effort: QuadraticEffort = EFFORT,
): QuadraticAssignment {
  const tables = tablesOf(problem);
  const lowerBound = gilmoreLawlerBound(tables);
  const { placeOf, value, steps } = tabuSearch(tables, greedyPlacement(tables), effort.steps, tables.n);
  return { placeOf: [...placeOf], value, lowerBound: Math.min(lowerBound, value), steps };
}
