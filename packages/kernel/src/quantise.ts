/**
 * Rounding of lengths to steps, robust against the noise of floating-point sums: 3 × 33.35 is 100.05000000000001
 * in a computer, and a bench that works in steps of 5 mm must not get 105 where the drawing says 100.
 */

/** Millimetres as a whole number of micrometres: the grain in which lengths are compared and hashed. */
export const toMicrometres = (valueMm: number): number => Math.round(valueMm * 1000) + 0;

/**
 * The multiple of `step` nearest to `value`; a half goes up. Same unit for both.
 * @throws RangeError when the step is not a positive finite number, or the value is not finite.
 */
export const roundTo = (value: number, step: number): number => {
  const quotient = steps(value, step);
  return multiple(Math.floor(quotient + 0.5 + noise(quotient)), step);
};

/**
 * The least multiple of `step` (mm) that is not below `value` (mm). A value less than half a micrometre above a
 * multiple counts as that multiple; so does one that differs from it only by floating-point noise.
 * @throws RangeError when the step is not a positive finite number, or the value is not finite.
 */
export const roundUpTo = (value: number, step: number): number => {
  const quotient = steps(value, step);
  const slack = Math.min(0.5, HALF_MICROMETRE / step) + noise(quotient);
  return multiple(Math.ceil(quotient - slack), step);
};

const HALF_MICROMETRE = 0.0005;

/** What a few operations on doubles may have added or lost. */
const noise = (quotient: number): number => 1e-12 * Math.max(1, Math.abs(quotient));

const steps = (value: number, step: number): number => {
  if (!(step > 0 && Number.isFinite(step)))
    throw new RangeError(`step is ${step}, expected a positive number`);
  if (!Number.isFinite(value)) throw new RangeError(`value is ${value}, expected a finite number`);
  return value / step;
};

/** n × step, with 3 × 0.1 giving 0.3: a step that is a whole fraction of one divides instead. */
const multiple = (n: number, step: number): number => {
  const fraction = Math.round(1 / step);
  const exact = fraction > 0 && Math.abs(fraction * step - 1) < 1e-12;
  return (exact ? n / fraction : n * step) + 0;
};
