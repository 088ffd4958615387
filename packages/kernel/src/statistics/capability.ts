import { chiSquaredQuantile, normalBelow, normalQuantile } from "./special.ts";

/** A figure with the interval that holds the true one with a stated confidence. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Limits from the design; a side without a limit is null. */
export interface SpecificationLimits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** How well readings stay within their limits. */
export interface Capability {
  /** Width of the limits over six deviations; null with one limit only. */
  readonly cp: Estimate | null;
  /** Distance of the mean from the nearer limit over three deviations. */
  readonly cpk: Estimate;
  /** Share beyond the limits if the readings are normal. */
  readonly outside: number;
}

/** Readings as capability takes them. */
export interface Spread {
  readonly count: number;
  readonly mean: number;
  readonly deviation: number;
  /** Degrees of freedom of the deviation; count − 1 for that of all readings. */
  readonly degrees?: number;
}

/**
 * Degrees of freedom of a deviation that comes from the mean moving range of two: its variance is 0.8264 σ²/n and that of
 * one with ν degrees σ²/(2ν) (J. D. Cryer, T. P. Ryan, "The estimation of sigma for an X chart: MR/d2 or S/c4?", Journal of
 * Quality Technology 22, 1990).
 */
export const movingRangeDegrees = (count: number): number => count / (2 * 0.8264);

/**
 * Capability of n readings with their mean and deviation. Cp with its exact interval by the chi-squared distribution; Cpk
 * with that of A. F. Bissell, "How reliable is your capability index?", Applied Statistics 39, 1990: Cpk ± z √(1/(9n) +
 * Cpk²/(2ν)) with ν degrees of freedom, n − 1 as a rule (NIST/SEMATECH e-Handbook, 7.1.6 and 6.1.6). With the deviation of
 * all readings these are Pp and Ppk.
 * @param confidence of the intervals, 0.95 for 95 %
 * @throws RangeError for fewer than two readings, no deviation, or no limit
 */
export function capability(readings: Spread, limits: SpecificationLimits, confidence = 0.95): Capability {
  const { count, mean, deviation, degrees = count - 1 } = readings;
  const { lower, upper } = limits;
  if (count < 2) throw new RangeError(`${count} readings, expected at least two`);
  if (!(deviation > 0)) throw new RangeError("readings that do not differ, expected a deviation above 0");
  if (lower === null && upper === null) throw new RangeError("no limit, expected one at least");
  const tail = (1 - confidence) / 2;
  const sides = [
    ...(upper === null ? [] : [(upper - mean) / (3 * deviation)]),
    ...(lower === null ? [] : [(mean - lower) / (3 * deviation)]),
  ];
  const cpk = Math.min(...sides);
  const half = normalQuantile(1 - tail) * Math.sqrt(1 / (9 * count) + (cpk * cpk) / (2 * degrees));
  const factor = (share: number): number => Math.sqrt(chiSquaredQuantile(share, degrees) / degrees);
  const cp = lower === null || upper === null ? null : (upper - lower) / (6 * deviation);
  return {
    cp: cp === null ? null : { value: cp, low: cp * factor(tail), high: cp * factor(1 - tail) },
    cpk: { value: cpk, low: cpk - half, high: cpk + half },
    outside:
      (upper === null ? 0 : 1 - normalBelow((upper - mean) / deviation)) +
      (lower === null ? 0 : normalBelow((lower - mean) / deviation)),
  };
}
