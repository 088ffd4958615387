import type { PointMm, RingMm } from "@pinwright/kernel";
import { ringDistance, TOUCH_MM } from "./geometry.ts";
import type { Tool } from "./tools.ts";

/** Directions of a spanner's handle in degrees, from one to another anticlockwise; the second may exceed 360. */
export type Bearing = readonly [fromDeg: number, toDeg: number];

/** The handle of a spanner that turns about a point: a bar from there that ends on a circle. */
export type Handle = Pick<Tool, "tipDiameterMm" | "gripDiameterMm" | "gripLengthMm">;

const DEG = 180 / Math.PI;
const FULL: readonly Bearing[] = [[0, 360]];

/** Bearings closer than this are one. */
const SAME_DEG = 1e-9;

/**
 * Directions in which a handle about `middle` meets a ring. The jaw is a disc about the middle that is there in every
 * direction. A handle meets a part of a side when that part's bearing lies within asin(half width ÷ distance) of the
 * handle's; on a straight side that is most at an end of the part within reach, because a handle's edge is straight.
 */
export function blockedBearings(middle: PointMm, handle: Handle, ring: RingMm): readonly Bearing[] {
  const jawMm = Math.max(handle.tipDiameterMm, handle.gripDiameterMm) / 2;
  const lengthMm = Math.max(handle.gripLengthMm, jawMm);
  const distanceMm = ringDistance(middle, ring, jawMm);
  if (distanceMm < jawMm - TOUCH_MM) return FULL;
  if (distanceMm >= lengthMm - TOUCH_MM) return [];
  const found: Bearing[] = [];
  let a = ring[ring.length - 1];
  for (const b of ring) {
    const part = a === undefined ? null : withinDisc(a, b, middle, lengthMm);
    if (part !== null) found.push(bearingOf(part, handle.gripDiameterMm / 2));
    a = b;
  }
  return joined(found);
}

/** Bearings that overlap or follow each other as one, in order. */
function joined(bearings: readonly Bearing[]): readonly Bearing[] {
  const found: Bearing[] = [];
  for (const [from, to] of bearings.toSorted((a, b) => a[0] - b[0])) {
    const last = found.at(-1);
    if (last === undefined || from > last[1] + SAME_DEG) found.push([from, to]);
    else if (to > last[1]) found[found.length - 1] = [last[0], to];
  }
  return found;
}

type Part = readonly [a: PointMm, b: PointMm];

/** The part of a side within a disc, from its middle; null when they do not meet. */
function withinDisc(a: PointMm, b: PointMm, middle: PointMm, radiusMm: number): Part | null {
  const ax = a.xMm - middle.xMm;
  const ay = a.yMm - middle.yMm;
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const length = dx * dx + dy * dy;
  if (length === 0) return null;
  const half = -(ax * dx + ay * dy) / length;
  const under = half * half - (ax * ax + ay * ay - radiusMm * radiusMm) / length;
  if (under <= 0) return null;
  const from = Math.max(0, half - Math.sqrt(under));
  const to = Math.min(1, half + Math.sqrt(under));
  if (from >= to) return null;
  const at = (t: number): PointMm => ({ xMm: ax + t * dx, yMm: ay + t * dy });
  return [at(from), at(to)];
}

/** Bearings of a part that does not pass through the middle, with half a handle's width on either side. */
function bearingOf([a, b]: Part, halfMm: number): Bearing {
  const [aDeg, aSpreadDeg] = seen(a, halfMm);
  const [bearing, bSpreadDeg] = seen(b, halfMm);
  const turnDeg = ((((bearing - aDeg) % 360) + 540) % 360) - 180;
  const bDeg = aDeg + turnDeg;
  const fromDeg = Math.min(aDeg - aSpreadDeg, bDeg - bSpreadDeg);
  const toDeg = Math.max(aDeg + aSpreadDeg, bDeg + bSpreadDeg);
  const turns = Math.floor(fromDeg / 360) * 360;
  return [fromDeg - turns, toDeg - turns];
}

const seen = (p: PointMm, halfMm: number): readonly [bearingDeg: number, spreadDeg: number] => {
  const distanceMm = Math.hypot(p.xMm, p.yMm);
  return [Math.atan2(p.yMm, p.xMm) * DEG, Math.asin(Math.min(1, halfMm / distanceMm)) * DEG];
};

/** Whether a sweep from one bearing to another meets a blocked one; both may exceed 360. */
const meets = (from: number, to: number, [low, high]: Bearing): boolean =>
  [-360, 0, 360].some((turn) => from + turn < high - SAME_DEG && low < to + turn - SAME_DEG);

/**
 * The sector of `swingDeg` in which a handle meets the fewest things, each given by the bearings at which it is met.
 * The sweep is tried where it begins at the end of a bearing or ends at the beginning of one: between two such places
 * nothing is met newly or no more.
 * @returns keys of what is met, in the order given; of sectors as good the first from bearing 0
 */
export function freestSector<K>(
  met: ReadonlyMap<K, readonly Bearing[]>,
  swingDeg: number,
  worse: (a: readonly K[], b: readonly K[]) => number,
): readonly K[] {
  const bearings = [...met.values()].flat();
  const starts = new Set([0]);
  for (const [low, high] of bearings)
    for (const at of [high, low - swingDeg]) starts.add(((at % 360) + 360) % 360);
  let best: readonly K[] | null = null;
  for (const from of [...starts].sort((a, b) => a - b)) {
    const own = [...met].flatMap(([key, list]) =>
      list.some((bearing) => meets(from, from + swingDeg, bearing)) ? [key] : [],
    );
    if (best === null || worse(own, best) < 0) best = own;
    if (best.length === 0) break;
  }
  return best ?? [];
}
