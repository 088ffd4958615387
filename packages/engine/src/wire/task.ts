import { compareText } from "@pinwright/kernel";
import type { Landing, Machine, Point } from "../model/index.ts";
import { feedPoint } from "./feed.ts";
import { linkedPoints, netIndex } from "./net-index.ts";
import { contactTakes, netWireType, stockedTypes, wiresPerContact } from "./wire-type.ts";

/** Straight or laid length between two landings in mm; null where nothing better is known. */
export type LandingDistance = (aLandingId: string, bLandingId: string) => number | null;

/** One contact that wires of a net must reach in a harness. */
interface TaskEnd {
  readonly point: Point;
  readonly landing: Landing;
  /** Wires that the contact takes. */
  readonly capacity: number;
  /** Ends of one group are joined inside their item. */
  readonly group: number;
}

/** What is to be wired: the ends of one net in one harness. Ends and groups are named by their index. */
export interface NetTask {
  readonly netId: string;
  readonly harnessId: string;
  readonly ends: readonly TaskEnd[];
  readonly groups: readonly (readonly number[])[];
  readonly sourceGroup: number;
  /** Most wires in one splice. */
  readonly spliceWires: number;
  readonly distanceMm: (a: number, b: number) => number;
  /** Distance of two groups: that of their nearest ends. */
  readonly groupMm: (g: number, h: number) => number;
}

/** More wires than this in one splice are hard to crimp and to sleeve: common practice, no source. */
const MOST_WIRES_IN_A_SPLICE = 5;

/** Gathers the ends of a net in a harness; null when it has none there. */
export function netTask(
  machine: Machine,
  netId: string,
  harnessId: string,
  straightMm: LandingDistance,
): NetTask | null {
  const index = netIndex(machine);
  const rows = (index.endsByNet.get(netId) ?? []).filter((end) => end.harness === harnessId);
  const pointIds = [...new Set(rows.map((end) => end.point))].sort(compareText);
  const fixed = netWireType(machine, netId);
  const stocked = stockedTypes(machine);
  const groupOf = new Map<string, number>();
  const groups: number[][] = [];
  const ends: TaskEnd[] = [];
  for (const pointId of pointIds) {
    const point = machine.points.get(pointId);
    const landing = point === undefined ? undefined : machine.landings.get(point.landingId);
    if (point === undefined || landing === undefined) continue;
    let group = groupOf.get(pointId);
    if (group === undefined) {
      group = groups.length;
      groups.push([]);
      for (const linked of linkedPoints(index, pointId)) groupOf.set(linked, group);
    }
    groups[group]?.push(ends.length);
    const type = fixed ?? stocked.find((t) => contactTakes(point.family, t)) ?? null;
    ends.push({ point, landing, capacity: wiresPerContact(point.family, type), group });
  }
  if (ends.length === 0) return null;
  const feed = feedPoint(machine, index, netId, harnessId);
  const source = ends.find((end) => end.point.id === feed);
  const distanceMm = distances(ends, straightMm);
  return {
    netId,
    harnessId,
    ends,
    groups,
    sourceGroup: source?.group ?? 0,
    spliceWires: spliceWires(machine, netId),
    distanceMm,
    groupMm: groupDistances(groups, distanceMm),
  };
}

/** Distances between ends, looked up once for each pair of landings. */
function distances(ends: readonly TaskEnd[], straightMm: LandingDistance): (a: number, b: number) => number {
  const landingIds = [...new Set(ends.map((end) => end.landing.id))].sort(compareText);
  const at = new Map(landingIds.map((id, i) => [id, i]));
  const place = ends.map((end) => at.get(end.landing.id) ?? 0);
  const count = landingIds.length;
  const known = new Float64Array(count * count).fill(Number.NaN);
  return (a, b) => {
    const p = place[a] ?? 0;
    const q = place[b] ?? 0;
    if (p === q) return 0;
    const key = p < q ? p * count + q : q * count + p;
    const found = known[key] ?? Number.NaN;
    if (!Number.isNaN(found)) return found;
    const mm = straightMm(landingIds[Math.min(p, q)] ?? "", landingIds[Math.max(p, q)] ?? "") ?? 0;
    known[key] = mm;
    return mm;
  };
}

function groupDistances(
  groups: readonly (readonly number[])[],
  distanceMm: (a: number, b: number) => number,
): (g: number, h: number) => number {
  const count = groups.length;
  const known = new Float64Array(count * count).fill(Number.NaN);
  return (g, h) => {
    const key = Math.min(g, h) * count + Math.max(g, h);
    const found = known[key] ?? Number.NaN;
    if (!Number.isNaN(found)) return found;
    let mm = Number.POSITIVE_INFINITY;
    for (const a of groups[g] ?? []) for (const b of groups[h] ?? []) mm = Math.min(mm, distanceMm(a, b));
    known[key] = mm;
    return mm;
  };
}

/** Wires that one splice takes: by count, and by the copper area that the splice families of the book take. */
function spliceWires(machine: Machine, netId: string): number {
  const families = machine.book.tables.connector_families.filter((f) => f.kind === "splice");
  const type = netWireType(machine, netId) ?? stockedTypes(machine)[0] ?? null;
  if (families.length === 0 || type === null) return MOST_WIRES_IN_A_SPLICE;
  const byFamily = families.map((f) =>
    Math.min(f.wires_per_contact, Math.floor(f.area_max_mm2 / type.area_mm2 + 1e-6)),
  );
  // A splice of fewer than three wires joins nothing; the check of copper areas tells when none is large enough.
  return Math.max(3, Math.min(MOST_WIRES_IN_A_SPLICE, Math.max(...byFamily)));
}
