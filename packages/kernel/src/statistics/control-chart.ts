import { controlConstants } from "./control-constants.ts";
import { exactSum, summaryOf } from "./summary.ts";

/** Centre line and limits at three deviations. */
export interface ControlLimits {
  readonly centre: number;
  readonly lower: number;
  readonly upper: number;
}

/** Readings one by one, with their moving ranges. */
export interface IndividualsChart {
  readonly values: ControlLimits;
  readonly ranges: ControlLimits;
  /** Deviation within, from the mean moving range. */
  readonly deviation: number;
}

/** Means of samples, with their ranges or deviations. */
export interface SamplesChart {
  readonly means: ControlLimits;
  readonly spreads: ControlLimits;
  /** Deviation within samples. */
  readonly deviation: number;
}

const mean = (values: readonly number[]): number => exactSum(values) / values.length;

/** Differences of neighbours without sign. */
export const movingRanges = (values: readonly number[]): readonly number[] =>
  values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? 0)));

/**
 * Limits of a chart of single readings, from the mean moving range of two (ISO 7870-2; NIST/SEMATECH e-Handbook, 6.3.2.2).
 * @throws RangeError for fewer than two readings
 */
export function individualsChart(values: readonly number[]): IndividualsChart {
  if (values.length < 2) throw new RangeError(`${values.length} readings, expected at least two`);
  const { d2, D4 } = controlConstants(2);
  const centre = mean(values);
  const range = mean(movingRanges(values));
  const deviation = range / d2;
  return {
    values: { centre, lower: centre - 3 * deviation, upper: centre + 3 * deviation },
    ranges: { centre: range, lower: 0, upper: D4 * range },
    deviation,
  };
}

/**
 * Limits of a chart of means of samples of equal size, from their ranges up to ten readings each, beyond from their
 * deviations (ISO 7870-2; NIST/SEMATECH e-Handbook, 6.3.2.1).
 * @throws RangeError without samples, for samples of different sizes or of fewer than two readings
 */
export function samplesChart(samples: readonly (readonly number[])[]): SamplesChart {
  const n = samples[0]?.length ?? 0;
  if (samples.some((sample) => sample.length !== n)) throw new RangeError("samples of different sizes");
  const { A2, A3, B3, B4, D3, D4, c4, d2 } = controlConstants(n);
  const all = samples.map(summaryOf);
  const centre = mean(all.map((one) => one.mean));
  if (n <= 10) {
    const range = mean(all.map(({ min, max }) => max - min));
    return {
      means: { centre, lower: centre - A2 * range, upper: centre + A2 * range },
      spreads: { centre: range, lower: D3 * range, upper: D4 * range },
      deviation: range / d2,
    };
  }
  const spread = mean(all.map((one) => one.deviation));
  return {
    means: { centre, lower: centre - A3 * spread, upper: centre + A3 * spread },
    spreads: { centre: spread, lower: B3 * spread, upper: B4 * spread },
    deviation: spread / c4,
  };
}
