import { boxOf } from "./box.ts";
import { pointInRing, type RingMm, ringSides } from "./polygon.ts";
import { type SegmentMm, segmentDistance } from "./segment.ts";

interface BoxedSide extends SegmentMm {
  readonly minXMm: number;
  readonly minYMm: number;
  readonly maxXMm: number;
  readonly maxYMm: number;
}

const boxed = (side: SegmentMm): BoxedSide => ({
  ...side,
  minXMm: Math.min(side.a.xMm, side.b.xMm),
  minYMm: Math.min(side.a.yMm, side.b.yMm),
  maxXMm: Math.max(side.a.xMm, side.b.xMm),
  maxYMm: Math.max(side.a.yMm, side.b.yMm),
});

/**
 * Least distance of the areas that two rings enclose, mm; 0 when they touch, overlap, or one lies in the other.
 * @param atMostMm distances above this may be answered by any number above it, which saves looking closely
 */
export function ringDistance(a: RingMm, b: RingMm, atMostMm = Number.POSITIVE_INFINITY): number {
  let least = Number.POSITIVE_INFINITY;
  const boxA = boxOf(a);
  const boxB = boxOf(b);
  if (boxA === null || boxB === null) return least;
  const limitMm = (): number => Math.min(least, atMostMm);
  const near = (side: BoxedSide, box: typeof boxA): boolean =>
    side.minXMm <= box.maxXMm + limitMm() &&
    side.maxXMm >= box.minXMm - limitMm() &&
    side.minYMm <= box.maxYMm + limitMm() &&
    side.maxYMm >= box.minYMm - limitMm();
  const others = ringSides(b)
    .map(boxed)
    .filter((side) => near(side, boxA));
  for (const side of ringSides(a).map(boxed)) {
    if (!near(side, boxB)) continue;
    for (const other of others) {
      if (!near(side, other)) continue;
      least = Math.min(least, segmentDistance(side, other));
      if (least === 0) return 0;
    }
  }
  return encloses(a, b) || encloses(b, a) ? 0 : least;
}

/** Whether the first corner of a ring lies in another: with no sides meeting, then all of it does. */
function encloses(outer: RingMm, inner: RingMm): boolean {
  const first = inner[0];
  return first !== undefined && pointInRing(first, outer) !== "outside";
}
