import type { PointMm } from "./point.ts";
import { pointSegmentDistance, type SegmentMm } from "./segment.ts";

/** A closed polygon; the last corner joins the first. */
export type RingMm = readonly PointMm[];

/** The sides of a ring. */
export function ringSides(ring: RingMm): SegmentMm[] {
  const sides: SegmentMm[] = [];
  let a = ring.at(-1);
  for (const b of ring) {
    if (a !== undefined) sides.push({ a, b });
    a = b;
  }
  return sides;
}

/** Area of a ring in mm², positive when its corners run anticlockwise (shoelace formula). */
export function signedArea(ring: RingMm): number {
  let twice = 0;
  for (const { a, b } of ringSides(ring)) twice += a.xMm * b.yMm - b.xMm * a.yMm;
  return twice / 2;
}

/** The same ring running anticlockwise. */
export const anticlockwise = (ring: RingMm): RingMm => (signedArea(ring) < 0 ? ring.toReversed() : ring);

/** The same ring running clockwise. */
export const clockwise = (ring: RingMm): RingMm => (signedArea(ring) > 0 ? ring.toReversed() : ring);

/** Centre of gravity of a ring; the mean of its corners when it has no area. Null for no corners. */
export function centroid(ring: RingMm): PointMm | null {
  if (ring.length === 0) return null;
  let twice = 0;
  let x = 0;
  let y = 0;
  for (const { a, b } of ringSides(ring)) {
    const w = a.xMm * b.yMm - b.xMm * a.yMm;
    twice += w;
    x += (a.xMm + b.xMm) * w;
    y += (a.yMm + b.yMm) * w;
  }
  if (twice !== 0) return { xMm: x / (3 * twice), yMm: y / (3 * twice) };
  const sum = ring.reduce((s, p) => ({ xMm: s.xMm + p.xMm, yMm: s.yMm + p.yMm }), { xMm: 0, yMm: 0 });
  return { xMm: sum.xMm / ring.length, yMm: sum.yMm / ring.length };
}

export type Inside = "inside" | "on" | "outside";

/**
 * Where a point lies with respect to rings, even-odd rule: a hole is a ring within a ring. Within `toleranceMm`
 * of a side it is `on`.
 */
export function pointInRings(p: PointMm, rings: readonly RingMm[], toleranceMm = 1e-9): Inside {
  let inside = false;
  for (const ring of rings) {
    let a = ring.at(-1);
    for (const b of ring) {
      if (a !== undefined) {
        if (besideBox(p, a, b, toleranceMm) && pointSegmentDistance(p, { a, b }) <= toleranceMm) return "on";
        if (a.yMm > p.yMm !== b.yMm > p.yMm) {
          const x = a.xMm + ((b.xMm - a.xMm) * (p.yMm - a.yMm)) / (b.yMm - a.yMm);
          if (p.xMm < x) inside = !inside;
        }
      }
      a = b;
    }
  }
  return inside ? "inside" : "outside";
}

/** Whether a point lies within the box of a side, grown a little: most sides of a ring are ruled out by that. */
const besideBox = (p: PointMm, a: PointMm, b: PointMm, byMm: number): boolean =>
  p.xMm >= Math.min(a.xMm, b.xMm) - byMm &&
  p.xMm <= Math.max(a.xMm, b.xMm) + byMm &&
  p.yMm >= Math.min(a.yMm, b.yMm) - byMm &&
  p.yMm <= Math.max(a.yMm, b.yMm) + byMm;

/** Where a point lies with respect to one ring. */
export const pointInRing = (p: PointMm, ring: RingMm, toleranceMm = 1e-9): Inside =>
  pointInRings(p, [ring], toleranceMm);
