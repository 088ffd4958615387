import { compareText } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding } from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { groupsOf } from "../protection/groups.ts";
import { type CopperGraph, copperNet, Reach } from "../protection/reach.ts";
import type { ElectricFacts } from "./facts.ts";

/** Net classes that a lifted zero disturbs. */
const QUIET: ReadonlySet<string> = new Set(["logic", "data", "sensor", "audio"]);

interface Users {
  readonly loud: Set<string>;
  readonly quiet: Set<string>;
  readonly wires: string[];
}

/**
 * `return-shared`: the currents of coils or motors and of logic, data, sensors or audio pass the same wire on their way
 * back to their source. Where their ways only meet at a point, as at a star, neither lifts the other's zero. A current
 * goes over earth only where no conductor of its own leads back: then over the ties of the star point.
 */
export function returnShared({
  machine,
  network,
}: Pick<ElectricFacts, "machine" | "network">): readonly Finding[] {
  const netOf = new Map(machine.ends.map((end) => [end.point, end.net]));
  const isEarth = (node: string): boolean => {
    const net = netOf.get(node.startsWith("wire:") ? node.slice(5) : node);
    return machine.nets.get(net ?? "")?.class === "earth";
  };
  const [apart, overEarth] = [waysBack(network.parts, isEarth), waysBack(network.parts, () => false)];
  const copper = groupsOf(network.parts);
  const byWire = new Map<string, { readonly netId: string } & Users>();
  const { steady, units } = network.units;
  const pulsed = new Set(units.flatMap((unit) => unit.loads));
  for (const feed of [...steady, ...pulsed]) {
    const node = returnNode(feed, copper);
    // A relay that stays on lifts nothing.
    const loudness = node === null ? null : loudnessOf(machine, feed, netOf, pulsed.has(feed));
    if (node === null || loudness === null) continue;
    const own = apart(feed.source);
    const way = Number.isFinite(own.ohm(node)) ? own : overEarth(feed.source);
    for (const { part } of way.back(node)) {
      if (part.kind !== "wire") continue;
      const users = byWire.get(part.id) ?? {
        netId: part.wire.netId,
        loud: new Set(),
        quiet: new Set(),
        wires: [],
      };
      users[loudness].add(feed.load.id);
      byWire.set(part.id, users);
    }
  }
  return [...shared(byWire)].map(([netId, { loud, quiet, wires }]) => {
    const [coil = "", logic = ""] = [[...loud].sort(compareText)[0], [...quiet].sort(compareText)[0]];
    const numbers = { loud: loud.size, quiet: quiet.size, wires: wires.length };
    return makeFinding("return-shared", "error", [netId, coil, logic, ...wires.sort(compareText)], numbers);
  });
}

/** Ways to the negative end of each source over copper, with the fewest joints: lengths have no say in which is meant. */
function waysBack(
  parts: readonly Part[],
  isBarred: (node: string) => boolean,
): (source: SourcePart) => Reach {
  const ways = new Map<SourcePart, Reach>();
  let graph: CopperGraph | null = null;
  return (source) => {
    if (graph === null) {
      const net = copperNet(parts, isBarred);
      graph = { ...net, ohms: new Float64Array(net.parts.length).fill(1) };
    }
    const way = ways.get(source) ?? new Reach(graph, source.b);
    ways.set(source, way);
    return way;
  };
}

/** Wires that both use, gathered by net. */
function shared(byWire: ReadonlyMap<string, { readonly netId: string } & Users>): ReadonlyMap<string, Users> {
  const byNet = new Map<string, Users>();
  for (const [wireId, { netId, loud, quiet }] of byWire) {
    if (loud.size === 0 || quiet.size === 0) continue;
    const users = byNet.get(netId) ?? { loud: new Set(), quiet: new Set(), wires: [] };
    for (const id of loud) users.loud.add(id);
    for (const id of quiet) users.quiet.add(id);
    users.wires.push(wireId);
    byNet.set(netId, users);
  }
  return byNet;
}

/** Where the current of a load leaves its item or driver towards the source. */
function returnNode(
  { load, drivers, source, reversed }: Feed,
  copper: (node: string) => number,
): string | null {
  const zero = copper(source.b);
  const ends = [reversed ? load.a : load.b, ...drivers.flatMap(({ a, b }) => [b, a])];
  return ends.find((node) => copper(node) === zero) ?? null;
}

function loudnessOf(
  machine: Machine,
  { load, reversed }: Feed,
  netOf: ReadonlyMap<string, string>,
  isPulsed: boolean,
): "loud" | "quiet" | null {
  const { kind } = load.element.row;
  if (kind === "coil" || kind === "motor") return isPulsed ? "loud" : null;
  const net = machine.nets.get(netOf.get(reversed ? load.b : load.a) ?? "");
  return net !== undefined && QUIET.has(net.class) ? "quiet" : null;
}
