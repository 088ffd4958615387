/**
 * Learning over a run. Two theories share one formula, y = t₁ · n^b with b = log₂(rate):
 * - unit theory: y is the time of the n-th unit;
 * - cumulative average (T. P. Wright, Factors affecting the cost of airplanes, J. Aeronautical Sciences 3 (1936)
 *   122–128, from memory): y is the average time of the first n units.
 * Pinwright plans with Wright's; both are here because published tables give both.
 */

/**
 * Exponent b of the learning curve: log₂ of the rate. For 80 % −0.32193, for 85 % −0.23447, for 90 % −0.15200.
 * @param pct what the time falls to when the number built doubles, in per cent; over 0 up to 100
 * @throws RangeError when `pct` is outside that
 */
export function learningExponent(pct: number): number {
  if (!(pct > 0 && pct <= 100)) throw new RangeError(`learning is ${pct} %, expected over 0 up to 100`);
  return Math.log2(pct / 100);
}

/**
 * Unit theory: time of the n-th unit over that of the first, n^b.
 * @throws RangeError as `learningExponent`, or when `unit` is no whole number from 1
 */
export function unitTheoryFactor(unit: number, pct: number): number {
  return unitOf(unit) ** learningExponent(pct);
}

/** Unit theory: time of the first `units` units over that of the first, Σ n^b. */
export function unitTheoryTotal(units: number, pct: number): number {
  const exponent = learningExponent(pct);
  let sum = 0;
  for (let n = 1; n <= unitOf(units); n++) sum += n ** exponent;
  return sum;
}

/** Wright: average time of the first `units` units over the time of the first, n^b. */
export function wrightAverage(units: number, pct: number): number {
  return unitOf(units) ** learningExponent(pct);
}

/** Wright: time of the first `units` units over that of the first, n · n^b. */
export function wrightTotal(units: number, pct: number): number {
  return units * wrightAverage(units, pct);
}

/** Wright: time of the n-th unit alone over that of the first, n^(1+b) − (n−1)^(1+b). */
export function wrightUnit(unit: number, pct: number): number {
  return unit === 1 ? 1 : wrightTotal(unit, pct) - wrightTotal(unit - 1, pct);
}

/**
 * Minutes of the n-th machine of a run.
 * @param firstMin minutes of the first machine
 */
export function unitMinutes(firstMin: number, unit: number, pct: number): number {
  return firstMin * wrightUnit(unit, pct);
}

/**
 * Hours of a whole run.
 * @param firstMin minutes of the first machine
 */
export function runHours(firstMin: number, units: number, pct: number): number {
  return units === 0 ? 0 : (firstMin * wrightTotal(units, pct)) / 60;
}

function unitOf(unit: number): number {
  if (!Number.isInteger(unit) || unit < 1) {
    throw new RangeError(`unit is ${unit}, expected a whole number from 1`);
  }
  return unit;
}
