import { normalBelow } from "./special.ts";
import { summaryOf } from "./summary.ts";

/** How far readings are from a normal distribution. */
export interface Normality {
  /** Statistic of Anderson and Darling, adjusted for the number of readings. */
  readonly statistic: number;
  /** Chance of at least that much if they are normal. */
  readonly chance: number;
}

/** Fewest readings that the test says anything of. */
export const LEAST_FOR_NORMALITY = 8;

/**
 * Test of T. W. Anderson and D. A. Darling with mean and deviation taken from the readings (NIST/SEMATECH e-Handbook,
 * 1.3.5.14); adjustment and chances by M. A. Stephens in R. B. D'Agostino, M. A. Stephens, "Goodness-of-Fit Techniques",
 * 1986, table 4.9 (5 % at 0.752).
 * @throws RangeError for fewer than eight readings, or ones that do not differ
 */
export function normality(values: readonly number[]): Normality {
  const n = values.length;
  if (n < LEAST_FOR_NORMALITY)
    throw new RangeError(`${n} readings, expected at least ${LEAST_FOR_NORMALITY}`);
  const { mean, deviation } = summaryOf(values);
  if (!(deviation > 0)) throw new RangeError("readings that do not differ, expected a deviation above 0");
  const z = Float64Array.from(values, (value) => (value - mean) / deviation).sort();
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const low = Math.max(normalBelow(z[i] ?? 0), Number.MIN_VALUE);
    const high = Math.max(normalBelow(-(z[n - 1 - i] ?? 0)), Number.MIN_VALUE);
    sum += (2 * i + 1) * (Math.log(low) + Math.log(high));
  }
  const statistic = (-n - sum / n) * (1 + 0.75 / n + 2.25 / (n * n));
  return { statistic, chance: chanceOf(statistic) };
}

function chanceOf(a: number): number {
  if (a >= 0.6) return Math.exp(1.2937 - 5.709 * a + 0.0186 * Math.min(a, 13) ** 2);
  if (a > 0.34) return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
  if (a > 0.2) return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
  return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
}
