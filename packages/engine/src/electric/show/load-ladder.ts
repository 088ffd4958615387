import { compareText, createGraph, otherEnd, shortestPaths } from "@pinwright/kernel";
import type { Carried, CircuitNodeId, ElectricSolution, Machine, Spread } from "../../model/index.ts";
import { isCopper } from "../network/copper.ts";
import { isLoad } from "../network/feeds.ts";
import { type ElectricNetwork, electricNetwork } from "../network/network.ts";
import {
  type ElementPart,
  itemNode,
  type NetworkWire,
  type Part,
  type SourcePart,
  wireNode,
} from "../network/parts.ts";
import { ladderNodes } from "./ladder-nodes.ts";

/** What is passed on the way from one node of a ladder to the next. */
export interface LadderPart {
  readonly kind: "wire" | "contact" | "fuse" | "link" | "resistor" | "driver" | "switch" | "diode";
  /** Wire, point or placed element. */
  readonly id: string;
  /** What it carries; null where no current passes in play. */
  readonly carried: Carried | null;
}

/** A point or splice of a ladder, with its volts and how it hangs on the node before it. */
export interface LadderNode {
  readonly nodeId: CircuitNodeId;
  /** Point that it is a side of; null for a splice. */
  readonly pointId: string | null;
  /** Node that it hangs on, by its place in the list; null at the supply. */
  readonly parent: number | null;
  /** What is passed to get here from there, in that order. */
  readonly parts: readonly LadderPart[];
  /** Null where it is in no circuit that is solved. */
  readonly volts: Spread | null;
  /** Node that its volts are given against where that is not the return of the ladder's supply; else null. */
  readonly against: CircuitNodeId | null;
  /** Loads that hang on it, in code-point order. */
  readonly loadIds: readonly string[];
  /** How many loads hang on it and on all nodes below it. */
  readonly below: number;
}

/** All ways from one supply to its loads and back, as two trees: parents stand before their children. */
export interface LoadLadder {
  readonly supplyId: string;
  readonly out: readonly LadderNode[];
  readonly back: readonly LadderNode[];
}

/** Whose ladder: of a supply's loads, or of those whose way out or back passes a net. */
export type LadderSubject = { readonly supplyId: string } | { readonly netId: string };

/**
 * The ladders of a supply or net, one for each supply that has a part in it: from its positive end over protection,
 * wires, contacts and boards to every load, and from its return to the same loads' other ends.
 * @param harnesses wires of the whole machine
 */
export function loadLadders(
  machine: Machine,
  harnesses: ReadonlyMap<string, { readonly wires: readonly NetworkWire[] }>,
  solution: ElectricSolution,
  subject: LadderSubject,
): readonly LoadLadder[] {
  const wires = [...harnesses.values()].flatMap((harness) => harness.wires);
  const network = electricNetwork(machine, wires);
  const { parts } = network;
  const within = "netId" in subject ? netNodes(machine, parts, subject.netId) : null;
  const graph = ladderGraph(parts, solution);
  const references = referencesOf(machine, network);
  return sourcesOf(machine, parts).flatMap((source): readonly LoadLadder[] => {
    const id = source.supply?.id ?? source.id;
    if ("supplyId" in subject && subject.supplyId !== id) return [];
    const [out, back] = [waysFrom(graph, source.a), waysFrom(graph, source.b)];
    const against = (node: string): string | null => {
      const other = references.get(node) ?? source.b;
      return other === source.b ? null : other;
    };
    const ends = graph.loads
      .filter((load) => solution.loads.get(load.id)?.supplyId === id)
      .flatMap((load) => endsOf(load, out, back) ?? [])
      .filter(
        ({ plus, minus }) => within === null || passes(out, plus, within) || passes(back, minus, within),
      );
    if (ends.length === 0) return [];
    const tree = (ways: Ways, at: (ends: LoadEnds) => string) =>
      ladderNodes({
        against,
        machine,
        solution,
        ways,
        ends: ends.map((one) => ({ loadId: one.loadId, node: at(one) })),
      });
    return [{ supplyId: id, out: tree(out, (one) => one.plus), back: tree(back, (one) => one.minus) }];
  });
}

/** Sources in the order of the book, those within boards after them. */
function sourcesOf(machine: Machine, parts: readonly Part[]): readonly SourcePart[] {
  const order = new Map(machine.book.tables.supplies.map(({ id }, i) => [id, i]));
  const at = ({ supply }: SourcePart): number => order.get(supply?.id ?? "") ?? order.size;
  return parts
    .filter((part) => part.kind === "source")
    .sort((p, q) => at(p) - at(q) || compareText(p.id, q.id));
}

/** What the volts of each node are given against: the return of its net's supply, else of its island's first source. */
function referencesOf(
  machine: Machine,
  { islands, parts }: ElectricNetwork,
): ReadonlyMap<CircuitNodeId, CircuitNodeId> {
  const negative = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply.negative]));
  const netOf = new Map(machine.ends.map((end) => [end.point, end.net]));
  const references = new Map<CircuitNodeId, CircuitNodeId>();
  for (const { id, nodes } of islands) {
    const own = new Set(nodes);
    const first = parts.find((part) => part.kind === "source" && part.id === id)?.b;
    for (const node of nodes) {
      const point = node.startsWith(WIRE) ? node.slice(WIRE.length) : node;
      const supplyId = machine.nets.get(netOf.get(point) ?? "")?.supply ?? "";
      const end = negative.get(supplyId) ?? null;
      const reference = end !== null && own.has(itemNode(end)) ? itemNode(end) : first;
      if (reference !== undefined) references.set(node, reference);
    }
  }
  return references;
}

const WIRE = wireNode("");

/** Nodes of a net: both sides of its contacts, and its splices. */
function netNodes(machine: Machine, parts: readonly Part[], netId: string): ReadonlySet<string> {
  const nodes = new Set<string>();
  for (const part of parts)
    if (part.kind === "wire" && part.wire.netId === netId) nodes.add(part.a).add(part.b);
  for (const { net, point } of machine.ends)
    if (net === netId && nodes.has(wireNode(point))) nodes.add(itemNode(point));
  return nodes;
}

/**
 * A way over copper alone counts before one over drivers, and that before one over diodes: what is passed only when it
 * is closed or conducts is passed as seldom as can be.
 */
const COST = { copper: 1, driver: 1e4, diode: 1e6 } as const;

function costOf(part: Part, { elements }: ElectricSolution): number | null {
  if (isCopper(part)) return COST.copper;
  if (part.kind !== "element") return null;
  const { kind } = part.element.row;
  if (kind === "diode") return COST.diode;
  if (!elements.has(part.id)) return null;
  return kind === "driver" ? COST.driver : kind === "contact" || kind === "resistor" ? COST.copper : null;
}

interface LadderGraph {
  readonly parts: readonly Part[];
  readonly nodes: readonly string[];
  readonly indexOf: ReadonlyMap<string, number>;
  readonly graph: ReturnType<typeof createGraph>;
  readonly loads: readonly ElementPart[];
}

function ladderGraph(all: readonly Part[], solution: ElectricSolution): LadderGraph {
  const indexOf = new Map<string, number>();
  for (const { a, b } of all)
    for (const node of [a, b]) if (!indexOf.has(node)) indexOf.set(node, indexOf.size);
  const used = all.flatMap((part) => {
    const cost = costOf(part, solution);
    return cost === null ? [] : [{ part, cost }];
  });
  const edges = used.map(({ part: { a, b }, cost }) => ({
    a: indexOf.get(a) ?? 0,
    b: indexOf.get(b) ?? 0,
    cost,
  }));
  return {
    parts: used.map(({ part }) => part),
    nodes: [...indexOf.keys()],
    indexOf,
    graph: createGraph(indexOf.size, edges),
    loads: all.filter(isLoad).sort((p, q) => compareText(p.id, q.id)),
  };
}

/** The node before each node on its way from a start, and the part between. */
export interface Ways {
  readonly start: string;
  readonly cost: (node: string) => number;
  readonly before: (node: string) => { readonly node: string; readonly part: Part } | null;
}

function waysFrom({ graph, parts, nodes, indexOf }: LadderGraph, start: string): Ways {
  const paths = shortestPaths(graph, [indexOf.get(start) ?? 0]);
  return {
    start,
    cost: (node) => paths.distance[indexOf.get(node) ?? -1] ?? Number.POSITIVE_INFINITY,
    before: (node) => {
      const n = indexOf.get(node) ?? -1;
      const edge = paths.parentEdge[n] ?? -1;
      const part = parts[edge];
      return part === undefined ? null : { node: nodes[otherEnd(graph, edge, n)] ?? "", part };
    },
  };
}

interface LoadEnds {
  readonly loadId: string;
  readonly plus: string;
  readonly minus: string;
}

/** The end of a load that is nearer to the supply's positive end, and the other one; null where no way leads to both. */
function endsOf({ id, a, b }: ElementPart, out: Ways, back: Ways): LoadEnds | null {
  const [along, against] = [out.cost(a) + back.cost(b), out.cost(b) + back.cost(a)];
  if (!Number.isFinite(Math.min(along, against))) return null;
  return along <= against ? { loadId: id, plus: a, minus: b } : { loadId: id, plus: b, minus: a };
}

function passes(ways: Ways, node: string, within: ReadonlySet<string>): boolean {
  if (within.has(node)) return true;
  for (let step = ways.before(node); step !== null; step = ways.before(step.node))
    if (within.has(step.node)) return true;
  return false;
}
