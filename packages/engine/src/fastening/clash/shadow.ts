import { convexHull, type Point3Mm, type PointMm, type RingMm } from "@pinwright/kernel";
import { movedPoint, type Rigid } from "./rigid.ts";

/**
 * The shadow that the part of a prism between two heights of another frame casts along that frame's z, as a convex
 * ring. A prism that stands upright in the other frame shares a point with this one exactly when their heights meet
 * and its ring meets this shadow, for the part between two heights of a convex body is convex.
 * @param ring convex ring of the prism in its own frame
 * @param rigid where its frame lies in the other
 * @returns null when nothing of it is between the heights
 */
export function shadowBetween(
  ring: RingMm,
  heights: { readonly lowMm: number; readonly highMm: number },
  rigid: Rigid,
  between: { readonly lowMm: number; readonly highMm: number },
): RingMm | null {
  const bottom = ring.map((p) => movedPoint(rigid, p.xMm, p.yMm, heights.lowMm));
  const top = ring.map((p) => movedPoint(rigid, p.xMm, p.yMm, heights.highMm));
  const points: PointMm[] = [];
  const edge = (a: Point3Mm | undefined, b: Point3Mm | undefined): void => {
    if (a !== undefined && b !== undefined) clip(a, b, between, points);
  };
  for (let i = 0; i < ring.length; i++) {
    const next = (i + 1) % ring.length;
    edge(bottom[i], bottom[next]);
    edge(top[i], top[next]);
    edge(bottom[i], top[i]);
  }
  if (points.length === 0) return null;
  const hull = convexHull(points);
  return hull.length < 3 ? null : hull;
}

/** Adds the ends of what lies of an edge between two heights. */
function clip(
  a: Point3Mm,
  b: Point3Mm,
  { lowMm, highMm }: { readonly lowMm: number; readonly highMm: number },
  points: PointMm[],
): void {
  const rise = b.zMm - a.zMm;
  let from = 0;
  let to = 1;
  if (rise === 0) {
    if (a.zMm < lowMm || a.zMm > highMm) return;
  } else {
    const first = (lowMm - a.zMm) / rise;
    const second = (highMm - a.zMm) / rise;
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
    if (from > to) return;
  }
  for (const t of from === to ? [from] : [from, to])
    points.push({ xMm: a.xMm + (b.xMm - a.xMm) * t, yMm: a.yMm + (b.yMm - a.yMm) * t });
}
