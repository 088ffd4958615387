import { createGraph, type Graph, otherEnd, type ShortestPaths, shortestPaths } from "@pinwright/kernel";
import { isCopper } from "../network/copper.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { type Conditions, ohmOf } from "../network/values.ts";

/**
 * Copper, contacts and fuses of the machine: what the current of a short circuit passes. It passes no load, driver or
 * source, and no earth: a return that carries it back is a conductor of its own.
 */
export interface CopperNet {
  readonly parts: readonly Part[];
  readonly nodes: readonly string[];
  readonly indexOf: ReadonlyMap<string, number>;
  /** Without resistances: they are given by corner. */
  readonly graph: Graph;
}

/** The same with the resistances of one corner. */
export interface CopperGraph extends CopperNet {
  readonly ohms: Float64Array;
}

/** Whether a fault current passes a part as if it were wire: contacts count as closed. */
const conducts = (part: Part): boolean =>
  isCopper(part) || (part.kind === "element" && part.element.row.kind === "contact");

/** @param isEarth whether a node belongs to an earth net */
export function copperNet(all: readonly Part[], isEarth: (node: string) => boolean): CopperNet {
  const parts = all.filter((part) => conducts(part) && !isEarth(part.a) && !isEarth(part.b));
  const indexOf = new Map<string, number>();
  for (const { a, b } of all)
    for (const node of [a, b]) if (!indexOf.has(node)) indexOf.set(node, indexOf.size);
  const edges = parts.map(({ a, b }) => ({ a: indexOf.get(a) ?? 0, b: indexOf.get(b) ?? 0, cost: 0 }));
  return { parts, nodes: [...indexOf.keys()], indexOf, graph: createGraph(indexOf.size, edges) };
}

/** The copper of these parts with the resistances of one corner, earth included. */
export const copperGraph = (parts: readonly Part[], conditions: Conditions): CopperGraph =>
  cornerGraph(
    copperNet(parts, () => false),
    conditions,
  );

/** @param only numbers of the parts whose resistances are wanted; without, all of them */
export function cornerGraph(net: CopperNet, conditions: Conditions, only?: readonly number[]): CopperGraph {
  const ohms = new Float64Array(net.parts.length);
  const fill = (n: number): void => {
    const part = net.parts[n];
    if (part !== undefined) ohms[n] = ohmOf(part, conditions);
  };
  if (only === undefined) for (let n = 0; n < ohms.length; n++) fill(n);
  else for (const n of only) fill(n);
  return { ...net, ohms };
}

/** A part on a way, with the node on its far side and what lies before it. */
export interface Step {
  readonly part: Part;
  readonly far: string;
  readonly before: Step | null;
}

/** Least-resistance ways over copper from one end of a source. */
export class Reach {
  /** Nodes that it leads to, nearest first, with the last step of the way; null at the source itself. */
  readonly steps: ReadonlyMap<string, Step | null>;
  readonly #ohm = new Map<string, number>();

  constructor({ graph, ohms, parts, nodes, indexOf }: CopperGraph, from: string) {
    const start = indexOf.get(from) ?? 0;
    const paths: ShortestPaths = shortestPaths(graph, [start], ohms);
    const near: number[] = [];
    paths.distance.forEach((ohm, n) => {
      if (Number.isFinite(ohm)) near.push(n);
    });
    near.sort((p, q) => (paths.distance[p] ?? 0) - (paths.distance[q] ?? 0) || p - q);
    const steps = new Map<string, Step | null>();
    for (const n of near) {
      const far = nodes[n] ?? "";
      const e = paths.parentEdge[n] ?? -1;
      const part = parts[e];
      const before = part === undefined ? null : (steps.get(nodes[otherEnd(graph, e, n)] ?? "") ?? null);
      steps.set(far, part === undefined ? null : { part, far, before });
      this.#ohm.set(far, paths.distance[n] ?? 0);
    }
    this.steps = steps;
  }

  /** Resistance of the way to a node; endless where none leads. */
  ohm(node: string): number {
    return this.#ohm.get(node) ?? Number.POSITIVE_INFINITY;
  }

  /** Parts of the way to a node, the last first, each with the node on its far side. */
  *back(node: string): Iterable<Step> {
    for (let step = this.steps.get(node) ?? null; step !== null; step = step.before) yield step;
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
