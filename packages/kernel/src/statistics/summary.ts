/** What a list of readings comes to. */
export interface Summary {
  readonly count: number;
  readonly mean: number;
  /** Sample standard deviation, with count − 1; 0 for fewer than two. */
  readonly deviation: number;
  readonly min: number;
  readonly max: number;
}

/** Sum with the rounding errors carried along (A. Neumaier, ZAMM 54, 1974). */
export function exactSum(values: Iterable<number>): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}

/**
 * Mean and sample standard deviation in two passes, about a first guess of the mean, so that readings whose differences
 * are small beside their size lose nothing.
 * @throws RangeError without a reading
 */
export function summaryOf(values: readonly number[]): Summary {
  const first = values[0];
  if (first === undefined) throw new RangeError("no readings, expected at least one");
  const n = values.length;
  const offset = exactSum(values.map((value) => value - first)) / n;
  const mean = first + offset;
  const gaps = values.map((value) => value - first - offset);
  const rest = exactSum(gaps);
  const squares = exactSum(gaps.map((gap) => gap * gap)) - (rest * rest) / n;
  let [min, max] = [first, first];
  for (const value of values) {
    if (value < min) min = value;
    if (value > max) max = value;
  }
  const deviation = n < 2 ? 0 : Math.sqrt(Math.max(0, squares) / (n - 1));
  return { count: n, mean, deviation, min, max };
}

/** Correlation of each reading with the one before (NIST/SEMATECH e-Handbook, 1.3.5.12, lag 1). */
export function lagOneCorrelation(values: readonly number[]): number {
  const { mean } = summaryOf(values);
  const gaps = values.map((value) => value - mean);
  const all = exactSum(gaps.map((gap) => gap * gap));
  return all === 0 ? 0 : exactSum(gaps.slice(1).map((gap, i) => gap * (gaps[i] ?? 0))) / all;
}
