import { compareText } from "@pinwright/kernel";
import type { Machine, SizedWire, UnfusedWire, WireRating, WireStrain } from "../../model/index.ts";
import { type Feed, isLoad } from "../network/feeds.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { type Conditions, sourceVolts } from "../network/values.ts";
import { Area, type AreaTask, type Protected } from "./area.ts";
import { groupsOf } from "./groups.ts";
import { type CopperNet, copperNet, cornerGraph, feedingOf } from "./reach.ts";
import { type Fuse, fusesOf } from "./short.ts";
import { Strengths } from "./strength.ts";

export interface Protection {
  readonly fuses: ReadonlyMap<string, Protected>;
  readonly unfused: readonly UnfusedWire[];
  /** Fuses on the way to each load from its source, the nearest first, by the load's element id. */
  readonly fusesOfLoad: ReadonlyMap<string, readonly Fuse[]>;
  /** By wire id: the largest fuse that it lies behind, and the most that a short circuit asks of it. */
  readonly strains: ReadonlyMap<string, WireStrain>;
}

/** What of protection does not change with lengths and places. */
export interface ProtectionNet {
  readonly copper: CopperNet;
  readonly fuses: ReadonlyMap<string, Fuse>;
  readonly drives: AreaTask["drives"];
  /** Sources, each with the wires whose lengths and limits matter to what it feeds. */
  readonly sources: readonly SourceNet[];
  /** The diode across a load, its cathode on the feed's side, wherever it sits. */
  readonly diodeOf: (feed: Feed) => Part | null;
}

interface SourceNet {
  readonly source: SourcePart;
  readonly wireIds: readonly string[];
  /** Loads that hang on its copper. */
  readonly loads: readonly Part[];
  /** Numbers of the copper that its ends lead to. */
  readonly copper: readonly number[];
}

export function protectionNet(machine: Machine, parts: readonly Part[]): ProtectionNet {
  const earth = new Set(
    machine.ends.flatMap(({ point, net }) => (machine.nets.get(net)?.class === "earth" ? [point] : [])),
  );
  const copper = copperNet(parts, (node) => earth.has(node.startsWith("wire:") ? node.slice(5) : node));
  const isLinked = (part: Part): boolean =>
    part.kind === "wire" ||
    part.kind === "contact" ||
    (part.kind === "element" && part.element.row.kind === "link");
  const conducting = new Set(copper.parts);
  const groups = groupsOf(parts, (part) => conducting.has(part));
  const drives = groupsOf(parts, isLinked);
  const loads = parts.filter(isLoad);
  const wires = parts.filter((part) => part.kind === "wire");
  // Looked up by group, and not once through everything for each source.
  const loadsOf = byGroup(loads, ({ a, b }) => [groups(a), groups(b)]);
  const wiresOf = byGroup(wires, ({ a }) => [groups(a)]);
  const drivesOf = byGroup(wires, ({ a }) => [drives(a)]);
  const copperOf = byGroup(copper.parts, ({ a }) => [groups(a)]);
  const sources = parts.flatMap((source) => {
    if (source.kind !== "source") return [];
    const own = [...new Set([groups(source.a), groups(source.b)])];
    const fed = inOrder(own, loadsOf).flatMap((n) => loads[n] ?? []);
    const driven = [...new Set(fed.flatMap(({ a, b }) => [drives(a), drives(b)]))];
    const wireNumbers = new Set([...inOrder(own, wiresOf), ...inOrder(driven, drivesOf)]);
    const wireIds = [...wireNumbers].sort((p, q) => p - q).flatMap((n) => wires[n]?.id ?? []);
    return [{ source, wireIds, loads: fed, copper: inOrder(own, copperOf) }];
  });
  return {
    copper,
    fuses: fusesOf(machine, parts),
    drives: driveWires(parts),
    sources,
    diodeOf: diodeFinder(parts),
  };
}

/** What one source's part of protection is found from. */
export interface ProtectionTask {
  readonly machine: Machine;
  readonly net: ProtectionNet;
  readonly wires: ReadonlyMap<string, SizedWire>;
  readonly ratings: ReadonlyMap<string, WireRating>;
}

/**
 * What each fuse protects, and how: a short circuit at every point behind it, at the corner where it is slowest to open
 * (supply low, wires hot, contacts worn), against the wires that it passes; one right behind it at the corner with the
 * most current, for its breaking capacity; and the wires before the first fuse.
 * @param remember a memory of the sources; without one each is looked at anew
 * @param whole a memory of what all sources give together
 */
export function protect(
  { machine, net, wires, ratings }: ProtectionTask,
  remember: (source: SourceNet, find: () => Protection) => Protection = (_, find) => find(),
  whole: (found: readonly Protection[], find: () => Protection) => Protection = (_, find) => find(),
): Protection {
  const { numbers } = machine.shop;
  const lengthsMm = new Map([...wires].map(([id, wire]) => [id, wire.finishedMm]));
  const strengths = new Strengths(wires, ratings, numbers.ambient_c);
  const { fuses, drives } = net;
  const task: AreaTask = { machine, wires, ratings, fuses, strengths, drives };
  const slow: Conditions = {
    corner: { contacts: "worn", supply: "low", temperature: "hot" },
    numbers,
    lengthsMm,
  };
  const high: Conditions = {
    corner: { contacts: "new", supply: "high", temperature: "cold" },
    numbers,
    lengthsMm,
  };
  const found = net.sources.map((sourceNet) =>
    remember(sourceNet, () => {
      const { source } = sourceNet;
      const area = new Area(
        task,
        feedingOf(cornerGraph(net.copper, slow, sourceNet.copper), source),
        sourceVolts(source, slow.corner),
      );
      area.takeLoads(sourceNet.loads);
      const near = new Area(
        task,
        feedingOf(cornerGraph(net.copper, high, sourceNet.copper), source),
        sourceVolts(source, high.corner),
      );
      const own = [...area.protected(near)];
      return {
        fuses: new Map(own.map((fuse) => [fuse.fuse.part.id, fuse] as const)),
        strains: joined(own.map((fuse) => fuse.strains)),
        unfused: area.unfused(),
        fusesOfLoad: area.chains,
      };
    }),
  );
  return whole(found, () => ({
    fuses: new Map(found.flatMap((part) => [...part.fuses])),
    unfused: found.flatMap((part) => part.unfused).sort((a, b) => compareText(a.wireId, b.wireId)),
    // A load that two sources lead to belongs to the first.
    strains: joined(found.map((part) => part.strains)),
    fusesOfLoad: new Map(found.toReversed().flatMap((part) => [...part.fusesOfLoad])),
  }));
}

/** Numbers of the members of each group, ascending. */
function byGroup<T>(
  all: readonly T[],
  groupsOfOne: (one: T) => readonly number[],
): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>();
  for (const [n, one] of all.entries()) for (const group of new Set(groupsOfOne(one))) push(found, group, n);
  return found;
}

/** Numbers of the members of some groups, ascending and each once. */
const inOrder = (groups: readonly number[], of: ReadonlyMap<number, readonly number[]>): readonly number[] =>
  [...new Set(groups.flatMap((group) => of.get(group) ?? []))].sort((p, q) => p - q);

/** The larger of two strains of a wire, each of its numbers by itself. */
function joined(all: readonly ReadonlyMap<string, WireStrain>[]): ReadonlyMap<string, WireStrain> {
  const [first, ...rest] = all;
  const found = new Map(first ?? []);
  for (const [wireId, { fuseA, shortUsed }] of rest.flatMap((strains) => [...strains])) {
    const before = found.get(wireId) ?? { fuseA: 0, shortUsed: 0 };
    found.set(wireId, {
      fuseA: Math.max(before.fuseA, fuseA),
      shortUsed: Math.max(before.shortUsed, shortUsed),
    });
  }
  return found;
}

function diodeFinder(parts: readonly Part[]): ProtectionNet["diodeOf"] {
  const groupOf = groupsOf(parts);
  const diodes = new Map<string, Part>();
  for (const part of parts) {
    if (part.kind !== "element" || part.element.row.kind !== "diode") continue;
    const ends = `${groupOf(part.a)} ${groupOf(part.b)}`;
    if (!diodes.has(ends)) diodes.set(ends, part);
  }
  return ({ load, reversed }) => {
    const [plus, minus] = reversed ? [load.b, load.a] : [load.a, load.b];
    return diodes.get(`${groupOf(minus)} ${groupOf(plus)}`) ?? null;
  };
}

/** Wires from the far side of a load on, to the drivers and contacts that switch it. */
function driveWires(parts: readonly Part[]): AreaTask["drives"] {
  const at = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.kind === "source" || (part.kind === "element" && part.element.row.kind !== "link")) continue;
    push(at, part.a, part);
    push(at, part.b, part);
  }
  return ({ feed, back }) =>
    (start) => {
      const wires = new Set<string>();
      const seen = new Set([start]);
      for (const node of seen) {
        if (feed.steps.has(node) || back.steps.has(node)) continue;
        for (const part of at.get(node) ?? []) {
          if (part.kind === "wire") wires.add(part.id);
          seen.add(part.a === node ? part.b : part.a);
        }
      }
      return [...wires];
    };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
