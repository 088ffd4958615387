import type { Estimate } from "./capability.ts";
import { normalQuantile } from "./special.ts";

/**
 * Share of x in n with the interval of E. B. Wilson, "Probable inference, the law of succession, and statistical
 * inference", Journal of the American Statistical Association 22, 1927 (NIST/SEMATECH e-Handbook, 7.2.4.1). It stays
 * between 0 and 1 and holds what it says for few units too.
 * @param confidence of the interval, 0.95 for 95 %
 * @throws RangeError unless x is a whole number from 0 to n, and n is above 0
 */
export function proportion(x: number, n: number, confidence = 0.95): Estimate {
  if (!(Number.isInteger(n) && n > 0)) throw new RangeError(`${n} in all, expected a whole number above 0`);
  if (!(Number.isInteger(x) && x >= 0 && x <= n))
    throw new RangeError(`${x} of ${n}, expected a whole number from 0 to ${n}`);
  const z = normalQuantile((1 + confidence) / 2);
  const share = x / n;
  const middle = (share + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half = (z / (1 + (z * z) / n)) * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n));
  // At the ends the formula is exact, but for rounding.
  return {
    value: share,
    low: x === 0 ? 0 : Math.max(0, middle - half),
    high: x === n ? 1 : Math.min(1, middle + half),
  };
}
