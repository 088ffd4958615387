import type { PointMm } from "./point.ts";

/** An angle brought into [0, 360), degrees. */
export function normaliseDeg(deg: number): number {
  const rest = deg % 360;
  const turned = rest < 0 ? rest + 360 : rest;
  return turned === 360 || turned === 0 ? 0 : turned;
}

/** The turn from one direction to another in (−180, 180], degrees, anticlockwise positive. */
export function turnDeg(fromDeg: number, toDeg: number): number {
  const turn = normaliseDeg(toDeg - fromDeg);
  return turn > 180 ? turn - 360 : turn;
}

const QUARTERS: readonly (readonly [cos: number, sin: number])[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/**
 * Cosine and sine of an angle in degrees; exactly 0, 1 or −1 at multiples of 90, where floating point would
 * leave a drift of 1e-16 that turns up as `-0` or `0.0000001` in drawings.
 */
export function cosSinDeg(deg: number): { readonly cos: number; readonly sin: number } {
  const turned = normaliseDeg(deg);
  const quarter = turned % 90 === 0 ? QUARTERS[turned / 90] : undefined;
  if (quarter !== undefined) return { cos: quarter[0], sin: quarter[1] };
  const rad = (turned * Math.PI) / 180;
  return { cos: Math.cos(rad), sin: Math.sin(rad) };
}

/** A vector turned anticlockwise about the origin. */
export function rotatePoint(p: PointMm, deg: number): PointMm {
  const { cos, sin } = cosSinDeg(deg);
  return { xMm: p.xMm * cos - p.yMm * sin, yMm: p.xMm * sin + p.yMm * cos };
}

/** The vector of a direction and a length. */
export function polar(deg: number, lengthMm: number): PointMm {
  const { cos, sin } = cosSinDeg(deg);
  return { xMm: cos * lengthMm, yMm: sin * lengthMm };
}

/** Direction of a vector in [0, 360), degrees anticlockwise from x; 0 for the zero vector. */
export function directionDeg(v: PointMm): number {
  if (v.yMm === 0) return v.xMm < 0 ? 180 : 0;
  if (v.xMm === 0) return v.yMm < 0 ? 270 : 90;
  return normaliseDeg((Math.atan2(v.yMm, v.xMm) * 180) / Math.PI);
}
