import { at } from "./draw.ts";
import type { PagePoint } from "./mark.ts";
import { distanceMm, fromStretchMm, type TurnedBox } from "./plane.ts";

/** What a label should rather not cover: a stretch with a half width, or a turned box. */
export type Obstacle =
  | { readonly kind: "stretch"; readonly a: PagePoint; readonly b: PagePoint; readonly halfMm: number }
  | { readonly kind: "box"; readonly box: TurnedBox };

/** The sides of a closed outline, which labels rather keep off. */
export function ringObstacles(points: readonly PagePoint[]): Obstacle[] {
  return points.map((a, i) => ({
    kind: "stretch",
    a,
    b: points[(i + 1) % points.length] ?? a,
    halfMm: 0.3,
  }));
}

/** True if an obstacle lies under a place. */
export function covers(o: Obstacle, p: PagePoint): boolean {
  if (o.kind === "stretch") return fromStretchMm(p, o.a, o.b) <= o.halfMm;
  const b = o.box;
  const a = (b.turnDeg * Math.PI) / 180;
  const dx = p.xMm - b.middle.xMm;
  const dy = b.middle.yMm - p.yMm;
  const u = dx * Math.cos(a) + dy * Math.sin(a);
  const v = -dx * Math.sin(a) + dy * Math.cos(a);
  return Math.abs(u) <= b.widthMm / 2 && Math.abs(v) <= b.heightMm / 2;
}

/** Tells for places near a stretch whether they lie on one of some obstacles. */
export function coverer(
  obstacles: readonly Obstacle[],
  from: PagePoint,
  to: PagePoint,
): (p: PagePoint) => boolean {
  const middle = at((from.xMm + to.xMm) / 2, (from.yMm + to.yMm) / 2);
  const reach = distanceMm(from, to) / 2;
  const near = obstacles.filter((o) => isNear(o, middle, reach));
  return (p) => near.some((o) => covers(o, p));
}

/** True if an obstacle may reach into a circle. */
export function isNear(o: Obstacle, middle: PagePoint, radiusMm: number): boolean {
  return o.kind === "stretch"
    ? fromStretchMm(middle, o.a, o.b) < o.halfMm + radiusMm
    : distanceMm(middle, o.box.middle) < Math.hypot(o.box.widthMm, o.box.heightMm) / 2 + radiusMm;
}
