import { offsetRings, type PointMm, polar, type RingMm } from "@pinwright/kernel";
import type { SymbolShape } from "../../model/index.ts";

/** Size of the square that symbols are designed for: the one they must be legible at. Larger ones are scaled. */
export const DESIGN_MM = 4;

/** Least width of a stroke and of a gap at the design size: what a desktop printer and an eye at a bench resolve. */
export const LEAST_MM = 0.3;

/** In this order: what is told apart best comes first. */
export const SHAPES = [
  "circle",
  "cross",
  "triangle",
  "square",
  "bar",
  "star",
  "diamond",
  "moon",
  "arrow",
  "hourglass",
  "drop",
  "half",
] as const satisfies readonly SymbolShape[];

const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });

const arc = (radiusMm: number, fromDeg: number, toDeg: number, middle: PointMm = at(0, 0)): PointMm[] => {
  const steps = Math.max(2, Math.ceil(Math.abs(toDeg - fromDeg) / 7.5));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const p = polar(fromDeg + ((toDeg - fromDeg) * i) / steps, radiusMm);
    return at(p.xMm + middle.xMm, p.yMm + middle.yMm);
  });
};

const star = (): RingMm =>
  Array.from({ length: 10 }, (_, i) => {
    const p = polar(90 + 36 * i, i % 2 === 0 ? 2.3 : 1.12);
    return at(p.xMm, p.yMm - 0.15);
  });

/** A disc less another one beside it. */
const moon = (): RingMm => {
  const [disc, bite] = [at(0.35, 0), at(1.75, 0)];
  const [outer, inner] = [2.05, 1.45];
  // Where the two circles meet, seen from the middle of each.
  const apart = bite.xMm - disc.xMm;
  const along = (outer ** 2 - inner ** 2 + apart ** 2) / (2 * apart);
  const deg = (cos: number): number => (Math.acos(cos) * 180) / Math.PI;
  const a = deg(along / outer);
  const b = deg((along - apart) / inner);
  return [...arc(outer, a, 360 - a, disc), ...arc(inner, 360 - b, b, bite)];
};

const cross = (arm: number): RingMm => [
  at(-arm, -2),
  at(arm, -2),
  at(arm, -arm),
  at(2, -arm),
  at(2, arm),
  at(arm, arm),
  at(arm, 2),
  at(-arm, 2),
  at(-arm, arm),
  at(-2, arm),
  at(-2, -arm),
  at(-arm, -arm),
];

/** Sharp outlines, y up, within 2 mm of the middle save for points that rounding takes off. */
const OUTLINES: Readonly<Record<SymbolShape, RingMm>> = {
  circle: arc(1.9, 0, 352.5),
  square: [at(-1.75, -1.75), at(1.75, -1.75), at(1.75, 1.75), at(-1.75, 1.75)],
  triangle: [at(-2.15, -1.75), at(2.15, -1.75), at(0, 2.2)],
  diamond: [at(-1.5, 0), at(0, -2.25), at(1.5, 0), at(0, 2.25)],
  cross: cross(0.78),
  star: star(),
  hourglass: [at(-2, -2), at(2, -2), at(0.45, 0), at(2, 2), at(-2, 2), at(-0.45, 0)],
  drop: [at(0, 2.3), ...arc(1.35, 150, 390, at(0, -0.62))],
  half: arc(2, 0, 180, at(0, -0.95)),
  bar: [at(-2, -1), at(2, -1), at(2, 1), at(-2, 1)],
  moon: moon(),
  arrow: [
    at(-0.72, -2),
    at(0.72, -2),
    at(0.72, -0.25),
    at(2.15, -0.25),
    at(0, 2.2),
    at(-2.15, -0.25),
    at(-0.72, -0.25),
  ],
};

/**
 * Rings without anything narrower than `leastMm`, neither ink nor gap: corners are rounded and what is too narrow is
 * filled or taken off (closing, then opening, with a disc).
 */
export function roundOff(rings: readonly RingMm[], leastMm: number): readonly RingMm[] {
  const r = leastMm / 2;
  const closed = offsetRings(offsetRings(rings, r), -2 * r);
  return offsetRings(closed, r);
}

/** The outline of a shape at the design size, corners rounded, y up, round the origin. */
export const shapeRings = (shape: SymbolShape): readonly RingMm[] => roundOff([OUTLINES[shape]], LEAST_MM);
