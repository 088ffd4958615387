/** Digits that tell readings of a deviation apart: two below its first. */
const BELOW = 2;

/** A figure as far as readings with such a deviation can tell it; the whole value belongs on hover. */
export function figureText(value: number, deviation: number): string {
  const digits = deviation > 0 ? Math.ceil(-Math.log10(deviation)) + BELOW : 3;
  return value.toFixed(Math.min(10, Math.max(0, digits)));
}
