import { pointSegmentDistance } from "@pinwright/kernel";
import type { OutlinePoint } from "./outline.ts";

/** Curves are replaced by chords that leave the curve by at most this much, in mm. */
export const FLATTEN_MM = 0.05;

/** Deepest halving of one piece of a curve. */
const MOST_HALVINGS = 14;

const at = (xMm: number, yMm: number): OutlinePoint => ({ xMm, yMm });

/**
 * Flattens a circular arc; both ends are included. Angles in radians, the sweep positive anticlockwise.
 * The chord of an angle φ leaves its arc by r(1 − cos(φ/2)).
 */
export function flattenArc(
  center: OutlinePoint,
  radiusMm: number,
  startRad: number,
  sweepRad: number,
): OutlinePoint[] {
  const most = radiusMm <= FLATTEN_MM ? Math.PI / 2 : 2 * Math.acos(1 - FLATTEN_MM / radiusMm);
  const pieces = Math.max(1, Math.ceil(Math.abs(sweepRad) / Math.min(most, Math.PI / 4)));
  return Array.from({ length: pieces + 1 }, (_, i) => {
    const angle = startRad + (sweepRad * i) / pieces;
    return at(center.xMm + radiusMm * Math.cos(angle), center.yMm + radiusMm * Math.sin(angle));
  });
}

/**
 * Flattens any smooth curve, given as a function of a parameter, between two parameters; both ends are
 * included. A piece is halved until the curve at its quarters lies within the tolerance of the chord.
 */
export function flattenCurve(
  curve: (t: number) => OutlinePoint,
  from: number,
  to: number,
  pieces: number,
): OutlinePoint[] {
  const points = [curve(from)];
  const refine = (t0: number, p0: OutlinePoint, t1: number, p1: OutlinePoint, depth: number): void => {
    const middle = curve((t0 + t1) / 2);
    const flat =
      pointSegmentDistance(middle, { a: p0, b: p1 }) <= FLATTEN_MM &&
      pointSegmentDistance(curve(t0 + (t1 - t0) / 4), { a: p0, b: p1 }) <= FLATTEN_MM &&
      pointSegmentDistance(curve(t0 + ((t1 - t0) * 3) / 4), { a: p0, b: p1 }) <= FLATTEN_MM;
    if (flat || depth >= MOST_HALVINGS) {
      points.push(p1);
      return;
    }
    refine(t0, p0, (t0 + t1) / 2, middle, depth + 1);
    refine((t0 + t1) / 2, middle, t1, p1, depth + 1);
  };
  for (let i = 0; i < pieces; i++) {
    const t0 = from + ((to - from) * i) / pieces;
    const t1 = from + ((to - from) * (i + 1)) / pieces;
    refine(t0, curve(t0), t1, curve(t1), 0);
  }
  return points;
}

/** Flattens an elliptic arc given by its centre and two conjugate half axes; parameters in radians. */
export function flattenEllipse(
  center: OutlinePoint,
  major: OutlinePoint,
  minor: OutlinePoint,
  from: number,
  to: number,
): OutlinePoint[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 4)));
  return flattenCurve(
    (t) =>
      at(
        center.xMm + Math.cos(t) * major.xMm + Math.sin(t) * minor.xMm,
        center.yMm + Math.cos(t) * major.yMm + Math.sin(t) * minor.yMm,
      ),
    from,
    to,
    pieces,
  );
}

/** Flattens a cubic Bézier curve. */
export function flattenCubic(
  p0: OutlinePoint,
  p1: OutlinePoint,
  p2: OutlinePoint,
  p3: OutlinePoint,
): OutlinePoint[] {
  const mix = (t: number, a: number, b: number, c: number, d: number): number => {
    const u = 1 - t;
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
  };
  return flattenCurve(
    (t) => at(mix(t, p0.xMm, p1.xMm, p2.xMm, p3.xMm), mix(t, p0.yMm, p1.yMm, p2.yMm, p3.yMm)),
    0,
    1,
    4,
  );
}
