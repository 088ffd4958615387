import { SharedMemory } from "@pinwright/kernel";
import type { Machine } from "../../model/index.ts";
import { copperOf } from "./copper.ts";
import { feedsOf } from "./feeds.ts";
import type { IslandCircuit } from "./island-circuit.ts";
import { type Island, islandsOf } from "./islands.ts";
import { itemNode, type NetworkWire, type Part, partsOf } from "./parts.ts";
import { type Units, unitsOf } from "./units.ts";

/** The machine's network without lengths and temperatures: what stays the same while things are moved about. */
export interface ElectricNetwork {
  readonly parts: readonly Part[];
  readonly units: Units;
  readonly islands: readonly Island[];
  /** Loads that no way leads to from a source and back. */
  readonly unfedIds: readonly string[];
}

/** Builds the network of a machine from its elements and the wires of all its harnesses. */
export function electricNetwork(machine: Machine, wires: readonly NetworkWire[]): ElectricNetwork {
  const parts = partsOf(machine, wires);
  const { feeds, unfed } = feedsOf(parts, copperOf(parts));
  const units = unitsOf(machine, feeds);
  return {
    parts: parts.parts,
    units,
    islands: islandsOf(parts, units),
    unfedIds: unfed.map((part) => part.id),
  };
}

/**
 * Whether two islands are alike in all that they are solved by: the same parts at the same nodes, in the same order.
 * How the nodes of the whole machine are numbered has no part in it.
 */
export function sameIsland(p: Island, q: Island): boolean {
  return (
    p.id === q.id &&
    p.parts.length === q.parts.length &&
    p.parts.every((part, n) => samePart(part, q.parts[n])) &&
    p.dangling.size === q.dangling.size &&
    [...p.dangling].every(([node, from]) => q.dangling.get(node) === from)
  );
}

function samePart(p: Part, q: Part | undefined): boolean {
  if (q === undefined || p.id !== q.id || p.a !== q.a || p.b !== q.b) return false;
  if (p.kind === "wire") return q.kind === "wire" && p.wire.wireType === q.wire.wireType;
  if (p.kind === "contact") return q.kind === "contact" && p.family === q.family;
  if (p.kind === "element") return q.kind === "element" && p.element === q.element;
  return q.kind === "source" && p.supply === q.supply && p.element === q.element;
}

/** Net by point; every island asks for it. */
const netsOfPoints = new SharedMemory<Machine["ends"], ReadonlyMap<string, string>>();

/** The node that each node's volts are given against: the return of its net's supply, else of the first source. */
export function returnsOf(machine: Machine, { island, sources, nodeOf }: IslandCircuit): Int32Array {
  const supplies = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply]));
  const netOf = netsOfPoints.ask(
    machine.ends,
    [],
    () => new Map(machine.ends.map((end) => [end.point, end.net])),
  );
  const first = nodeOf.get(sources.find((source) => source.id === island.id)?.b ?? "") ?? 0;
  return Int32Array.from(island.nodes, (node) => {
    const point = node.startsWith("wire:") ? node.slice(5) : node;
    const supplyId = machine.nets.get(netOf.get(point) ?? "")?.supply ?? "";
    const negative = supplies.get(supplyId)?.negative ?? null;
    return negative === null ? first : (nodeOf.get(itemNode(negative)) ?? first);
  });
}
