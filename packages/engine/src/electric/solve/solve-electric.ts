import { compareText } from "@pinwright/kernel";
import type {
  Carried,
  ElectricSolution,
  HarnessResult,
  Machine,
  Moment,
  SizedWire,
} from "../../model/index.ts";
import { copperOf } from "../network/copper.ts";
import { feedsOf } from "../network/feeds.ts";
import { type IslandCircuit, islandCircuit } from "../network/island-circuit.ts";
import { islandsOf } from "../network/islands.ts";
import { itemNode, type NetworkWire, type Part, partsOf } from "../network/parts.ts";
import { type Units, unitsOf } from "../network/units.ts";
import { ohmOf } from "../network/values.ts";
import { CORNERS, same, spreadOf } from "./corners.ts";
import { type IslandSolution, solveIsland } from "./solve-island.ts";

/** The machine's network without lengths and temperatures: what stays the same while things are moved about. */
export interface ElectricNetwork {
  readonly parts: readonly Part[];
  readonly units: Units;
  readonly islands: readonly IslandCircuit[];
  /** Loads that no way leads to from a source and back. */
  readonly unfedIds: readonly string[];
}

/** Builds the network of a machine from its elements and the wires of all its harnesses. */
export function electricNetwork(machine: Machine, wires: readonly NetworkWire[]): ElectricNetwork {
  const parts = partsOf(machine, wires);
  const { feeds, unfed } = feedsOf(parts, copperOf(parts));
  const units = unitsOf(machine, feeds);
  return {
    parts,
    units,
    islands: islandsOf(parts, units).map((island) => islandCircuit(island, units)),
    unfedIds: unfed.map((part) => part.id),
  };
}

/**
 * Every supply-and-return network of a machine, solved: what each wire, contact, fuse and load carries at every
 * corner, in the worst moment that `activity` and `groups` allow, and over a minute of hard play.
 */
export function solveElectric(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
): ElectricSolution {
  const wires = [...harnesses.values()].flatMap((harness) => harness.wires);
  const network = electricNetwork(machine, wires);
  const lengthsMm = new Map(wires.map((wire) => [wire.id, wire.finishedMm]));
  const islands = network.islands.map((island) => solveIslandOf(machine, network, island, lengthsMm));
  return electricSolution(machine, network, islands, wires);
}

/** Solves one island of a machine's network. */
export function solveIslandOf(
  machine: Machine,
  { units }: ElectricNetwork,
  network: IslandCircuit,
  lengthsMm: ReadonlyMap<string, number>,
): IslandSolution {
  const { nodeOf } = network;
  return solveIsland({
    network,
    caps: units.caps,
    steady: units.steady.filter(({ load }) => nodeOf.has(load.a) && nodeOf.has(load.b)),
    returns: returnsOf(machine, network),
    numbers: machine.shop.numbers,
    lengthsMm,
  });
}

/** The return that each node's volts are given against: of the supply of its net, else of the island's first source. */
function returnsOf(machine: Machine, { island, sources, nodeOf }: IslandCircuit): Int32Array {
  const supplies = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply]));
  const netOf = new Map(machine.ends.map((end) => [end.point, end.net]));
  const first = sources.find((source) => source.id === island.id)?.b ?? "";
  return Int32Array.from(island.nodes, (node) => {
    const point = node.startsWith("wire:") ? node.slice(5) : node;
    const supplyId = machine.nets.get(netOf.get(point) ?? "")?.supply ?? "";
    const negative = supplies.get(supplyId)?.negative ?? null;
    return nodeOf.get(negative === null ? first : itemNode(negative)) ?? nodeOf.get(first) ?? 0;
  });
}

/** The results of all islands as one, with what carries no current. */
export function electricSolution(
  machine: Machine,
  network: ElectricNetwork,
  islands: readonly IslandSolution[],
  wires: readonly SizedWire[],
): ElectricSolution {
  const lengthsMm = new Map(wires.map((wire) => [wire.id, wire.finishedMm]));
  const carriedOf = new Map<string, Carried>();
  for (const island of islands) for (const [id, carried] of island.carried) carriedOf.set(id, carried);
  const result = {
    wires: new Map<string, Carried>(),
    contacts: new Map<string, Carried>(),
    elements: new Map<string, Carried>(),
  };
  for (const part of network.parts) {
    const carried = carriedOf.get(part.id);
    if (part.kind === "wire") result.wires.set(part.id, carried ?? idle(machine, part, lengthsMm));
    else if (part.kind === "contact") {
      const own = carried ?? idle(machine, part, lengthsMm);
      result.contacts.set(part.id, own);
      // Both halves of an in-line connector share the one contact in which they meet.
      if (part.b.startsWith("wire:")) result.contacts.set(part.b.slice(5), own);
    } else if (carried !== undefined) result.elements.set(part.id, carried);
  }
  // Where islands meet at a node, its volts are those of the first of them.
  const merged = <T>(pick: (island: IslandSolution) => ReadonlyMap<string, T>): ReadonlyMap<string, T> =>
    new Map(islands.toReversed().flatMap((island) => [...pick(island)]));
  const value = islands.reduce((sum, island) => sum + island.worst.value, 0);
  const gap = islands.reduce((sum, island) => sum + island.worst.gap, 0);
  return {
    corners: CORNERS,
    moments: momentsOf(network, islands),
    ...result,
    loads: merged((island) => island.loads),
    supplies: merged((island) => island.supplies),
    volts: merged((island) => island.volts),
    worst: { value, lowerBound: value + gap, gap: gap === 0 ? 0 : gap / (value + gap) },
    unfedIds: network.unfedIds,
    unsettledIds: islands.flatMap((island) => island.unsettled),
  };
}

function momentsOf(
  { units }: ElectricNetwork,
  islands: readonly IslandSolution[],
): ReadonlyMap<string, Moment> {
  const steady = units.steady.map((feed) => feed.load.id).sort(compareText);
  const moments = new Map<string, Moment>([["always", { id: "always", loadIds: steady }]]);
  for (const island of islands) {
    for (const [id, moment] of island.moments) {
      const on = moment.units.flatMap((u) => units.units[u]?.loads.map((feed) => feed.load.id) ?? []);
      moments.set(id, { id, loadIds: [...steady, ...on].sort(compareText) });
    }
  }
  return moments;
}

function idle(machine: Machine, part: Part, lengthsMm: ReadonlyMap<string, number>): Carried {
  const { numbers } = machine.shop;
  const none = same(0);
  const ohms = CORNERS.map((corner) => ohmOf(part, { corner, numbers, lengthsMm }));
  return {
    ohm: spreadOf((c) => ohms[c] ?? 0),
    rmsA: none,
    peakA: none,
    dropV: none,
    momentId: "always",
  };
}
