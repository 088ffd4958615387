import { cosSinDeg } from "./angle.ts";
import { type FrameMm, fromFrame, intoFrame } from "./frame.ts";
import { type PointMm, vectorLength } from "./point.ts";
import type { SegmentMm } from "./segment.ts";

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
  const { cos, sin } = cosSinDeg(r.rotationDeg);
  const halfX = r.widthMm / 2;
  const halfY = r.depthMm / 2;
  const ax = (s.a.xMm - r.xMm) * cos + (s.a.yMm - r.yMm) * sin;
  const ay = (s.a.yMm - r.yMm) * cos - (s.a.xMm - r.xMm) * sin;
  const bx = (s.b.xMm - r.xMm) * cos + (s.b.yMm - r.yMm) * sin;
  const by = (s.b.yMm - r.yMm) * cos - (s.b.xMm - r.xMm) * sin;
  if (meetsBox(ax, ay, bx, by, halfX, halfY)) return 0;
  // Apart, the nearest pair has an end of the segment or a corner of the rectangle in it.
  let square = Math.min(squareToBox(ax, ay, halfX, halfY), squareToBox(bx, by, halfX, halfY));
  const dx = bx - ax;
  const dy = by - ay;
  const length = dx * dx + dy * dy;
  if (length > 0) {
    for (let corner = 0; corner < 4; corner++) {
      const cx = (corner & 1 ? halfX : -halfX) - ax;
      const cy = (corner & 2 ? halfY : -halfY) - ay;
      const along = Math.min(1, Math.max(0, (cx * dx + cy * dy) / length));
      square = Math.min(square, (cx - along * dx) ** 2 + (cy - along * dy) ** 2);
    }
  }
  return Math.sqrt(square);
}

/** Whether the segment from a to b meets the box of ±halfX, ±halfY: clipped to it, something is left. */
function meetsBox(ax: number, ay: number, bx: number, by: number, halfX: number, halfY: number): boolean {
  let enter = 0;
  let leave = 1;
  for (let axis = 0; axis < 2; axis++) {
    const from = axis === 0 ? ax : ay;
    const along = axis === 0 ? bx - ax : by - ay;
    const half = axis === 0 ? halfX : halfY;
    if (along === 0) {
      if (Math.abs(from) > half) return false;
      continue;
    }
    const near = (-half - from) / along;
    const far = (half - from) / along;
    enter = Math.max(enter, Math.min(near, far));
    leave = Math.min(leave, Math.max(near, far));
    if (enter > leave) return false;
  }
  return true;
}

const squareToBox = (x: number, y: number, halfX: number, halfY: number): number =>
  Math.max(0, Math.abs(x) - halfX) ** 2 + Math.max(0, Math.abs(y) - halfY) ** 2;

/** Least distance of two rectangles, mm; 0 when they overlap. */
export function rectangleDistance(a: RectangleMm, b: RectangleMm): number {
  if (rectanglesOverlap(a, b)) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const side of rectangleSides(b)) least = Math.min(least, segmentRectangleDistance(side, a));
  return least;
}
