import { roundStep, type Scale } from "../../parts/chart/scales.ts";

const LEAST = 1e-9;

/** An axis round what is to be seen, without nothing on it: readings are far from it as a rule. */
export function readingScale(values: Iterable<number>, from: number, to: number, most = 6): Scale {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (!(high > low))
    [low, high] = [low - Math.max(1, Math.abs(low)) / 10, high + Math.max(1, Math.abs(high)) / 10];
  const step = roundStep(high - low, most);
  const [first, last] = [Math.floor(low / step + LEAST), Math.ceil(high / step - LEAST)];
  return {
    at: (value) => from + ((value - first * step) / ((last - first) * step)) * (to - from),
    ticks: Array.from({ length: last - first + 1 }, (_, i) => ({
      value: Number(((first + i) * step).toPrecision(12)),
      isMinor: false,
    })),
  };
}

/** Bars of a histogram. */
export interface Bin {
  readonly from: number;
  readonly to: number;
  readonly count: number;
}

const [FEWEST_BINS, MOST_BINS] = [5, 40];

/**
 * Readings in bins of one round width, about as many as D. Freedman and P. Diaconis advise: width 2 IQR / ∛n (Zeitschrift
 * für Wahrscheinlichkeitstheorie 57, 1981).
 */
export function histogram(values: readonly number[]): readonly Bin[] {
  if (values.length === 0) return [];
  const sorted = Float64Array.from(values).sort();
  const at = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  const [low, high] = [at(0), at(1)];
  if (low === high) return [{ from: low, to: high, count: values.length }];
  const width = (2 * (at(0.75) - at(0.25))) / Math.cbrt(values.length);
  const asked = width > 0 ? (high - low) / width : FEWEST_BINS;
  const step = roundStep(high - low, Math.min(MOST_BINS, Math.max(FEWEST_BINS, asked)));
  const first = Math.floor(low / step + LEAST);
  const bins = Array.from({ length: Math.floor(high / step + LEAST) - first + 1 }, () => 0);
  for (const value of sorted) {
    const bin = Math.floor(value / step + LEAST) - first;
    bins[bin] = (bins[bin] ?? 0) + 1;
  }
  return bins.map((count, i) => ({
    from: Number(((first + i) * step).toPrecision(12)),
    to: Number(((first + i + 1) * step).toPrecision(12)),
    count,
  }));
}
