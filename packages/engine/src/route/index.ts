export { measureRoute, type RouteMeasure } from "./search/measure.ts";
export type {
  ProblemCandidate,
  ProblemLanding,
  ProblemLane,
  ProblemSplice,
  ProblemSplicePlace,
  ProblemWire,
  RouteProblem,
  RouteSolution,
} from "./search/problem.ts";
export { searchRoute } from "./search/search.ts";
