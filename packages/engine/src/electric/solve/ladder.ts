import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { CircuitNodeId, ElectricSolution, HarnessResult, Machine, Spread } from "../../model/index.ts";
import { isLoad } from "../network/feeds.ts";
import { itemNode, type Part, partsOf, wireNode } from "../network/parts.ts";
import { conductorsOf, type Step, waysFrom } from "./ways.ts";

/** One node on the way from a supply, with its volts. */
export interface LadderRung {
  readonly nodeId: CircuitNodeId;
  /** Point that it is a side of; null for a splice. */
  readonly pointId: string | null;
  readonly itemId: string | null;
  /** How many parts lie between it and the supply. */
  readonly steps: number;
  /** Next node towards the supply, and the wire, contact, fuse, link or shunt between; null at the supply. */
  readonly from: {
    readonly nodeId: CircuitNodeId;
    readonly kind: Part["kind"];
    readonly partId: string;
  } | null;
  /** Against the supply's return; null where it belongs to no supply that is solved. */
  readonly volts: Spread | null;
  /** Loads that are connected to it. */
  readonly loadIds: readonly string[];
}

/** The nodes of a net from its supply outwards. */
export interface Ladder {
  readonly netId: string;
  readonly supplyId: string | null;
  /** Volts of the supply; null without one. */
  readonly nominalV: number | null;
  /** The net leads back to the supply: its volts are what the return is lifted by. */
  readonly isReturn: boolean;
  readonly maxDropPct: number | null;
  /** From the supply to where it enters the net, the net's own first node left out; empty when no way leads there. */
  readonly upstream: readonly LadderRung[];
  /** The net's nodes, nearest first. */
  readonly rungs: readonly LadderRung[];
}

/**
 * The voltage ladder of a net: every node from the supply to each load, with its volts in the steady state, and the
 * least and most of any moment and corner. Null when there is no such net.
 */
export function ladderOf(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  solution: ElectricSolution,
  netId: string,
): Ladder | null {
  const net = machine.nets.get(netId);
  if (net === undefined) return null;
  const { parts } = partsOf(
    machine,
    [...harnesses.values()].flatMap(({ wires }) => wires),
  );
  const nodes = nodesOf(machine, parts, netId);
  const supply = machine.book.tables.supplies.find((row) => row.id === net.supply) ?? null;
  const isReturn = returns(net, supply, nodes, solution);
  const start = (isReturn ? supply?.negative : supply?.positive) ?? null;
  const ways = waysFrom(
    conductorsOf(parts, solution),
    start === null ? [...nodes].sort(compareText).slice(0, 1) : [itemNode(start)],
  );
  const loads = loadsAt(parts);
  const rung = (nodeId: string): LadderRung => rungOf(machine, solution, loads, nodeId, ways.get(nodeId));
  const rungs = [...nodes].map(rung).sort((p, q) => p.steps - q.steps || compareText(p.nodeId, q.nodeId));
  return {
    netId,
    supplyId: supply?.id ?? null,
    nominalV: supply?.volts ?? null,
    isReturn,
    maxDropPct: net.max_drop_pct,
    upstream: upstreamOf(rungs[0], ways).map(rung),
    rungs,
  };
}

/** Nodes of a net: both sides of its contacts, and its splices. */
function nodesOf(machine: Machine, parts: readonly Part[], netId: string): ReadonlySet<string> {
  const nodes = new Set<string>();
  for (const part of parts)
    if (part.kind === "wire" && part.wire.netId === netId) nodes.add(part.a).add(part.b);
  for (const { net, point } of machine.ends) {
    if (net !== netId || !nodes.has(wireNode(point))) continue;
    const half = machine.landings.get(machine.points.get(point)?.landingId ?? "")?.half ?? null;
    if (half === null) nodes.add(itemNode(point));
  }
  return nodes;
}

/** By its declared volts, else by whether its nodes lie nearer to the return than to the supply. */
function returns(
  { volts }: BookRow<"nets">,
  supply: BookRow<"supplies"> | null,
  nodes: ReadonlySet<string>,
  solution: ElectricSolution,
): boolean {
  if (volts !== null) return volts === 0;
  const some = [...nodes].flatMap((node) => solution.volts.get(node)?.nominal ?? []);
  return supply !== null && some.length > 0 && Math.abs(some[0] ?? 0) < supply.volts / 2;
}

function loadsAt(parts: readonly Part[]): ReadonlyMap<string, readonly string[]> {
  const loads = new Map<string, string[]>();
  for (const part of parts) {
    if (!isLoad(part)) continue;
    for (const node of [part.a, part.b]) {
      const list = loads.get(node);
      if (list === undefined) loads.set(node, [part.id]);
      else list.push(part.id);
    }
  }
  return loads;
}

function rungOf(
  machine: Machine,
  solution: ElectricSolution,
  loads: ReadonlyMap<string, readonly string[]>,
  nodeId: string,
  step: Step | undefined,
): LadderRung {
  const point = machine.points.get(nodeId.startsWith(WIRE) ? nodeId.slice(WIRE.length) : nodeId);
  return {
    nodeId,
    pointId: point?.id ?? null,
    itemId: point?.itemId ?? null,
    steps: step?.steps ?? Number.POSITIVE_INFINITY,
    from: step?.by == null ? null : { nodeId: step.from, kind: step.by.kind, partId: step.by.id },
    volts: solution.volts.get(nodeId) ?? null,
    loadIds: loads.get(nodeId) ?? [],
  };
}

const WIRE = wireNode("");

/** Nodes from the supply to the one before the net's first, in that order. */
function upstreamOf(first: LadderRung | undefined, ways: ReadonlyMap<string, Step>): readonly string[] {
  const nodes: string[] = [];
  for (let step = ways.get(first?.nodeId ?? ""); step?.by != null; step = ways.get(step.from))
    nodes.push(step.from);
  return nodes.reverse();
}
