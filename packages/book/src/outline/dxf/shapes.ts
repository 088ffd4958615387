import { flattenArc, flattenEllipse } from "../flatten.ts";
import type { OutlinePoint } from "../outline.ts";
import type { DrawnPath } from "../rings.ts";
import { flattenSpline, splineProblem } from "../spline.ts";
import { type DxfEntity, numberOf, numbersOf } from "./groups.ts";

const RAD = Math.PI / 180;

/** Drawing units in, millimetres out, so that curves are flattened to the tolerance in mm. */
export interface Scale {
  readonly mmPerUnit: number;
}

/** A path, or why the entity gives none. */
export type Shape = DrawnPath | string;

const at = (xMm: number, yMm: number): OutlinePoint => ({ xMm, yMm });

/** Circle segments of a polyline: bulge is the tangent of a quarter of the angle, positive anticlockwise. */
function withBulges(
  corners: readonly (OutlinePoint & { readonly bulge: number })[],
  closed: boolean,
): DrawnPath {
  const points: OutlinePoint[] = [];
  corners.forEach((corner, i) => {
    points.push(at(corner.xMm, corner.yMm));
    const next = corners[i + 1] ?? (closed ? corners[0] : undefined);
    if (next === undefined || corner.bulge === 0) return;
    const angle = 4 * Math.atan(corner.bulge);
    const [dx, dy] = [next.xMm - corner.xMm, next.yMm - corner.yMm];
    const chord = Math.hypot(dx, dy);
    if (chord === 0) return;
    // The centre lies on the perpendicular through the middle of the chord.
    const h = 1 / Math.tan(angle / 2) / 2;
    const center = at(corner.xMm + dx / 2 - dy * h, corner.yMm + dy / 2 + dx * h);
    const start = Math.atan2(corner.yMm - center.yMm, corner.xMm - center.xMm);
    points.push(
      ...flattenArc(center, chord / (2 * Math.abs(Math.sin(angle / 2))), start, angle).slice(1, -1),
    );
  });
  return { points, closed };
}

/** Corners of an LWPOLYLINE, whose groups come corner by corner. */
export function lwPolyline(entity: DxfEntity, { mmPerUnit }: Scale): Shape {
  const corners: { xMm: number; yMm: number; bulge: number }[] = [];
  for (const { code, value } of entity.groups) {
    const last = corners[corners.length - 1];
    if (code === 10) corners.push({ xMm: Number(value) * mmPerUnit, yMm: 0, bulge: 0 });
    else if (code === 20 && last !== undefined) last.yMm = Number(value) * mmPerUnit;
    else if (code === 42 && last !== undefined) last.bulge = Number(value);
  }
  return withBulges(corners, (numberOf(entity, 70, 0) & 1) === 1);
}

/** A POLYLINE with its VERTEX entities. */
export function polyline(entity: DxfEntity, vertices: readonly DxfEntity[], { mmPerUnit }: Scale): Shape {
  const flags = numberOf(entity, 70, 0);
  if ((flags & (16 | 64)) !== 0) return "is a mesh";
  // Flag 16 of a vertex marks the frame of a fitted curve, which is not part of the curve.
  const corners = vertices
    .filter((v) => (numberOf(v, 70, 0) & 16) === 0)
    .map((v) => ({
      xMm: numberOf(v, 10, 0) * mmPerUnit,
      yMm: numberOf(v, 20, 0) * mmPerUnit,
      bulge: numberOf(v, 42, 0),
    }));
  return withBulges(corners, (flags & 1) === 1);
}

export function line(entity: DxfEntity, { mmPerUnit }: Scale): Shape {
  const point = (x: number, y: number) =>
    at(numberOf(entity, x, 0) * mmPerUnit, numberOf(entity, y, 0) * mmPerUnit);
  return { points: [point(10, 20), point(11, 21)], closed: false };
}

const center = (entity: DxfEntity, { mmPerUnit }: Scale): OutlinePoint =>
  at(numberOf(entity, 10, 0) * mmPerUnit, numberOf(entity, 20, 0) * mmPerUnit);

export function arc(entity: DxfEntity, scale: Scale): Shape {
  const radius = numberOf(entity, 40, 0) * scale.mmPerUnit;
  if (!(radius > 0)) return "has no radius";
  const start = numberOf(entity, 50, 0) * RAD;
  const turn = (numberOf(entity, 51, 360) * RAD - start) % (2 * Math.PI);
  return {
    points: flattenArc(center(entity, scale), radius, start, turn <= 0 ? turn + 2 * Math.PI : turn),
    closed: false,
  };
}

export function circle(entity: DxfEntity, scale: Scale): Shape {
  const radius = numberOf(entity, 40, 0) * scale.mmPerUnit;
  if (!(radius > 0)) return "has no radius";
  return { points: flattenArc(center(entity, scale), radius, 0, 2 * Math.PI).slice(0, -1), closed: true };
}

/** The minor axis stands on the major one, to its left, or to its right when the drawing plane is seen from below. */
export function ellipse(entity: DxfEntity, scale: Scale): Shape {
  const { mmPerUnit } = scale;
  const major = at(numberOf(entity, 11, 0) * mmPerUnit, numberOf(entity, 21, 0) * mmPerUnit);
  const ratio = numberOf(entity, 40, 1) * (numberOf(entity, 230, 1) < 0 ? -1 : 1);
  const minor = at(-major.yMm * ratio, major.xMm * ratio);
  const from = numberOf(entity, 41, 0);
  const end = numberOf(entity, 42, 2 * Math.PI);
  const to = end <= from ? end + 2 * Math.PI : end;
  const whole = Math.abs(to - from - 2 * Math.PI) < 1e-9;
  const points = flattenEllipse(center(entity, scale), major, minor, from, to);
  return { points: whole ? points.slice(0, -1) : points, closed: whole };
}

export function spline(entity: DxfEntity, { mmPerUnit }: Scale): Shape {
  const [xs, ys] = [numbersOf(entity, 10), numbersOf(entity, 20)];
  if (xs.length === 0) return "has fit points only; let the drawing program write its control points";
  const curve = {
    degree: numberOf(entity, 71, 3),
    knots: numbersOf(entity, 40),
    points: xs.map((x, i) => at(x * mmPerUnit, (ys[i] ?? 0) * mmPerUnit)),
    weights: numbersOf(entity, 41),
  };
  const problem = splineProblem(curve);
  if (problem !== null) return `has ${problem}`;
  return { points: flattenSpline(curve), closed: false };
}
