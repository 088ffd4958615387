import { plainDecimal } from "../read/plain-decimal.ts";
import { type Rule, rowRule } from "./rule.ts";

const atLeast = (low: number | null, high: number | null): string | null =>
  low !== null && high !== null && low > high ? `${plainDecimal(low)} or more, the lower limit` : null;

interface Limits {
  readonly min: number | null;
  readonly nominal: number | null;
  readonly max: number | null;
}

const limits = {
  about: "`min` is at most `max`, and `nominal` is between them.",
  reads: ["min", "nominal", "max"],
} as const;

function judgeLimits(row: Limits): { column: keyof Limits; expected: string } | null {
  const wrongMax = atLeast(row.min, row.max);
  if (wrongMax !== null) return { column: "max", expected: wrongMax };
  const wrongNominal = atLeast(row.min, row.nominal);
  if (wrongNominal !== null) return { column: "nominal", expected: wrongNominal };
  return row.nominal !== null && row.max !== null && row.nominal > row.max
    ? { column: "nominal", expected: `${plainDecimal(row.max)} or less, the upper limit` }
    : null;
}

export const testsMinMax: Rule = rowRule({ table: "tests", ...limits }, () => judgeLimits);
export const testStepsMinMax: Rule = rowRule({ table: "test_steps", ...limits }, () => judgeLimits);
export const mechanismStepsMinMax: Rule = rowRule({ table: "mechanism_steps", ...limits }, () => judgeLimits);

export const familiesArea: Rule = rowRule(
  {
    table: "connector_families",
    about: "The smallest conductor is not larger than the largest.",
    reads: ["area_min_mm2", "area_max_mm2"],
  },
  () => (row) => {
    const expected = atLeast(row.area_min_mm2, row.area_max_mm2);
    return expected === null ? null : { column: "area_max_mm2", expected };
  },
);

export const familiesInsulation: Rule = rowRule(
  {
    table: "connector_families",
    about: "The thinnest insulation is not thicker than the thickest.",
    reads: ["insulation_min_mm", "insulation_max_mm"],
  },
  () => (row) => {
    const expected = atLeast(row.insulation_min_mm, row.insulation_max_mm);
    return expected === null ? null : { column: "insulation_max_mm", expected };
  },
);
