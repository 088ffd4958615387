import {
  type Capability,
  type ControlLimits,
  type ControlRule,
  capability,
  controlSignals,
  individualsChart,
  LEAST_FOR_NORMALITY,
  movingRangeDegrees,
  movingRanges,
  normality,
  type RuleSignal,
  type SpecificationLimits,
  type Summary,
  samplesChart,
  summaryOf,
} from "@pinwright/kernel";

/** A reading of a test, as the records have it. */
export interface StudyReading {
  readonly no: number;
  readonly unit: string;
  readonly value: number | null;
  readonly instrument: string;
  readonly at: string;
}

/** Why some readings say nothing of the process. */
interface LeftOut {
  /** Only judged, or nothing was read. */
  readonly withoutValue: number;
  /** Read with an instrument that was out of calibration on that day. */
  readonly outOfCalibration: number;
  /** Not the first of its unit: what was mended or tried again says nothing of how well it was made. */
  readonly again: number;
}

/** Points of a chart with their limits and the rules that they break. */
export interface StudyChart {
  readonly points: readonly number[];
  readonly limits: ControlLimits;
  readonly signals: readonly RuleSignal[];
}

/** What keeps the figures from being believed. */
export type Doubt = "out-of-control" | "few" | "not-normal" | "coarse";

/** A measurement of units one after another: whether it is steady, and whether it keeps within the design's limits. */
export interface ControlStudy {
  /** First readings of their units, oldest first. */
  readonly readings: readonly (StudyReading & { readonly value: number })[];
  readonly leftOut: LeftOut;
  readonly summary: Summary;
  /** Readings of one point: 1, or the size of the samples. */
  readonly sampleSize: number;
  /** Single readings or means of samples, and moving ranges or ranges within samples. */
  readonly values: StudyChart;
  readonly spreads: StudyChart;
  /** Deviation within: from ranges, so that a drift does not widen it. */
  readonly deviationWithin: number;
  /** With the deviation within: Cp and Cpk; null without limits of the design, or where readings do not differ. */
  readonly within: Capability | null;
  /** With the deviation of all readings: Pp and Ppk. */
  readonly overall: Capability | null;
  /** Chance that normal readings are this far from normal; null for too few. */
  readonly normalChance: number | null;
  readonly doubts: readonly Doubt[];
}

/** Fewest readings that control limits are judged by; of fewer the figures are shown with a warning. Common practice, no source. */
export const ENOUGH_READINGS = 25;
/** Level at which readings are doubted to be normal. Common practice, no source. */
const LEAST_CHANCE = 0.05;
/** Fewer different values than this, and ranges and deviations say more of the instrument than of the process. Common practice, no source. */
const LEAST_VALUES = 5;
const FEWEST = 2;

/** Tells readings apart by what they say of the process. @param readings oldest first */
function pickReadings(
  readings: readonly StudyReading[],
  calibratedUntil: ReadonlyMap<string, string>,
): Pick<ControlStudy, "readings" | "leftOut"> {
  let [withoutValue, outOfCalibration, again] = [0, 0, 0];
  const seen = new Set<string>();
  const picked = readings.flatMap((reading) => {
    const { value, unit, instrument, at } = reading;
    const until = calibratedUntil.get(instrument);
    if (value === null) withoutValue += 1;
    else if (until !== undefined && at.slice(0, until.length) > until) outOfCalibration += 1;
    else if (seen.has(unit)) again += 1;
    else {
      seen.add(unit);
      return [{ ...reading, value }];
    }
    return [];
  });
  return { readings: picked, leftOut: { withoutValue, outOfCalibration, again } };
}

/** Points as distances from the centre line, in thirds of the way to the limit on their side. */
const distances = (points: readonly number[], { centre, lower, upper }: ControlLimits): readonly number[] =>
  points.map((point) => {
    const third = (point < centre ? centre - lower : upper - centre) / 3;
    return third === 0 ? 0 : (point - centre) / third;
  });

/** Ranges are only held against their limits: neighbouring moving ranges share a reading, so runs of them say nothing. */
const RULES_OF_SPREADS: readonly ControlRule[] = ["beyond"];

const chartOf = (
  points: readonly number[],
  limits: ControlLimits,
  rules?: typeof RULES_OF_SPREADS,
): StudyChart => ({
  points,
  limits,
  signals: controlSignals(distances(points, limits), rules),
});

/**
 * Control charts and capability of a measurement. Control limits come from the readings, specification limits only from the
 * design. Only the first reading of each unit counts, and none by an instrument that was out of calibration.
 * @param readings oldest first, those that were corrected left out
 * @param limits of the design; sides without a limit are null
 * @param calibratedUntil last good day of instruments, as year-month-day, by id
 * @param sampleSize 1: single readings; more: samples of so many units in a row, an incomplete last one left out
 * @returns null for fewer than two readings, or two samples
 */
export function controlStudy(
  readings: readonly StudyReading[],
  limits: SpecificationLimits,
  calibratedUntil: ReadonlyMap<string, string> = new Map(),
  sampleSize = 1,
): ControlStudy | null {
  const picked = pickReadings(readings, calibratedUntil);
  const all = picked.readings.map(({ value }) => value);
  if (all.length < FEWEST * sampleSize) return null;
  const charts = sampleSize === 1 ? singles(all) : samples(all, sampleSize);
  const summary = summaryOf(all);
  const { count, mean, deviation } = summary;
  const hasLimit = limits.lower !== null || limits.upper !== null;
  const normalChance = count < LEAST_FOR_NORMALITY || deviation === 0 ? null : normality(all).chance;
  const doubts: Doubt[] = [];
  if (charts.values.signals.length + charts.spreads.signals.length > 0) doubts.push("out-of-control");
  if (count < ENOUGH_READINGS) doubts.push("few");
  if (normalChance !== null && normalChance < LEAST_CHANCE) doubts.push("not-normal");
  if (new Set(all).size < Math.min(LEAST_VALUES, count)) doubts.push("coarse");
  return {
    ...picked,
    summary,
    sampleSize,
    values: charts.values,
    spreads: charts.spreads,
    deviationWithin: charts.deviation,
    within:
      hasLimit && charts.deviation > 0
        ? capability({ count, mean, deviation: charts.deviation, degrees: charts.degrees }, limits)
        : null,
    overall: hasLimit && deviation > 0 ? capability({ count, mean, deviation }, limits) : null,
    normalChance,
    doubts,
  };
}

interface Charts {
  readonly values: StudyChart;
  readonly spreads: StudyChart;
  readonly deviation: number;
  readonly degrees: number;
}

function singles(all: readonly number[]): Charts {
  const { values, ranges, deviation } = individualsChart(all);
  return {
    values: chartOf(all, values),
    spreads: chartOf(movingRanges(all), ranges, RULES_OF_SPREADS),
    deviation,
    degrees: movingRangeDegrees(all.length),
  };
}

function samples(all: readonly number[], size: number): Charts {
  const count = Math.floor(all.length / size);
  const groups = Array.from({ length: count }, (_, i) => all.slice(i * size, (i + 1) * size));
  const { means, spreads, deviation } = samplesChart(groups);
  const summaries = groups.map(summaryOf);
  return {
    values: chartOf(
      summaries.map(({ mean }) => mean),
      means,
    ),
    spreads: chartOf(
      summaries.map(({ min, max }) => max - min),
      spreads,
      RULES_OF_SPREADS,
    ),
    deviation,
    degrees: count * (size - 1),
  };
}
