import type { Finding, HarnessRoute, HarnessWires, Machine, RouteCourse, Wire } from "../../model/index.ts";
import { type CrossingLength, crossingLengths } from "../crossing-lengths.ts";
import { type LaneGraph, laneGraph } from "../lane-graph.ts";

/** One harness with its route. */
export interface RoutedHarness {
  readonly wires: HarnessWires;
  readonly route: HarnessRoute;
}

/** One harness with the course of its route, which is all that most rules look at. */
export interface LaidHarness {
  readonly wires: Pick<HarnessWires, "harnessId" | "wires" | "splices">;
  readonly route: RouteCourse;
}

/** What the checks of routes look at. */
export interface RouteFacts {
  readonly machine: Machine;
  readonly graph: LaneGraph;
  readonly crossings: ReadonlyMap<string, CrossingLength>;
  readonly harnesses: readonly LaidHarness[];
  /** Wires of all harnesses by the lane or crossing that they lie in. */
  readonly wiresIn: ReadonlyMap<string, readonly Wire[]>;
}

/** One rule: everything that it finds. */
export type RouteRule = (facts: RouteFacts) => readonly Finding[];

export function routeFacts(
  machine: Machine,
  harnesses: readonly LaidHarness[],
  graph: LaneGraph = laneGraph(machine),
): RouteFacts {
  const wiresIn = new Map<string, Wire[]>();
  for (const { wires, route } of harnesses) {
    const along = new Set(route.branches.filter((b) => b.kind !== "tail").map((b) => b.id));
    for (const wire of wires.wires)
      for (const id of route.paths.get(wire.id) ?? []) {
        if (!along.has(id)) continue;
        const list = wiresIn.get(id);
        if (list === undefined) wiresIn.set(id, [wire]);
        else list.push(wire);
      }
  }
  return { machine, graph, crossings: crossingLengths(machine), harnesses, wiresIn };
}
