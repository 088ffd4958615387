import { type BoxMm, boxOf } from "./box.ts";
import type { PointMm } from "./point.ts";
import { pointInRing, type RingMm } from "./polygon.ts";
import { type SegmentMm, segmentDistance } from "./segment.ts";

/**
 * Least distance of the areas that two rings enclose, mm; 0 when they touch, overlap, or one lies in the other.
 * @param atMostMm distances above this may be answered by any number above it, which saves looking closely
 */
export function ringDistance(a: RingMm, b: RingMm, atMostMm = Number.POSITIVE_INFINITY): number {
  const boxA = boxOf(a);
  const boxB = boxOf(b);
  let least = Number.POSITIVE_INFINITY;
  if (boxA === null || boxB === null) return least;
  const others = sidesNear(b, boxA, atMostMm);
  for (const side of sidesNear(a, boxB, atMostMm)) {
    least = Math.min(least, distanceToSides(side, others, Math.min(least, atMostMm)));
    if (least === 0) return 0;
  }
  return encloses(a, b) || encloses(b, a) ? 0 : least;
}

/** Least distance of a segment to the sides given; those that are surely farther than `withinMm` are passed over. */
function distanceToSides(side: SegmentMm, others: readonly SegmentMm[], withinMm: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const other of others) {
    if (apart(side.a.xMm, side.b.xMm, other.a.xMm, other.b.xMm, withinMm)) continue;
    if (apart(side.a.yMm, side.b.yMm, other.a.yMm, other.b.yMm, withinMm)) continue;
    const mm = segmentDistance(side, other);
    if (mm < least) least = mm;
    if (least === 0) return 0;
  }
  return least;
}

/** Whether two spans on one axis, each between its two ends, are more than `withinMm` apart. */
const apart = (a: number, b: number, c: number, d: number, withinMm: number): boolean =>
  Math.min(a, b) > Math.max(c, d) + withinMm || Math.min(c, d) > Math.max(a, b) + withinMm;

/** Sides of a ring that may come within `withinMm` of a box. */
function sidesNear(ring: RingMm, box: BoxMm, withinMm: number): SegmentMm[] {
  const sides: SegmentMm[] = [];
  let a: PointMm | undefined = ring.at(-1);
  for (const b of ring) {
    if (
      a !== undefined &&
      !apart(a.xMm, b.xMm, box.minXMm, box.maxXMm, withinMm) &&
      !apart(a.yMm, b.yMm, box.minYMm, box.maxYMm, withinMm)
    )
      sides.push({ a, b });
    a = b;
  }
  return sides;
}

/** Whether the first corner of a ring lies in another: with no sides meeting, then all of it does. */
function encloses(outer: RingMm, inner: RingMm): boolean {
  const first = inner[0];
  return first !== undefined && pointInRing(first, outer) !== "outside";
}
