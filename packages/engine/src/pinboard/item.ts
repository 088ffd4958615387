import { type BoxMm, cosSinDeg, type PointMm, polar, type RectangleMm } from "@pinwright/kernel";

/** A straight stretch of a branch on the board. Ends that are not tree nodes have the number −1. */
export interface Stretch {
  readonly kind: "stretch";
  readonly branch: number;
  readonly a: PointMm;
  readonly b: PointMm;
  readonly nodeA: number;
  readonly nodeB: number;
  /** Least angle in degrees that is wanted between it and another branch at either end. */
  readonly leastDegA: number;
  readonly leastDegB: number;
  readonly radiusMm: number;
  readonly box: BoxMm;
}

/** A holder on the board. */
export interface Grip {
  readonly kind: "grip";
  readonly node: number;
  /** Its tail, the node at which the tail leaves, and the tail's length. */
  readonly branch: number;
  readonly from: number;
  readonly tailMm: number;
  readonly rectangle: RectangleMm;
  readonly box: BoxMm;
}

/** What takes room on the board. */
export type Item = Stretch | Grip;

/** A stretch with its box. Fields are written out, not spread: layouts make these by the hundred thousand. */
export const stretch = (part: Omit<Stretch, "kind" | "box">): Stretch => ({
  kind: "stretch",
  branch: part.branch,
  a: part.a,
  b: part.b,
  nodeA: part.nodeA,
  nodeB: part.nodeB,
  leastDegA: part.leastDegA,
  leastDegB: part.leastDegB,
  radiusMm: part.radiusMm,
  box: {
    minXMm: Math.min(part.a.xMm, part.b.xMm),
    minYMm: Math.min(part.a.yMm, part.b.yMm),
    maxXMm: Math.max(part.a.xMm, part.b.xMm),
    maxYMm: Math.max(part.a.yMm, part.b.yMm),
  },
});

/**
 * The rectangle of a holder whose wires enter at `at`, running in the direction `alongDeg`: `at` is the middle of
 * the face that the wires enter, and the holder reaches on from there.
 */
export function holderRectangle(
  at: PointMm,
  alongDeg: number,
  widthMm: number,
  depthMm: number,
): RectangleMm {
  const half = polar(alongDeg, depthMm / 2);
  return {
    xMm: at.xMm + half.xMm,
    yMm: at.yMm + half.yMm,
    rotationDeg: alongDeg - 90,
    widthMm,
    depthMm,
  };
}

export const grip = (part: Omit<Grip, "kind" | "box">): Grip => ({
  kind: "grip",
  node: part.node,
  branch: part.branch,
  from: part.from,
  tailMm: part.tailMm,
  rectangle: part.rectangle,
  box: rectangleBox(part.rectangle),
});

function rectangleBox(r: RectangleMm): BoxMm {
  const { cos, sin } = cosSinDeg(r.rotationDeg);
  const x = (Math.abs(cos) * r.widthMm + Math.abs(sin) * r.depthMm) / 2;
  const y = (Math.abs(sin) * r.widthMm + Math.abs(cos) * r.depthMm) / 2;
  return { minXMm: r.xMm - x, minYMm: r.yMm - y, maxXMm: r.xMm + x, maxYMm: r.yMm + y };
}
