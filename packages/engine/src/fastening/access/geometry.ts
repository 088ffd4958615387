import type { BoxMm, PointMm, RingMm } from "@pinwright/kernel";

/** What only touches is not in the way. */
export const TOUCH_MM = 1e-6;

/** Whether an open disc and the area of a ring have a point in common, exactly. */
export const discMeetsRing = (middle: PointMm, radiusMm: number, ring: RingMm): boolean =>
  ringDistance(middle, ring, radiusMm) < radiusMm - TOUCH_MM;

/**
 * Distance of a point from the area of a ring, mm: 0 within it. As soon as it is known to be less than `enoughMm`,
 * some such distance is given instead. Written out because every tool asks it of everything near.
 */
export function ringDistance(p: PointMm, ring: RingMm, enoughMm = 0): number {
  const last = ring[ring.length - 1];
  if (last === undefined) return Number.POSITIVE_INFINITY;
  const { xMm: px, yMm: py } = p;
  let ax = last.xMm - px;
  let ay = last.yMm - py;
  let square = Number.POSITIVE_INFINITY;
  let inside = false;
  const enough = Math.max(0, enoughMm - TOUCH_MM) ** 2;
  for (const corner of ring) {
    const bx = corner.xMm - px;
    const by = corner.yMm - py;
    const dx = bx - ax;
    const dy = by - ay;
    const length = dx * dx + dy * dy;
    const along = length === 0 ? 0 : Math.min(1, Math.max(0, -(ax * dx + ay * dy) / length));
    const own = (ax + along * dx) ** 2 + (ay + along * dy) ** 2;
    if (own < square) {
      square = own;
      if (square < enough) return Math.sqrt(square);
    }
    // Even-odd rule along the ray from the point to the right.
    if (ay > 0 !== by > 0 && ax - (ay * dx) / dy > 0) inside = !inside;
    ax = bx;
    ay = by;
  }
  return inside ? 0 : Math.sqrt(square);
}

/** Whether a disc's box and a box have more than an edge in common. */
export const discNearBox = (middle: PointMm, radiusMm: number, box: BoxMm): boolean =>
  middle.xMm - radiusMm < box.maxXMm &&
  middle.xMm + radiusMm > box.minXMm &&
  middle.yMm - radiusMm < box.maxYMm &&
  middle.yMm + radiusMm > box.minYMm;
