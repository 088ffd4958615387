import { cosSinDeg } from "./angle.ts";
import { type FrameMm, fromFrame, intoFrame } from "./frame.ts";
import { type PointMm, vectorLength } from "./point.ts";
import { pointSegmentDistance, type SegmentMm, segmentDistance, segmentsMeet } from "./segment.ts";

/** A rectangle about its centre, turned: `widthMm` in its own x, `depthMm` in its own y. */
export interface RectangleMm extends FrameMm {
  readonly widthMm: number;
  readonly depthMm: number;
}

/** The four corners, anticlockwise from the one at its own lower left. */
export function rectangleCorners(r: RectangleMm): [PointMm, PointMm, PointMm, PointMm] {
  const x = r.widthMm / 2;
  const y = r.depthMm / 2;
  return [
    fromFrame(r, { xMm: -x, yMm: -y }),
    fromFrame(r, { xMm: x, yMm: -y }),
    fromFrame(r, { xMm: x, yMm: y }),
    fromFrame(r, { xMm: -x, yMm: y }),
  ];
}

/** The four sides. */
export function rectangleSides(r: RectangleMm): SegmentMm[] {
  const [p, q, s, t] = rectangleCorners(r);
  return [
    { a: p, b: q },
    { a: q, b: s },
    { a: s, b: t },
    { a: t, b: p },
  ];
}

/** Half of the extent of a rectangle along the unit vector (ux, uy). */
function reach(r: RectangleMm, ux: number, uy: number): number {
  const { cos, sin } = cosSinDeg(r.rotationDeg);
  return (Math.abs(cos * ux + sin * uy) * r.widthMm) / 2 + (Math.abs(cos * uy - sin * ux) * r.depthMm) / 2;
}

function apartAlongAxesOf(r: RectangleMm, a: RectangleMm, b: RectangleMm, toleranceMm: number): boolean {
  const { cos, sin } = cosSinDeg(r.rotationDeg);
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  return (
    Math.abs(dx * cos + dy * sin) >= reach(a, cos, sin) + reach(b, cos, sin) - toleranceMm ||
    Math.abs(dy * cos - dx * sin) >= reach(a, -sin, cos) + reach(b, -sin, cos) - toleranceMm
  );
}

/**
 * Whether two rectangles overlap by more than `toleranceMm`; sides that only touch do not (separating axis
 * theorem: two convex shapes are apart exactly when they are apart along the normal of one of their sides).
 */
export const rectanglesOverlap = (a: RectangleMm, b: RectangleMm, toleranceMm = 1e-9): boolean =>
  !apartAlongAxesOf(a, a, b, toleranceMm) && !apartAlongAxesOf(b, a, b, toleranceMm);

/** Whether a point lies in a rectangle, sides included. */
export function rectangleHolds(r: RectangleMm, p: PointMm): boolean {
  const local = intoFrame(r, p);
  return Math.abs(local.xMm) <= r.widthMm / 2 && Math.abs(local.yMm) <= r.depthMm / 2;
}

/** Distance of a point from a rectangle, mm; 0 within it. */
export function pointRectangleDistance(p: PointMm, r: RectangleMm): number {
  const local = intoFrame(r, p);
  return vectorLength({
    xMm: Math.max(0, Math.abs(local.xMm) - r.widthMm / 2),
    yMm: Math.max(0, Math.abs(local.yMm) - r.depthMm / 2),
  });
}

/** Distance between a circle and a rectangle, mm; negative is never given: 0 when they touch or overlap. */
export const circleRectangleDistance = (centre: PointMm, radiusMm: number, r: RectangleMm): number =>
  Math.max(0, pointRectangleDistance(centre, r) - radiusMm);

/** Least distance of a segment from a rectangle, mm; 0 when they meet. */
export function segmentRectangleDistance(s: SegmentMm, r: RectangleMm): number {
  if (rectangleHolds(r, s.a) || rectangleHolds(r, s.b)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const side of rectangleSides(r)) {
    if (segmentsMeet(side, s)) return 0;
    least = Math.min(least, segmentDistance(side, s));
  }
  return least;
}

/** Least distance of two rectangles, mm; 0 when they overlap. */
export function rectangleDistance(a: RectangleMm, b: RectangleMm): number {
  if (rectanglesOverlap(a, b)) return 0;
  let least = Number.POSITIVE_INFINITY;
  // Of two convex shapes that are apart, one nearest point is always a corner.
  for (const side of rectangleSides(a)) {
    for (const p of rectangleCorners(b)) least = Math.min(least, pointSegmentDistance(p, side));
  }
  for (const side of rectangleSides(b)) {
    for (const p of rectangleCorners(a)) least = Math.min(least, pointSegmentDistance(p, side));
  }
  return least;
}
