/** A point of a curve that was read from a table. */
export type CurvePoint = readonly [x: number, y: number];

/**
 * Straight line through the two neighbours of `x` on logarithmic axes; beyond its ends the curve goes on with the
 * slope of its last piece. All x and y are above zero, x rising, and there are at least two points.
 */
export function logLog(curve: readonly CurvePoint[], x: number): number {
  const at = Math.max(
    1,
    Math.min(
      curve.length - 1,
      curve.findIndex(([px]) => px >= x),
    ),
  );
  const last = x > (curve.at(-1)?.[0] ?? x) ? curve.length - 1 : at;
  const [[x0, y0], [x1, y1]] = [curve[last - 1] ?? [1, 1], curve[last] ?? [1, 1]];
  const share = Math.log(x / x0) / Math.log(x1 / x0);
  return y0 * (y1 / y0) ** share;
}

/** Straight line through the two neighbours of `x`; beyond its ends the curve keeps its last value. */
export function linear(curve: readonly CurvePoint[], x: number): number {
  const first = curve[0] ?? [0, 0];
  if (x <= first[0]) return first[1];
  for (let i = 1; i < curve.length; i++) {
    const [[x0, y0], [x1, y1]] = [curve[i - 1] ?? first, curve[i] ?? first];
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return curve.at(-1)?.[1] ?? first[1];
}
