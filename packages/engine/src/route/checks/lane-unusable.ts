import { makeFinding } from "../../model/index.ts";
import type { RouteRule } from "./facts.ts";

/**
 * `lane-unusable`: a lane whose ends are not on one side of one panel, or a crossing of which neither a length nor a
 * pose tells how long it is. No wire is routed over it.
 */
export const laneUnusable: RouteRule = ({ graph }) =>
  graph.unusable.map((id) => makeFinding("lane-unusable", "error", [id]));
