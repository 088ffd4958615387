import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine } from "../model/index.ts";
import { orderedPoints, wireEntryCell, wiresAtEnds } from "./ends.ts";

/** Points of one net that the harness alone, lying on the bench, joins. */
export interface JoinedPoints {
  readonly netId: string;
  readonly points: readonly string[];
  readonly splices: readonly string[];
}

/** Two neighbours of one housing that must not be joined. */
export interface OpenPair {
  readonly landingId: string;
  readonly a: string;
  readonly b: string;
}

export interface Probe {
  readonly expect: "closed" | "open";
  readonly a: string;
  readonly b: string;
}

export interface ContinuityList {
  readonly joined: readonly JoinedPoints[];
  readonly open: readonly OpenPair[];
  /** The same as a walk with two probes: one stays on the first point of a net while the other visits the rest. */
  readonly probes: readonly Probe[];
}

/**
 * What a harness must show when it is measured by itself: the points that its wires join, and the neighbours in
 * each housing, along a row and across rows, that must be open. Only cavities with a wire can be probed.
 */
export function continuityList(machine: Machine, harness: HarnessResult): ContinuityList {
  const wiresAt = wiresAtEnds(harness);
  const partOf = new Map<string, number>();
  const joined: JoinedPoints[] = [];
  const ends = [...wiresAt.keys()].sort(compareText);
  for (const start of ends) {
    if (partOf.has(start)) continue;
    const members: string[] = [];
    const todo = [start];
    partOf.set(start, joined.length);
    for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
      members.push(at);
      for (const wire of wiresAt.get(at) ?? []) {
        const other = wire.a === at ? wire.b : wire.a;
        if (partOf.has(other)) continue;
        partOf.set(other, joined.length);
        todo.push(other);
      }
    }
    members.sort(compareText);
    joined.push({
      netId: wiresAt.get(start)?.[0]?.netId ?? "",
      points: members.filter((m) => machine.points.has(m)),
      splices: members.filter((m) => !machine.points.has(m)),
    });
  }
  const open = harness.landingIds.flatMap((landingId) => openPairs(machine, landingId, partOf));
  const sorted = [...joined].sort(
    (a, b) => compareText(a.netId, b.netId) || compareText(a.points[0] ?? "", b.points[0] ?? ""),
  );
  const probes = [
    ...sorted.flatMap(({ points }) =>
      points.slice(1).map((b): Probe => ({ expect: "closed", a: points[0] ?? "", b })),
    ),
    ...open.map(({ a, b }): Probe => ({ expect: "open", a, b })),
  ];
  return { joined: sorted, open, probes };
}

function openPairs(
  machine: Machine,
  landingId: string,
  partOf: ReadonlyMap<string, number>,
): readonly OpenPair[] {
  const landing = machine.landings.get(landingId);
  if (landing === undefined) return [];
  const cells = orderedPoints(landing).flatMap((pointId, i) => {
    const pin = machine.points.get(pointId)?.pin ?? null;
    const part = partOf.get(pointId);
    if (part === undefined) return [];
    return [
      { pointId, part, ...(pin === null ? { column: i, row: 0 } : wireEntryCell(machine, landing, pin)) },
    ];
  });
  return cells.flatMap((p, i) =>
    cells.slice(i + 1).flatMap((q) => {
      const apart = Math.abs(p.column - q.column) + Math.abs(p.row - q.row);
      return apart === 1 && p.part !== q.part ? [{ landingId, a: p.pointId, b: q.pointId }] : [];
    }),
  );
}
