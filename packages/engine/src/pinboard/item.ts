import {
  type BoxMm,
  boxOf,
  type PointMm,
  polar,
  type RectangleMm,
  rectangleCorners,
} from "@pinwright/kernel";

/** A straight stretch of a branch on the board. Ends that are not tree nodes have the number −1. */
export interface Stretch {
  readonly kind: "stretch";
  readonly branch: number;
  readonly a: PointMm;
  readonly b: PointMm;
  readonly nodeA: number;
  readonly nodeB: number;
  readonly radiusMm: number;
  readonly straight: boolean;
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

const NO_BOX: BoxMm = { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 };

export const stretch = (part: Omit<Stretch, "kind" | "box">): Stretch => ({
  kind: "stretch",
  ...part,
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
  ...part,
  box: boxOf(rectangleCorners(part.rectangle)) ?? NO_BOX,
});
