import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type ControlConstants,
  capability,
  chiSquaredQuantile,
  controlConstants,
  controlSignals,
  individualsChart,
  lagOneCorrelation,
  lnGamma,
  normalBelow,
  normalQuantile,
  samplesChart,
  summaryOf,
} from "./index.ts";

const lines = (name: string): string[][] =>
  readFileSync(join(import.meta.dirname, "fixtures", name), "utf8")
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(","));

const pairs = (first: number, low: number, high: number): number[] => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];

// NIST Statistical Reference Datasets, univariate summary statistics; NumAcc3 and 4 are made as their pages say.
const MADE: Readonly<Record<string, readonly number[]>> = {
  numacc1: [10000001, 10000003, 10000002],
  numacc2: pairs(1.2, 1.1, 1.3),
  numacc3: pairs(1000000.2, 1000000.1, 1000000.3),
  numacc4: pairs(10000000.2, 10000000.1, 10000000.3),
};

describe("summaries", () => {
  test.each(["michelso", "mavro", "lottery", "numacc1", "numacc2", "numacc3", "numacc4"])(
    "%s is as NIST certifies it",
    (name) => {
      const certified = lines("certified.csv").find(([dataset]) => dataset === name) ?? [];
      const values = MADE[name] ?? lines(`${name}.csv`).map(([value]) => Number(value));
      expect(values).toHaveLength(Number(certified[1]));
      const summary = summaryOf(values);
      // Readings of NumAcc3 and 4 are themselves rounded when they are stored: 1e-8 is all that is left of their spread.
      const near = name === "numacc4" ? 1e-7 : name === "numacc3" ? 1e-8 : 1e-12;
      expect(Math.abs(summary.mean / Number(certified[2]) - 1)).toBeLessThan(1e-14);
      expect(Math.abs(summary.deviation / Number(certified[3]) - 1)).toBeLessThan(near);
      expect(Math.abs(lagOneCorrelation(values) / Number(certified[4]) - 1)).toBeLessThan(
        name.startsWith("numacc") ? 1e-6 : 1e-10,
      );
    },
  );
});

describe("constants of control charts", () => {
  // Textbook table A.22 (S52 in the list of sources), to its last printed digit; at 3 and 5 other tables print 2.575 and 2.115.
  const columns = [
    "A2",
    "A3",
    "c4",
    "B3",
    "B4",
    "d2",
    "d3",
    "D3",
    "D4",
  ] as const satisfies readonly (keyof ControlConstants)[];
  test.each(lines("spc-constants.csv"))("for samples of %s", (size, ...printed) => {
    const constants = controlConstants(Number(size));
    columns.forEach((column, i) => {
      const text = printed[i] ?? "";
      const digits = text.split(".")[1]?.length ?? 3;
      expect(Math.abs(constants[column] - Number(text)), column).toBeLessThan(1.05 * 10 ** -digits);
    });
  });
});

describe("distributions", () => {
  test("are as printed in tables", () => {
    // Standard normal and chi-squared tables, NIST/SEMATECH e-Handbook, 1.3.6.7.1 and 1.3.6.7.4.
    expect(normalBelow(1.96)).toBeCloseTo(0.975, 4);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
    expect(chiSquaredQuantile(0.95, 10)).toBeCloseTo(18.307, 3);
    expect(chiSquaredQuantile(0.025, 24)).toBeCloseTo(12.401, 3);
    expect(chiSquaredQuantile(0.99, 1)).toBeCloseTo(6.635, 3);
    expect(Math.exp(lnGamma(0.5))).toBeCloseTo(Math.sqrt(Math.PI), 12);
    expect(Math.exp(lnGamma(10))).toBeCloseTo(362880, 6);
  });

  test("a quantile is where its share lies below (seed 3)", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), (share) => {
        expect(normalBelow(normalQuantile(share))).toBeCloseTo(share, 10);
      }),
      { seed: 3, numRuns: 50 },
    );
  });
});

describe("capability", () => {
  test("of the handbook's process", () => {
    // Mean 130, deviation 8, limits 100 to 150 (S56a): Cp 1.0417, Cpk 0.8333, 0.630 % outside.
    const { cp, cpk, outside } = capability(
      { count: 25, mean: 130, deviation: 8 },
      { lower: 100, upper: 150 },
    );
    expect(cp?.value).toBeCloseTo(1.041666667, 8);
    expect(cpk.value).toBeCloseTo(0.8333333333, 8);
    expect(outside).toBeCloseTo(0.006298082611, 8);
    expect(cpk.low).toBeLessThan(cpk.value);
    expect(cp?.high).toBeGreaterThan(1.3);
  });

  test("its interval of Cp holds the true one about as often as it says (seed 8)", () => {
    let seed = 8;
    const random = (): number => {
      seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
      return (seed + 0.5) / 0x80000000;
    };
    const normal = (): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    let [cps, cpks] = [0, 0];
    const tries = 2000;
    for (let i = 0; i < tries; i++) {
      const readings = summaryOf(Array.from({ length: 25 }, normal));
      const found = capability(readings, { lower: -4, upper: 5 });
      if (found.cp !== null && found.cp.low <= 1.5 && 1.5 <= found.cp.high) cps++;
      if (found.cpk.low <= 4 / 3 && 4 / 3 <= found.cpk.high) cpks++;
    }
    expect(Math.abs(cps / tries - 0.95)).toBeLessThan(0.015);
    expect(Math.abs(cpks / tries - 0.95)).toBeLessThan(0.025);
  });
});

describe("control charts", () => {
  test("limits of means and ranges", () => {
    // Samples of 5, grand mean 10, mean range 0.5: 9.7115 to 10.2885, ranges to 1.057, deviation 0.21496 (table A.22, S52).
    const sample = [9.75, 10.25, 10, 10, 10];
    const { means, spreads, deviation } = samplesChart([sample, sample, sample]);
    expect(means.lower).toBeCloseTo(9.7115, 3);
    expect(means.upper).toBeCloseTo(10.2885, 3);
    expect(spreads).toMatchObject({ centre: 0.5, lower: 0 });
    expect(spreads.upper).toBeCloseTo(1.057, 3);
    expect(deviation).toBeCloseTo(0.21496, 4);
  });

  test("limits of single readings", () => {
    // NIST/SEMATECH e-Handbook, 6.3.2.2: ten batches, mean 50.81, mean moving range 1.8778, limits 45.8 and 55.8.
    const values = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    const chart = individualsChart(values);
    expect(chart.values.centre).toBeCloseTo(50.81, 10);
    expect(chart.ranges.centre).toBeCloseTo(1.8778, 4);
    expect(chart.values.upper).toBeCloseTo(55.8041, 2);
    expect(chart.values.lower).toBeCloseTo(45.8159, 2);
  });

  test("each rule speaks at the point that completes its pattern, and not before", () => {
    const only = (z: readonly number[], rule: string) =>
      controlSignals(z)
        .filter((signal) => signal.rule === rule)
        .map(({ at }) => at);
    expect(only([0, 3.1, 0], "beyond")).toEqual([1]);
    expect(only(Array(9).fill(0.5), "one-side")).toEqual([8]);
    expect(only([0.1, 0.2, 0.3, 0.4, 0.5, 0.6], "trend")).toEqual([5]);
    expect(only([0.1, 0.2, 0.3, 0.4, 0.5, 0.5], "trend")).toEqual([]);
    expect(
      only(
        Array.from({ length: 14 }, (_, i) => (i % 2) - 0.5),
        "alternating",
      ),
    ).toEqual([13]);
    expect(only([2.5, 0, 2.5], "two-of-three")).toEqual([2]);
    expect(only([2.5, 0, -2.5], "two-of-three")).toEqual([]);
    expect(only([1.5, 1.5, 0, 1.5, 1.5], "four-of-five")).toEqual([4]);
    expect(only(Array(15).fill(0.5), "hugging")).toEqual([14]);
    expect(only([1.5, -1.5, 1.5, -1.5, 1.5, -1.5, 1.5, -1.5], "two-humps")).toEqual([7]);
  });
});
