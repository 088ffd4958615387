/** A point or a vector in the plane, in millimetres. Every frame of the book and of a sheet uses this shape. */
export interface PointMm {
  readonly xMm: number;
  readonly yMm: number;
}

export const addPoints = (a: PointMm, b: PointMm): PointMm => ({ xMm: a.xMm + b.xMm, yMm: a.yMm + b.yMm });

export const subtractPoints = (a: PointMm, b: PointMm): PointMm => ({
  xMm: a.xMm - b.xMm,
  yMm: a.yMm - b.yMm,
});

export const scalePoint = (a: PointMm, factor: number): PointMm => ({
  xMm: a.xMm * factor,
  yMm: a.yMm * factor,
});

/** Scalar product, mm². */
export const dotProduct = (a: PointMm, b: PointMm): number => a.xMm * b.xMm + a.yMm * b.yMm;

/** z of the vector product, mm²: positive when `b` is anticlockwise of `a`. */
export const crossProduct = (a: PointMm, b: PointMm): number => a.xMm * b.yMm - a.yMm * b.xMm;

/** Length of a vector, mm. */
export const vectorLength = (a: PointMm): number => Math.sqrt(a.xMm * a.xMm + a.yMm * a.yMm);

/** Distance of two points, mm. */
export const distance = (a: PointMm, b: PointMm): number => vectorLength(subtractPoints(a, b));

/** The point that lies `fraction` of the way from `a` to `b`. */
export const pointBetween = (a: PointMm, b: PointMm, fraction: number): PointMm => ({
  xMm: a.xMm + (b.xMm - a.xMm) * fraction,
  yMm: a.yMm + (b.yMm - a.yMm) * fraction,
});

/** Length of a polyline, mm. */
export function polylineLength(line: readonly PointMm[]): number {
  let sum = 0;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1];
    const b = line[i];
    if (a !== undefined && b !== undefined) sum += distance(a, b);
  }
  return sum;
}

/**
 * The point at a distance of `atMm` along a polyline, held between its ends.
 * Throws a RangeError for an empty polyline.
 */
export function pointAlong(line: readonly PointMm[], atMm: number): PointMm {
  const first = line[0];
  if (first === undefined) throw new RangeError("pointAlong: the polyline has no point; give at least one");
  let left = atMm;
  let last = first;
  for (const next of line.slice(1)) {
    const part = distance(last, next);
    if (left < part) return left <= 0 ? last : pointBetween(last, next, left / part);
    left -= part;
    last = next;
  }
  return last;
}
