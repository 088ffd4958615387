import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine, SizedWire } from "../model/index.ts";
import { isBenchJoint, isLoose, wiresAtEnds } from "./ends.ts";
import { type OpenReason, openPairs } from "./open-pairs.ts";

/** Where a probe is held while the harness lies on the bench. */
export interface ProbeSpot {
  /** Names it within the harness: the point id, or point and wire where the wires of a point are still apart. */
  readonly id: string;
  readonly pointId: string;
  /** Not in a housing: a contact or bare end that hangs free, told by the labels of its wires. */
  readonly loose: boolean;
  /** Numbers of the wires that show there. */
  readonly wires: readonly number[];
}

/** What the harness alone, lying on the bench, joins. */
export interface JoinedPart {
  readonly netId: string;
  /** Which one of the net's parts in this harness, from 1, and how many there are. */
  readonly part: number;
  readonly parts: number;
  readonly spots: readonly ProbeSpot[];
  readonly splices: readonly string[];
}

/** Two spots that must not be joined. */
export interface OpenPair {
  /** Landing at which the pair is tried; of spots at two landings, that of the first. */
  readonly landingId: string;
  readonly reason: OpenReason;
  readonly a: ProbeSpot;
  readonly b: ProbeSpot;
}

/** Two wires that meet only when their terminal is soldered or screwed in the machine: their other ends then read joined. */
export interface FittedPair {
  readonly netId: string;
  /** Terminal at which they meet. */
  readonly at: string;
  readonly a: string;
  readonly b: string;
}

export interface Probe {
  readonly expect: "closed" | "open";
  readonly a: string;
  readonly b: string;
}

export interface ContinuityList {
  readonly joined: readonly JoinedPart[];
  readonly open: readonly OpenPair[];
  readonly fitted: readonly FittedPair[];
  /** The bench test as a walk with two probes, by the ids of spots: one stays on the first while the other visits the rest. */
  readonly probes: readonly Probe[];
}

/**
 * What a harness must show when it is measured by itself on the bench: which spots its wires join, and which pairs
 * must be open. Two wires on one solder lug or screw are apart until they are fitted, so each is tried by itself,
 * and the joint between them is listed to be tried in the machine. Only what has a wire can be probed.
 */
export function continuityList(machine: Machine, harness: HarnessResult): ContinuityList {
  const graph = benchGraph(machine, harness);
  const partOf = new Map<string, number>();
  const parts: JoinedPart[] = [];
  for (const start of [...graph.wiresAt.keys()].sort(compareText)) {
    if (partOf.has(start)) continue;
    const members = reached(graph, start, partOf, parts.length);
    const spots = members.flatMap((id) => graph.spots.get(id) ?? []);
    parts.push({
      netId: graph.wiresAt.get(start)?.[0]?.netId ?? "",
      part: 0,
      parts: 0,
      // Housings first: the probe that stays is on a contact that does not move.
      spots: spots.sort((a, b) => Number(a.loose) - Number(b.loose) || compareText(a.id, b.id)),
      splices: members.filter((id) => !graph.spots.has(id)),
    });
  }
  const open = openPairs(machine, harness, {
    spots: [...graph.spots.values()],
    partOf: (spot) => partOf.get(spot.id) ?? -1,
    netOf: (spot) => parts[partOf.get(spot.id) ?? -1]?.netId ?? "",
  });
  const joined = numbered(parts);
  const probes = [
    ...joined.flatMap(({ spots }) =>
      spots.slice(1).map((b): Probe => ({ expect: "closed", a: spots[0]?.id ?? "", b: b.id })),
    ),
    ...open.map(({ a, b }): Probe => ({ expect: "open", a: a.id, b: b.id })),
  ];
  return { joined, open, fitted: fittedPairs(machine, harness), probes };
}

/** A harness lying on the bench: spots and splices, and the wires between them. */
export interface BenchGraph {
  readonly spots: ReadonlyMap<string, ProbeSpot>;
  /** Wires by the node that they end on: a spot or a splice. */
  readonly wiresAt: ReadonlyMap<string, readonly SizedWire[]>;
  readonly nodeOf: (wire: SizedWire, end: string) => string;
}

/** The nodes of a harness before it is fitted, with the wires at each. */
export function benchGraph(machine: Machine, harness: HarnessResult): BenchGraph {
  const nodeOf = (wire: SizedWire, end: string): string => {
    const family = machine.points.get(end)?.family;
    return family === undefined || isBenchJoint(family) ? end : `${end}#${wire.number}`;
  };
  const spots = new Map<string, ProbeSpot>();
  const wiresAt = new Map<string, readonly SizedWire[]>();
  for (const [end, wires] of wiresAtEnds(harness)) {
    const point = machine.points.get(end);
    for (const wire of wires) {
      const id = nodeOf(wire, end);
      wiresAt.set(id, [...(wiresAt.get(id) ?? []), wire]);
      if (point === undefined) continue;
      const numbers = [...(spots.get(id)?.wires ?? []), wire.number];
      spots.set(id, { id, pointId: end, loose: isLoose(point.family), wires: numbers });
    }
  }
  return { spots, wiresAt, nodeOf };
}

/** Every node that wires join with the first one, put into a part. */
function reached(graph: BenchGraph, start: string, partOf: Map<string, number>, part: number): string[] {
  const members: string[] = [];
  const todo = [start];
  partOf.set(start, part);
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    members.push(at);
    for (const wire of graph.wiresAt.get(at) ?? []) {
      for (const end of [wire.a, wire.b]) {
        const node = graph.nodeOf(wire, end);
        if (partOf.has(node)) continue;
        partOf.set(node, part);
        todo.push(node);
      }
    }
  }
  return members.sort(compareText);
}

/** Parts in the order of net and first spot, each with its number within the net. */
function numbered(parts: readonly JoinedPart[]): readonly JoinedPart[] {
  const sorted = [...parts].sort(
    (a, b) => compareText(a.netId, b.netId) || compareText(a.spots[0]?.id ?? "", b.spots[0]?.id ?? ""),
  );
  const counts = new Map<string, number>();
  for (const { netId } of sorted) counts.set(netId, (counts.get(netId) ?? 0) + 1);
  const seen = new Map<string, number>();
  return sorted.map((part) => {
    const number = (seen.get(part.netId) ?? 0) + 1;
    seen.set(part.netId, number);
    return { ...part, part: number, parts: counts.get(part.netId) ?? 1 };
  });
}

/** For each terminal where wires meet only once fitted, the other end of its first wire with that of each further one. */
function fittedPairs(machine: Machine, harness: HarnessResult): readonly FittedPair[] {
  return [...wiresAtEnds(harness)]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([at, wires]): readonly FittedPair[] => {
      const family = machine.points.get(at)?.family;
      const [first, ...others] = wires;
      if (family === undefined || isBenchJoint(family) || first === undefined) return [];
      const far = (wire: SizedWire): string => (wire.a === at ? wire.b : wire.a);
      return others.map((wire) => ({ netId: wire.netId, at, a: far(first), b: far(wire) }));
    });
}
