import { createGraph, type Graph, otherEnd, type ShortestPaths, shortestPaths } from "@pinwright/kernel";
import { isCopper } from "../network/copper.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { type Conditions, ohmOf } from "../network/values.ts";

/** Copper, contacts and fuses of the machine as a graph; no load, driver or source is passed. */
export interface CopperGraph {
  readonly graph: Graph;
  readonly parts: readonly Part[];
  readonly nodes: readonly string[];
  readonly indexOf: ReadonlyMap<string, number>;
}

/** Whether a fault current passes a part as if it were wire: contacts count as closed. */
const conducts = (part: Part): boolean =>
  isCopper(part) || (part.kind === "element" && part.element.row.kind === "contact");

export function copperGraph(all: readonly Part[], conditions: Conditions): CopperGraph {
  const parts = all.filter(conducts);
  const indexOf = new Map<string, number>();
  for (const { a, b } of all)
    for (const node of [a, b]) if (!indexOf.has(node)) indexOf.set(node, indexOf.size);
  const edges = parts.map((part) => ({
    a: indexOf.get(part.a) ?? 0,
    b: indexOf.get(part.b) ?? 0,
    cost: ohmOf(part, conditions),
  }));
  return { graph: createGraph(indexOf.size, edges), parts, nodes: [...indexOf.keys()], indexOf };
}

/** Least-resistance ways over copper from one end of a source. */
export class Reach {
  readonly #copper: CopperGraph;
  readonly #paths: ShortestPaths;

  constructor(copper: CopperGraph, from: string) {
    this.#copper = copper;
    this.#paths = shortestPaths(copper.graph, [copper.indexOf.get(from) ?? 0]);
  }

  /** Nodes that it leads to, in the order of the parts. */
  get nodes(): readonly string[] {
    return this.#copper.nodes.filter((_, i) => Number.isFinite(this.#paths.distance[i]));
  }

  /** Resistance of the way to a node; endless where none leads. */
  ohm(node: string): number {
    return this.#paths.distance[this.#copper.indexOf.get(node) ?? -1] ?? Number.POSITIVE_INFINITY;
  }

  /** Parts of the way to a node, the last first, each with the node on its far side. */
  *back(node: string): Iterable<{ readonly part: Part; readonly far: string }> {
    const { graph, parts, nodes, indexOf } = this.#copper;
    let at = indexOf.get(node) ?? -1;
    for (let e = this.#paths.parentEdge[at] ?? -1; e >= 0; e = this.#paths.parentEdge[at] ?? -1) {
      const part = parts[e];
      if (part !== undefined) yield { part, far: nodes[at] ?? "" };
      at = otherEnd(graph, e, at);
    }
  }
}

/** A source with its ways out and back. */
export interface Feeding {
  readonly source: SourcePart;
  readonly feed: Reach;
  readonly back: Reach;
}

export const feedingOf = (copper: CopperGraph, source: SourcePart): Feeding => ({
  source,
  feed: new Reach(copper, source.a),
  back: new Reach(copper, source.b),
});
