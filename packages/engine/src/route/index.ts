export { APART_PAIRS, mustBeApart } from "./apart.ts";
export type { RoutedHarness } from "./checks/facts.ts";
export { checkCourses, checkRoutes, checkTails } from "./checks/index.ts";
export { type CrossingLength, crossingLengths, type PoseDistance } from "./crossing-lengths.ts";
export { type GraphLane, type GraphSpot, type LaneGraph, laneGraph } from "./lane-graph.ts";
export { type RouteOptions, routeHarness, usualSteps } from "./route-harness.ts";
export { leastBreakouts, routeLowerBound } from "./search/bound.ts";
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
export { breakoutsAt } from "./search/problem.ts";
export { type SearchOptions, searchRoute } from "./search/search.ts";
export { settleRoute } from "./settle.ts";
export { trunkWork } from "./trunk-work.ts";
