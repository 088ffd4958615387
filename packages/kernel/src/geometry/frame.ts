import { cosSinDeg, normaliseDeg, rotatePoint } from "./angle.ts";
import { addPoints, type PointMm, subtractPoints } from "./point.ts";

/** A local frame placed in an outer one: its origin, and its turn in degrees anticlockwise. */
export interface FrameMm {
  readonly xMm: number;
  readonly yMm: number;
  readonly rotationDeg: number;
}

/** A point of the local frame, in the outer frame. */
export function fromFrame(frame: FrameMm, local: PointMm): PointMm {
  const { cos, sin } = cosSinDeg(frame.rotationDeg);
  return {
    xMm: frame.xMm + local.xMm * cos - local.yMm * sin,
    yMm: frame.yMm + local.xMm * sin + local.yMm * cos,
  };
}

/** A point of the outer frame, in the local frame: the inverse of `fromFrame`. */
export function intoFrame(frame: FrameMm, outer: PointMm): PointMm {
  return rotatePoint(subtractPoints(outer, frame), -frame.rotationDeg);
}

/** A frame that is given in `outer`, in the frame that `outer` is given in. */
export function composeFrames(outer: FrameMm, inner: FrameMm): FrameMm {
  const at = fromFrame(outer, inner);
  return { ...at, rotationDeg: normaliseDeg(outer.rotationDeg + inner.rotationDeg) };
}

/** A point seen from below: mirrored in x about the line `aboutXMm`. Mirrored twice it is the same. */
export const mirrorX = (p: PointMm, aboutXMm = 0): PointMm => ({ xMm: 2 * aboutXMm - p.xMm, yMm: p.yMm });

/** A direction seen from below: mirrored in x, degrees in [0, 360). */
export const mirrorDeg = (deg: number): number => normaliseDeg(180 - deg);

/** Every point moved by `by`. */
export const translate = (points: readonly PointMm[], by: PointMm): PointMm[] =>
  points.map((p) => addPoints(p, by));
