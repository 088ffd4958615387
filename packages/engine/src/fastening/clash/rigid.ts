import { type BoxMm, type Frame3Mm, fromFrame3, intoFrame3, type Point3Mm } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";

/** Where one panel's frame lies in another's: its origin, and its axes as unit vectors. */
export interface Rigid {
  readonly origin: Point3Mm;
  readonly x: Point3Mm;
  readonly y: Point3Mm;
  readonly z: Point3Mm;
}

/** A box in space. */
export interface SpaceBox extends BoxMm {
  readonly lowMm: number;
  readonly highMm: number;
}

const at = (xMm: number, yMm: number, zMm: number): Point3Mm => ({ xMm, yMm, zMm });

const minus = (a: Point3Mm, b: Point3Mm): Point3Mm => at(a.xMm - b.xMm, a.yMm - b.yMm, a.zMm - b.zMm);

/** The frame `inner` as seen in the frame `outer`; both are given in the room. */
export function rigidBetween(outer: Frame3Mm, inner: Frame3Mm): Rigid {
  const seen = (p: Point3Mm): Point3Mm => intoFrame3(outer, fromFrame3(inner, p));
  const origin = seen(at(0, 0, 0));
  return {
    origin,
    x: minus(seen(at(1, 0, 0)), origin),
    y: minus(seen(at(0, 1, 0)), origin),
    z: minus(seen(at(0, 0, 1)), origin),
  };
}

/** A point of the inner frame in the outer one. */
export const movedPoint = ({ origin, x, y, z }: Rigid, xMm: number, yMm: number, zMm: number): Point3Mm =>
  at(
    origin.xMm + x.xMm * xMm + y.xMm * yMm + z.xMm * zMm,
    origin.yMm + x.yMm * xMm + y.yMm * yMm + z.yMm * zMm,
    origin.zMm + x.zMm * xMm + y.zMm * yMm + z.zMm * zMm,
  );

/** The box in the outer frame round a box of the inner one. */
export function movedBox({ origin, x, y, z }: Rigid, box: SpaceBox): SpaceBox {
  const halfX = (box.maxXMm - box.minXMm) / 2;
  const halfY = (box.maxYMm - box.minYMm) / 2;
  const halfZ = (box.highMm - box.lowMm) / 2;
  const atX = box.minXMm + halfX;
  const atY = box.minYMm + halfY;
  const atZ = box.lowMm + halfZ;
  const midX = origin.xMm + x.xMm * atX + y.xMm * atY + z.xMm * atZ;
  const midY = origin.yMm + x.yMm * atX + y.yMm * atY + z.yMm * atZ;
  const midZ = origin.zMm + x.zMm * atX + y.zMm * atY + z.zMm * atZ;
  const reachX = Math.abs(x.xMm) * halfX + Math.abs(y.xMm) * halfY + Math.abs(z.xMm) * halfZ;
  const reachY = Math.abs(x.yMm) * halfX + Math.abs(y.yMm) * halfY + Math.abs(z.yMm) * halfZ;
  const reachZ = Math.abs(x.zMm) * halfX + Math.abs(y.zMm) * halfY + Math.abs(z.zMm) * halfZ;
  return {
    minXMm: midX - reachX,
    maxXMm: midX + reachX,
    minYMm: midY - reachY,
    maxYMm: midY + reachY,
    lowMm: midZ - reachZ,
    highMm: midZ + reachZ,
  };
}

/** Box of a solid in its panel's frame. */
export const solidBox = ({ box, lowMm, highMm }: Solid): SpaceBox => ({
  minXMm: box.minXMm,
  maxXMm: box.maxXMm,
  minYMm: box.minYMm,
  maxYMm: box.maxYMm,
  lowMm,
  highMm,
});

/** Whether two boxes come nearer to each other than `withinMm`. */
export const boxesNear = (a: SpaceBox, b: SpaceBox, withinMm: number): boolean =>
  a.minXMm < b.maxXMm + withinMm &&
  b.minXMm < a.maxXMm + withinMm &&
  a.minYMm < b.maxYMm + withinMm &&
  b.minYMm < a.maxYMm + withinMm &&
  a.lowMm < b.highMm + withinMm &&
  b.lowMm < a.highMm + withinMm;
