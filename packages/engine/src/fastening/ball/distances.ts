import { type BoxMm, type PointMm, type RingMm, ringSides, segmentsMeet } from "@pinwright/kernel";

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
  // Most pairs are nearer than that, and the corner that looks across best mostly tells.
  const ahead = cornerTowards(one.ring, two.box);
  if (ahead !== null && nearestOnRing(ahead, two.ring).distanceMm < leastMm) return null;
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

/** The corner of a ring that is nearest to the middle of a box. */
function cornerTowards(ring: RingMm, box: BoxMm): PointMm | null {
  const x = (box.minXMm + box.maxXMm) / 2;
  const y = (box.minYMm + box.maxYMm) / 2;
  let nearest: PointMm | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const p of ring) {
    const square = (p.xMm - x) ** 2 + (p.yMm - y) ** 2;
    if (square < least) {
      least = square;
      nearest = p;
    }
  }
  return nearest;
}

function boxDistance(p: PointMm, box: BoxMm): number {
  const dx = Math.max(box.minXMm - p.xMm, 0, p.xMm - box.maxXMm);
  const dy = Math.max(box.minYMm - p.yMm, 0, p.yMm - box.maxYMm);
  return Math.sqrt(dx * dx + dy * dy);
}

const ORIGIN: PointMm = { xMm: 0, yMm: 0 };

function nearestOnRing(p: PointMm, ring: RingMm): { readonly distanceMm: number; readonly at: PointMm } {
  const { xMm, yMm } = p;
  let least = Number.POSITIVE_INFINITY;
  let x = 0;
  let y = 0;
  let a = ring.at(-1) ?? ORIGIN;
  for (let i = 0; i < ring.length; i++) {
    const b = ring[i] ?? ORIGIN;
    const dx = b.xMm - a.xMm;
    const dy = b.yMm - a.yMm;
    const square = dx * dx + dy * dy;
    const along = (xMm - a.xMm) * dx + (yMm - a.yMm) * dy;
    const f = along <= 0 || square === 0 ? 0 : along >= square ? 1 : along / square;
    const ox = a.xMm + f * dx;
    const oy = a.yMm + f * dy;
    const off = (xMm - ox) * (xMm - ox) + (yMm - oy) * (yMm - oy);
    if (off < least) {
      least = off;
      x = ox;
      y = oy;
    }
    a = b;
  }
  return { distanceMm: Math.sqrt(least), at: { xMm: x, yMm: y } };
}

/** Whether the sides of two rings meet. */
export function ringsMeet(one: RingMm, two: RingMm): boolean {
  const sides = ringSides(two);
  return ringSides(one).some((s) => sides.some((t) => segmentsMeet(s, t)));
}

/** Distance of a point from the outline of a ring, mm. */
export const distanceToRing = (p: PointMm, ring: RingMm): number => nearestOnRing(p, ring).distanceMm;
