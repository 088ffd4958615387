import earcut from "earcut";
import type { PointMm } from "./point.ts";
import { anticlockwise, type RingMm, signedArea } from "./polygon.ts";

/** Twice the area of a corner that still counts as straight, mm². */
const STRAIGHT_MM2 = 1e-9;

const turn = (a: PointMm, b: PointMm, c: PointMm): number =>
  (b.xMm - a.xMm) * (c.yMm - a.yMm) - (b.yMm - a.yMm) * (c.xMm - a.xMm);

/** Whether a ring that does not cross itself is convex; straight corners are allowed, either direction too. */
export function isConvex(ring: RingMm): boolean {
  let left = false;
  let right = false;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i];
    const b = ring[(i + 1) % ring.length];
    const c = ring[(i + 2) % ring.length];
    if (a === undefined || b === undefined || c === undefined) continue;
    const side = turn(a, b, c);
    if (side > STRAIGHT_MM2) left = true;
    else if (side < -STRAIGHT_MM2) right = true;
    if (left && right) return false;
  }
  return true;
}

/**
 * A ring as convex pieces that cover its area and do not overlap: the ring itself when it is convex, else triangles
 * (ear clipping). Pieces run anticlockwise; those without area are left out.
 */
export function convexPieces(ring: RingMm): readonly RingMm[] {
  if (ring.length < 3) return [];
  if (isConvex(ring)) return [anticlockwise(ring)];
  const corners = earcut(ring.flatMap((p) => [p.xMm, p.yMm]));
  const pieces: RingMm[] = [];
  for (let i = 0; i + 2 < corners.length; i += 3) {
    const piece = [corners[i], corners[i + 1], corners[i + 2]].flatMap((at) => ring[at ?? -1] ?? []);
    if (Math.abs(signedArea(piece)) > 0) pieces.push(anticlockwise(piece));
  }
  return pieces;
}

/**
 * What lies in both of two convex rings that run anticlockwise, as one ring; no corners when it is nothing (I. E.
 * Sutherland and G. W. Hodgman, Communications of the ACM 17 (1974), from memory). A corner or side that they merely
 * share may be left as a ring without area.
 */
export function convexOverlap(a: RingMm, b: RingMm): RingMm {
  let ring: PointMm[] = [...a];
  for (let i = 0; i < b.length && ring.length > 0; i++) {
    const from = b[i];
    const to = b[(i + 1) % b.length];
    if (from !== undefined && to !== undefined) ring = leftOf(ring, from, to);
  }
  return ring;
}

/** The part of a convex ring that lies to the left of a line, the line itself included. */
function leftOf(ring: readonly PointMm[], from: PointMm, to: PointMm): PointMm[] {
  const kept: PointMm[] = [];
  let last = ring.at(-1);
  let lastSide = last === undefined ? 0 : turn(from, to, last);
  for (const p of ring) {
    const side = turn(from, to, p);
    if (last !== undefined && side < 0 !== lastSide < 0) {
      const share = lastSide / (lastSide - side);
      kept.push({
        xMm: last.xMm + (p.xMm - last.xMm) * share,
        yMm: last.yMm + (p.yMm - last.yMm) * share,
      });
    }
    if (side >= 0) kept.push(p);
    last = p;
    lastSide = side;
  }
  return kept;
}

/**
 * The smallest convex ring round some points, anticlockwise, without corners that lie on a side (monotone chain,
 * A. M. Andrew 1979, from memory). Fewer than three points when all lie on one line.
 */
export function convexHull(points: readonly PointMm[]): RingMm {
  const sorted = points.toSorted((a, b) => a.xMm - b.xMm || a.yMm - b.yMm);
  const lower = halfHull(sorted);
  const upper = halfHull(sorted.toReversed());
  const ring = [...lower.slice(0, -1), ...upper.slice(0, -1)];
  return ring.length > 0 ? ring : sorted.slice(0, 1);
}

function halfHull(points: readonly PointMm[]): PointMm[] {
  const half: PointMm[] = [];
  for (const p of points) {
    for (;;) {
      const a = half.at(-2);
      const b = half.at(-1);
      if (a === undefined || b === undefined || turn(a, b, p) > 0) break;
      half.pop();
    }
    half.push(p);
  }
  return half;
}
