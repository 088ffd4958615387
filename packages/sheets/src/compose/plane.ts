import type { Box, PagePoint } from "./mark.ts";

/** A rectangle turned about its middle, anticlockwise as the reader sees the page. */
export interface TurnedBox {
  readonly middle: PagePoint;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDeg: number;
}

/** A place given by steps along and across a direction: `alongMm` in the direction, `leftMm` to its left. */
export function offset(from: PagePoint, directionDeg: number, alongMm: number, leftMm = 0): PagePoint {
  const a = (directionDeg * Math.PI) / 180;
  return {
    xMm: from.xMm + alongMm * Math.cos(a) - leftMm * Math.sin(a),
    yMm: from.yMm - alongMm * Math.sin(a) - leftMm * Math.cos(a),
  };
}

/** Direction from one place to another, anticlockwise as the reader sees it, 0° to the right. */
export function directionDeg(from: PagePoint, to: PagePoint): number {
  return (Math.atan2(from.yMm - to.yMm, to.xMm - from.xMm) * 180) / Math.PI;
}

export function distanceMm(a: PagePoint, b: PagePoint): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  // Three times as quick as Math.hypot, which guards against lengths that no sheet has.
  return Math.sqrt(dx * dx + dy * dy);
}

export function corners(b: TurnedBox): readonly (readonly [number, number])[] {
  const w = b.widthMm / 2;
  const h = b.heightMm / 2;
  return [
    offset(b.middle, b.turnDeg, -w, h),
    offset(b.middle, b.turnDeg, w, h),
    offset(b.middle, b.turnDeg, w, -h),
    offset(b.middle, b.turnDeg, -w, -h),
  ].map((p) => [p.xMm, p.yMm]);
}

/** Distance of a place from a stretch. */
export function fromStretchMm(p: PagePoint, a: PagePoint, b: PagePoint): number {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const square = dx * dx + dy * dy;
  const t =
    square === 0 ? 0 : Math.max(0, Math.min(1, ((p.xMm - a.xMm) * dx + (p.yMm - a.yMm) * dy) / square));
  const u = p.xMm - a.xMm - t * dx;
  const v = p.yMm - a.yMm - t * dy;
  return Math.sqrt(u * u + v * v);
}

/** Place at a distance along a polyline, and the direction there. */
export function along(
  points: readonly PagePoint[],
  distance: number,
): { readonly at: PagePoint; readonly directionDeg: number } {
  let left = distance;
  let last = { at: points[0] ?? { xMm: 0, yMm: 0 }, directionDeg: 0 };
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i];
    const b = points[i + 1];
    if (a === undefined || b === undefined) break;
    const length = distanceMm(a, b);
    const direction = directionDeg(a, b);
    if (left <= length) return { at: offset(a, direction, left), directionDeg: direction };
    left -= length;
    last = { at: b, directionDeg: direction };
  }
  return last;
}

export function lengthOf(points: readonly PagePoint[]): number {
  let sum = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i];
    const b = points[i + 1];
    if (a !== undefined && b !== undefined) sum += distanceMm(a, b);
  }
  return sum;
}

/** The same direction for lettering that is read from below or from the right: −90° < turn ≤ 90°. */
export function readableDeg(deg: number): number {
  let turn = ((deg % 360) + 360) % 360;
  if (turn > 180) turn -= 360;
  if (turn > 90.0001) turn -= 180;
  if (turn <= -89.9999) turn += 180;
  return turn;
}

export function inside(inner: readonly (readonly [number, number])[], outer: Box): boolean {
  return inner.every(
    ([x, y]) =>
      x >= outer.xMm && x <= outer.xMm + outer.widthMm && y >= outer.yMm && y <= outer.yMm + outer.heightMm,
  );
}
