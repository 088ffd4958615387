import { flattenCurve } from "./flatten.ts";
import type { OutlinePoint } from "./outline.ts";

/** A rational B-spline curve. */
export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly OutlinePoint[];
  /** One weight a control point; empty when all are 1. */
  readonly weights: readonly number[];
}

/** Why a spline cannot be evaluated, or null when it can. */
export function splineProblem(s: Spline): string | null {
  if (s.points.length <= s.degree || s.degree < 1 || s.degree > 11)
    return `degree ${s.degree} with ${s.points.length} control points`;
  if (s.knots.length !== s.points.length + s.degree + 1) {
    return `${s.knots.length} knots where ${s.points.length + s.degree + 1} belong`;
  }
  if (s.knots.some((knot, i) => knot < (s.knots[i - 1] ?? knot))) return "knots that go back";
  if (s.weights.length !== 0 && (s.weights.length !== s.points.length || s.weights.some((w) => !(w > 0)))) {
    return "weights that are not one positive number a control point";
  }
  return null;
}

/** Point of the curve at a parameter, by de Boor's algorithm in homogeneous coordinates. */
function splinePoint(s: Spline, t: number): OutlinePoint {
  const { degree: p, knots, points } = s;
  let span = points.length - 1;
  for (let k = p; k < points.length; k++) {
    if (t < (knots[k + 1] ?? 0)) {
      span = k;
      break;
    }
  }
  const d = Array.from({ length: p + 1 }, (_, j) => {
    const i = span - p + j;
    const w = s.weights[i] ?? 1;
    return [(points[i]?.xMm ?? 0) * w, (points[i]?.yMm ?? 0) * w, w] as const;
  });
  for (let r = 1; r <= p; r++) {
    for (let j = p; j >= r; j--) {
      const low = knots[span - p + j] ?? 0;
      const high = knots[span + 1 + j - r] ?? 0;
      const a = high === low ? 0 : (t - low) / (high - low);
      const [b, c] = [d[j - 1] ?? [0, 0, 1], d[j] ?? [0, 0, 1]];
      d[j] = [b[0] + (c[0] - b[0]) * a, b[1] + (c[1] - b[1]) * a, b[2] + (c[2] - b[2]) * a];
    }
  }
  const [x, y, w] = d[p] ?? [0, 0, 1];
  return { xMm: x / w, yMm: y / w };
}

/** Flattens a spline over its whole domain, knot span by knot span. */
export function flattenSpline(s: Spline): OutlinePoint[] {
  const first = s.degree;
  const last = s.points.length;
  const points: OutlinePoint[] = [];
  for (let k = first; k < last; k++) {
    const [from, to] = [s.knots[k] ?? 0, s.knots[k + 1] ?? 0];
    if (to <= from) continue;
    const piece = flattenCurve((t) => splinePoint(s, t), from, to, 2);
    points.push(...(points.length === 0 ? piece : piece.slice(1)));
  }
  return points;
}
