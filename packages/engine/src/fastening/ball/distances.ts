import {
  type BoxMm,
  type PointMm,
  pointBetween,
  type RingMm,
  ringSides,
  segmentsMeet,
} from "@pinwright/kernel";

/** The nearest two points of two rings. */
export interface Nearest {
  readonly distanceMm: number;
  readonly a: PointMm;
  readonly b: PointMm;
}

/** What of the nearest points is asked for: nothing nearer than the least, nothing farther than the most, mm. */
export interface Span {
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * The nearest points of two rings that do not cross: one of them is a corner. Null when they are nearer or farther than
 * what is asked for; no longer looked at once that is known.
 */
export function nearestPoints(one: Area, two: Area, { leastMm, mostMm }: Span): Nearest | null {
  let best: Nearest = { distanceMm: mostMm, a: ORIGIN, b: ORIGIN };
  let found = false;
  for (const [from, to, turned] of [
    [one, two, false],
    [two, one, true],
  ] as const) {
    for (const p of from.ring) {
      if (boxDistance(p, to.box) > best.distanceMm) continue;
      const nearest = nearestOnRing(p, to.ring);
      if (nearest.distanceMm > best.distanceMm) continue;
      found = true;
      const [a, b] = turned ? [nearest.at, p] : [p, nearest.at];
      best = { distanceMm: nearest.distanceMm, a, b };
      if (best.distanceMm < leastMm) return null;
    }
  }
  return found ? best : null;
}

/** A ring and its box. */
interface Area {
  readonly ring: RingMm;
  readonly box: BoxMm;
}

function boxDistance(p: PointMm, box: BoxMm): number {
  const dx = Math.max(box.minXMm - p.xMm, 0, p.xMm - box.maxXMm);
  const dy = Math.max(box.minYMm - p.yMm, 0, p.yMm - box.maxYMm);
  return Math.sqrt(dx * dx + dy * dy);
}

const ORIGIN: PointMm = { xMm: 0, yMm: 0 };

function nearestOnRing(p: PointMm, ring: RingMm): { readonly distanceMm: number; readonly at: PointMm } {
  let least = Number.POSITIVE_INFINITY;
  let at = ORIGIN;
  let a = ring.at(-1) ?? ORIGIN;
  for (const b of ring) {
    const dx = b.xMm - a.xMm;
    const dy = b.yMm - a.yMm;
    const square = dx * dx + dy * dy;
    const along = (p.xMm - a.xMm) * dx + (p.yMm - a.yMm) * dy;
    const f = square === 0 ? 0 : Math.min(1, Math.max(0, along / square));
    const off = (p.xMm - a.xMm - f * dx) ** 2 + (p.yMm - a.yMm - f * dy) ** 2;
    if (off < least) {
      least = off;
      at = pointBetween(a, b, f);
    }
    a = b;
  }
  return { distanceMm: Math.sqrt(least), at };
}

/** Whether the sides of two rings meet. */
export function ringsMeet(one: RingMm, two: RingMm): boolean {
  const sides = ringSides(two);
  return ringSides(one).some((s) => sides.some((t) => segmentsMeet(s, t)));
}

/** Distance of a point from the outline of a ring, mm. */
export const distanceToRing = (p: PointMm, ring: RingMm): number => nearestOnRing(p, ring).distanceMm;
