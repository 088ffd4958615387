import type { LineResult } from "@pinwright/engine";
import { type CircuitGraph, circuitGraph } from "./graph.ts";
import { powerTree, type Rails, railsOf, type SupplyNode } from "./rails.ts";

export { type Circuit, circuitsOf } from "./circuits.ts";
export type { FuseNode, SupplyNode } from "./rails.ts";
export type { Branch, Stop } from "./walk.ts";

/** How a machine's power is shared out. */
export interface Power {
  readonly graph: CircuitGraph;
  readonly rails: Rails;
  /** Mains first, each supply after the one that it is made from. */
  readonly supplies: readonly SupplyNode[];
}

const known = new WeakMap<LineResult, Power>();

/** Supplies and fuses of a machine as a tree; several sheets ask for it. */
export function powerOf(line: LineResult): Power {
  const own = known.get(line);
  if (own !== undefined) return own;
  const graph = circuitGraph(line);
  const rails = railsOf(graph, line.machine.book.tables.supplies);
  const power = { graph, rails, supplies: powerTree(line, graph, rails, line.electric) };
  known.set(line, power);
  return power;
}
