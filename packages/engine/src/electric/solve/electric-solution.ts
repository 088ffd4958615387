import { compareText } from "@pinwright/kernel";
import type { Carried, ElectricSolution, Moment } from "../../model/index.ts";
import type { ElectricNetwork } from "../network/network.ts";
import type { Part } from "../network/parts.ts";
import { type Behaviour, behaviourOf, nominalOhm } from "../network/values.ts";
import { CORNERS, same, spreadOf } from "./corners.ts";
import type { IslandSolution } from "./solve-island.ts";
import type { IslandTask } from "./solved-island.ts";

/** The results of a machine of which no wire is known yet. */
export const NO_ELECTRIC: ElectricSolution = {
  corners: CORNERS,
  moments: new Map(),
  wires: new Map(),
  contacts: new Map(),
  elements: new Map(),
  loads: new Map(),
  supplies: new Map(),
  volts: new Map(),
  worst: { value: 0, lowerBound: 0, gap: 0 },
  unfedIds: [],
  unsettledIds: [],
};

/** What a wire or contact without current is: its resistance, and nothing else. */
export function idleCarried(
  part: Part,
  conditions: Pick<IslandTask, "numbers" | "lengthsMm">,
  factors: readonly Readonly<Record<Behaviour, number>>[],
): Carried {
  const ohm = nominalOhm(part, conditions);
  const behaviour = behaviourOf(part);
  return {
    ohm: spreadOf((c) => ohm * (factors[c]?.[behaviour] ?? 1)),
    steadyA: NONE,
    rmsA: NONE,
    peakA: NONE,
    dropV: NONE,
    momentId: "always",
  };
}

const NONE = same(0);

/** The results of all islands as one. */
export function islandResults(
  { units, unfedIds }: ElectricNetwork,
  islands: readonly IslandSolution[],
): Omit<ElectricSolution, "wires" | "contacts" | "elements"> {
  // Where islands meet at a node, its volts are those of the first of them.
  const merged = <T>(pick: (island: IslandSolution) => ReadonlyMap<string, T>): ReadonlyMap<string, T> =>
    new Map(islands.toReversed().flatMap((island) => [...pick(island)]));
  const value = islands.reduce((sum, island) => sum + island.worst.value, 0);
  const gap = islands.reduce((sum, island) => sum + island.worst.gap, 0);
  return {
    corners: CORNERS,
    moments: momentsOf(units, islands),
    loads: merged((island) => island.loads),
    supplies: merged((island) => island.supplies),
    volts: merged((island) => island.volts),
    worst: { value, lowerBound: value + gap, gap: gap === 0 ? 0 : gap / (value + gap) },
    unfedIds,
    unsettledIds: islands.flatMap((island) => island.unsettled),
  };
}

/** Wires and contacts that are in no island, or in one but not among what it tells of. */
export function idleParts({ parts, islands }: ElectricNetwork): readonly Part[] {
  const live = new Set(islands.flatMap((island) => island.parts.map((part) => part.id)));
  return parts.filter((part) => (part.kind === "wire" || part.kind === "contact") && !live.has(part.id));
}

/** Results by point and by element, which no length of a wire without current changes. */
export function carriedByPoint(
  { parts }: ElectricNetwork,
  all: ReadonlyMap<string, Carried>,
): Pick<ElectricSolution, "contacts" | "elements"> {
  const contacts = new Map<string, Carried>();
  const elements = new Map<string, Carried>();
  for (const part of parts) {
    const own = all.get(part.id);
    if (own === undefined) continue;
    if (part.kind === "element") elements.set(part.id, own);
    else if (part.kind === "contact") {
      contacts.set(part.id, own);
      // Both halves of an in-line connector share the one contact in which they meet.
      if (part.b.startsWith("wire:")) contacts.set(part.b.slice(5), own);
    }
  }
  return { contacts, elements };
}

/** Results of wires in the order of the network's parts. */
export function carriedByWire(
  wireIds: readonly string[],
  live: ReadonlyMap<string, Carried>,
  idle: ReadonlyMap<string, Carried>,
): ReadonlyMap<string, Carried> {
  const wires = new Map<string, Carried>();
  for (const id of wireIds) {
    const own = idle.get(id) ?? live.get(id);
    if (own !== undefined) wires.set(id, own);
  }
  return wires;
}

/** Two lists in code-point order as one. */
function mergeSorted(p: readonly string[], q: readonly string[]): readonly string[] {
  const merged: string[] = [];
  let [i, j] = [0, 0];
  while (i < p.length && j < q.length) {
    const [a, b] = [p[i] ?? "", q[j] ?? ""];
    if (compareText(a, b) <= 0) i = merged.push(a) - j;
    else j = merged.push(b) - i;
  }
  return [...merged, ...p.slice(i), ...q.slice(j)];
}

function momentsOf(
  { units, steady }: ElectricNetwork["units"],
  islands: readonly IslandSolution[],
): ReadonlyMap<string, Moment> {
  const always = steady.map((feed) => feed.load.id).sort(compareText);
  const moments = new Map<string, Moment>([["always", { id: "always", loadIds: always }]]);
  for (const island of islands) {
    for (const { id, units: numbers } of island.moments.values()) {
      const on = numbers.flatMap((u) => units[u]?.loads.map((feed) => feed.load.id) ?? []);
      moments.set(id, { id, loadIds: mergeSorted(always, on.sort(compareText)) });
    }
  }
  return moments;
}
