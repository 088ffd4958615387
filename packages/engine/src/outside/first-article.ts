import type { BookRow, ShopRow } from "@pinwright/book";
import { compareText, decimal, numberOfDecimal } from "@pinwright/kernel";
import { type Languages, labelsOf, type Machine } from "../model/index.ts";

/** `open`: not measured yet, or not looked at. */
export type Verdict = "pass" | "fail" | "open";

/** A dimension of a part as the first article is measured for it. */
export interface CheckedDimension {
  /** Number in the balloon on the drawing. */
  readonly mark: string;
  readonly labels: Languages;
  /** Null: it is only looked at. */
  readonly nominal: number | null;
  /** Limits, both within; null with the nominal. Exact decimals: 12.7 + 0.1 is 12.8. */
  readonly min: number | null;
  readonly max: number | null;
  readonly minus: number;
  readonly plus: number;
  readonly unit: string;
  readonly how: Languages;
}

/** The same with what was found on a sample. */
export interface JudgedDimension extends CheckedDimension {
  readonly reading: number | null;
  /** Of what is only looked at: whether it is as wanted. */
  readonly good: "yes" | "no" | "unsaid";
  readonly by: string;
  readonly verdict: Verdict;
  /** Reading less nominal; null without either. */
  readonly deviation: number | null;
  /** Share of the tolerance on that side that the deviation takes; above 1 it fails. Null where there is none. */
  readonly used: number | null;
}

/** A sample with every dimension of its part judged. */
export interface JudgedSample {
  readonly row: ShopRow<"samples">;
  /** Whether it was made to the revision that the dimensions are of: another one's verdicts say little. */
  readonly isPresent: boolean;
  readonly dimensions: readonly JudgedDimension[];
  /** Marks of readings that no dimension of the part has. */
  readonly strays: readonly string[];
  readonly passed: number;
  readonly failed: number;
  readonly open: number;
  /** `fail` as soon as one fails; `open` while one is open; `pass` also when nothing is to be measured. */
  readonly verdict: Verdict;
}

/** Marks as people count them: 2 before 10, `3a` after `3`. */
export function compareMarks(a: string, b: string): number {
  const [x, y] = [Number.parseInt(a, 10), Number.parseInt(b, 10)];
  if (Number.isNaN(x) !== Number.isNaN(y)) return Number.isNaN(x) ? 1 : -1;
  return Number.isNaN(x) || x === y ? compareText(a, b) : x - y;
}

function checkedDimension(row: BookRow<"dimensions">): CheckedDimension {
  const { nominal, minus, plus } = row;
  const [at, below, above] = [decimal(nominal ?? 0), decimal(minus), decimal(plus)];
  return {
    mark: row.mark,
    labels: labelsOf(row, row.mark),
    nominal,
    min: nominal === null ? null : numberOfDecimal(at - below),
    max: nominal === null ? null : numberOfDecimal(at + above),
    minus,
    plus,
    unit: row.unit === "" ? "mm" : row.unit,
    how: { en: row.how || row.how_zh, zh: row.how_zh || row.how },
  };
}

/** Dimensions that the designer marked on a part, in the order of their marks. */
export const dimensionsOf = (machine: Machine, partId: string): readonly CheckedDimension[] =>
  machine.book.tables.dimensions
    .filter((row) => row.part === partId)
    .sort((a, b) => compareMarks(a.mark, b.mark))
    .map(checkedDimension);

/**
 * Judges one dimension: it passes when the reading lies within its limits, the limits included. Exact decimals
 * throughout; the uncertainty of the measurement is not taken off, as common practice is where both sides agree to it
 * (ISO 14253-1 would take it off).
 */
export function judgeDimension(
  dimension: CheckedDimension,
  value: {
    readonly value: number | null;
    readonly good: "yes" | "no" | "unsaid";
    readonly by: string;
  } | null,
): JudgedDimension {
  const reading = value?.value ?? null;
  const good = value?.good ?? "unsaid";
  const found = { ...dimension, reading, good, by: value?.by ?? "" };
  const { nominal, min, max } = dimension;
  if (nominal === null || min === null || max === null) {
    const verdict = good === "yes" ? "pass" : good === "no" ? "fail" : "open";
    return { ...found, verdict, deviation: null, used: null };
  }
  if (reading === null) return { ...found, verdict: "open", deviation: null, used: null };
  const off = decimal(reading) - decimal(nominal);
  const room = decimal(off < 0n ? dimension.minus : dimension.plus);
  const size = off < 0n ? -off : off;
  return {
    ...found,
    verdict: size <= room ? "pass" : "fail",
    deviation: numberOfDecimal(off),
    used: room === 0n ? null : Number(size) / Number(room),
  };
}

/** A sample judged by the dimensions of its part; null when the shop has no such sample. */
export function judgeSample(machine: Machine, sampleId: string): JudgedSample | null {
  const row = machine.shop.tables.samples.find((sample) => sample.id === sampleId);
  if (row === undefined) return null;
  const values = new Map(
    machine.shop.tables.sample_values
      .filter((value) => value.sample === sampleId)
      .map((value) => [value.mark, value] as const),
  );
  const dimensions = dimensionsOf(machine, row.part).map((dimension) =>
    judgeDimension(dimension, values.get(dimension.mark) ?? null),
  );
  const marks = new Set(dimensions.map(({ mark }) => mark));
  const count = (verdict: Verdict): number => dimensions.filter((d) => d.verdict === verdict).length;
  const [passed, failed, open] = [count("pass"), count("fail"), count("open")];
  const part = machine.book.tables.parts.find(({ id }) => id === row.part);
  return {
    row,
    isPresent: part?.revision === row.revision,
    dimensions,
    strays: [...values.keys()].filter((mark) => !marks.has(mark)).sort(compareMarks),
    passed,
    failed,
    open,
    verdict: failed > 0 ? "fail" : open > 0 ? "open" : "pass",
  };
}
