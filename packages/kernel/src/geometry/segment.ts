import { crossProduct, distance, dotProduct, type PointMm, pointBetween, subtractPoints } from "./point.ts";

/** A straight line between two points, ends included. */
export interface SegmentMm {
  readonly a: PointMm;
  readonly b: PointMm;
}

/** The point of a segment that is nearest to `p`, as a fraction from `a` (0) to `b` (1). */
export function nearestFraction(s: SegmentMm, p: PointMm): number {
  const along = subtractPoints(s.b, s.a);
  const square = dotProduct(along, along);
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, dotProduct(subtractPoints(p, s.a), along) / square));
}

/** Distance of a point from a segment, mm. */
export const pointSegmentDistance = (p: PointMm, s: SegmentMm): number =>
  distance(p, pointBetween(s.a, s.b, nearestFraction(s, p)));

/** Twice the signed area of a, b, p: positive when p lies left of the way from a to b, mm². */
const side = (a: PointMm, b: PointMm, p: PointMm): number =>
  (b.xMm - a.xMm) * (p.yMm - a.yMm) - (b.yMm - a.yMm) * (p.xMm - a.xMm);

/** `p` is known to lie on the line of `s`: does it lie between the ends, ends included? */
const withinBox = (s: SegmentMm, p: PointMm): boolean =>
  p.xMm >= Math.min(s.a.xMm, s.b.xMm) &&
  p.xMm <= Math.max(s.a.xMm, s.b.xMm) &&
  p.yMm >= Math.min(s.a.yMm, s.b.yMm) &&
  p.yMm <= Math.max(s.a.yMm, s.b.yMm);

/**
 * Whether two segments have a point in common; touching ends and overlaps along one line count. Exact up to
 * the rounding of the orientation test (Cormen et al., Introduction to Algorithms, section 33.1, from memory).
 */
export function segmentsMeet(s: SegmentMm, t: SegmentMm): boolean {
  const d1 = side(t.a, t.b, s.a);
  const d2 = side(t.a, t.b, s.b);
  const d3 = side(s.a, s.b, t.a);
  const d4 = side(s.a, s.b, t.b);
  if (((d1 > 0 && d2 < 0) || (d1 < 0 && d2 > 0)) && ((d3 > 0 && d4 < 0) || (d3 < 0 && d4 > 0))) return true;
  return (
    (d1 === 0 && withinBox(t, s.a)) ||
    (d2 === 0 && withinBox(t, s.b)) ||
    (d3 === 0 && withinBox(s, t.a)) ||
    (d4 === 0 && withinBox(s, t.b))
  );
}

/** The point in which two segments meet, or null when they do not, or are parallel. */
export function segmentIntersection(s: SegmentMm, t: SegmentMm): PointMm | null {
  const alongS = subtractPoints(s.b, s.a);
  const alongT = subtractPoints(t.b, t.a);
  const denominator = crossProduct(alongS, alongT);
  if (denominator === 0 || !segmentsMeet(s, t)) return null;
  const fraction = crossProduct(subtractPoints(t.a, s.a), alongT) / denominator;
  return pointBetween(s.a, s.b, Math.min(1, Math.max(0, fraction)));
}

/** Least distance of two segments, mm; 0 when they meet. */
export function segmentDistance(s: SegmentMm, t: SegmentMm): number {
  if (segmentsMeet(s, t)) return 0;
  return Math.sqrt(
    Math.min(
      squareToSegment(s.a, t.a, t.b),
      squareToSegment(s.b, t.a, t.b),
      squareToSegment(t.a, s.a, s.b),
      squareToSegment(t.b, s.a, s.b),
    ),
  );
}

/** Square of the distance of `p` from the segment a to b, mm²; written out because layouts ask it in millions. */
function squareToSegment(p: PointMm, a: PointMm, b: PointMm): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const px = p.xMm - a.xMm;
  const py = p.yMm - a.yMm;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
  return (px - along * dx) ** 2 + (py - along * dy) ** 2;
}
