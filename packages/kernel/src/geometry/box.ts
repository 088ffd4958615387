import type { PointMm } from "./point.ts";

/** A rectangle along the axes. */
export interface BoxMm {
  readonly minXMm: number;
  readonly minYMm: number;
  readonly maxXMm: number;
  readonly maxYMm: number;
}

/** The smallest box round some points, or null when there is none. */
export function boxOf(points: Iterable<PointMm>): BoxMm | null {
  let minXMm = Number.POSITIVE_INFINITY;
  let minYMm = Number.POSITIVE_INFINITY;
  let maxXMm = Number.NEGATIVE_INFINITY;
  let maxYMm = Number.NEGATIVE_INFINITY;
  for (const p of points) {
    if (p.xMm < minXMm) minXMm = p.xMm;
    if (p.yMm < minYMm) minYMm = p.yMm;
    if (p.xMm > maxXMm) maxXMm = p.xMm;
    if (p.yMm > maxYMm) maxYMm = p.yMm;
  }
  return minXMm > maxXMm ? null : { minXMm, minYMm, maxXMm, maxYMm };
}

/** A box with `byMm` more on every side. */
export const growBox = (b: BoxMm, byMm: number): BoxMm => ({
  minXMm: b.minXMm - byMm,
  minYMm: b.minYMm - byMm,
  maxXMm: b.maxXMm + byMm,
  maxYMm: b.maxYMm + byMm,
});

/** The smallest box round both. */
export const joinBoxes = (a: BoxMm, b: BoxMm): BoxMm => ({
  minXMm: Math.min(a.minXMm, b.minXMm),
  minYMm: Math.min(a.minYMm, b.minYMm),
  maxXMm: Math.max(a.maxXMm, b.maxXMm),
  maxYMm: Math.max(a.maxYMm, b.maxYMm),
});

/** Whether two boxes have more than an edge in common. */
export const boxesOverlap = (a: BoxMm, b: BoxMm): boolean =>
  a.minXMm < b.maxXMm && b.minXMm < a.maxXMm && a.minYMm < b.maxYMm && b.minYMm < a.maxYMm;

/** Whether a point lies in a box, edges included. */
export const boxHolds = (b: BoxMm, p: PointMm): boolean =>
  p.xMm >= b.minXMm && p.xMm <= b.maxXMm && p.yMm >= b.minYMm && p.yMm <= b.maxYMm;
