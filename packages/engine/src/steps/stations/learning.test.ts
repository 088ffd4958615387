import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  learningExponent,
  runHours,
  unitMinutes,
  unitTheoryFactor,
  unitTheoryTotal,
  wrightAverage,
  wrightTotal,
  wrightUnit,
} from "./learning.ts";

const [head = "", ...lines] = readFileSync(new URL("../testing/learning-curve.csv", import.meta.url), "utf8")
  .trim()
  .split("\n");
const columns = head.split(",");
const rows = lines.map((line) => new Map(line.split(",").map((text, i) => [columns[i] ?? "", Number(text)])));

describe("the table of learning, 80, 85 and 90 %", () => {
  test.each([80, 85, 90])(
    "%i per cent: unit factors, unit totals and Wright's totals for 1 to 100 units",
    (pct) => {
      expect(rows).toHaveLength(35);
      for (const row of rows) {
        const n = row.get("unit_n") ?? 0;
        // Four decimals are printed.
        expect(Math.abs(unitTheoryFactor(n, pct) - (row.get(`unit_${pct}`) ?? 0))).toBeLessThan(0.000051);
        expect(Math.abs(unitTheoryTotal(n, pct) - (row.get(`cum_total_${pct}`) ?? 0))).toBeLessThan(0.000051);
        expect(Math.abs(wrightTotal(n, pct) - (row.get(`wright_total_${pct}`) ?? 0))).toBeLessThan(0.000051);
      }
    },
  );
});

describe("published values", () => {
  test("exponents of 80, 85 and 90 %", () => {
    const b = [80, 85, 90].map((pct) => Number(learningExponent(pct).toFixed(5)));
    expect(b).toEqual([-0.32193, -0.23447, -0.152]);
  });

  test("cumulative average, 80 %, 100 h for the first (textbook page 330)", () => {
    const units = [1, 2, 4, 8, 16];
    expect(units.map((n) => Number((100 * wrightAverage(n, 80)).toFixed(2)))).toEqual([
      100, 80, 64, 51.2, 40.96,
    ]);
    expect(units.map((n) => Number(runHours(6000, n, 80).toFixed(2)))).toEqual([
      100, 160, 256, 409.6, 655.36,
    ]);
  });

  test("unit theory, 80 %: 50, 40, 32 minutes for units 1, 2, 4", () => {
    expect([1, 2, 4].map((n) => Number((50 * unitTheoryFactor(n, 80)).toFixed(6)))).toEqual([50, 40, 32]);
  });

  test("unit factors of the textbook table 7S.1", () => {
    expect(unitTheoryFactor(20, 90)).toBeCloseTo(0.634, 3);
    expect(unitTheoryFactor(10, 85)).toBeCloseTo(0.583, 3);
  });
});

describe("laws", () => {
  const pct = fc.double({ min: 60, max: 100, noNaN: true });
  const units = fc.integer({ min: 1, max: 200 });

  test("units add up to the run, and each takes no longer than the one before (seed 81)", () => {
    fc.assert(
      fc.property(pct, units, (p, n) => {
        let sum = 0;
        let last = Number.POSITIVE_INFINITY;
        for (let k = 1; k <= n; k++) {
          const minutes = unitMinutes(60, k, p);
          expect(minutes).toBeLessThanOrEqual(last + 1e-9);
          last = minutes;
          sum += minutes;
        }
        expect(sum / 60).toBeCloseTo(runHours(60, n, p), 6);
      }),
      { seed: 81, numRuns: 40 },
    );
  });

  test("twice as many take the average down to the rate, and 100 % is no learning (seed 82)", () => {
    fc.assert(
      fc.property(pct, units, (p, n) => {
        expect(wrightAverage(2 * n, p) / wrightAverage(n, p)).toBeCloseTo(p / 100, 9);
        expect(wrightUnit(n, 100)).toBeCloseTo(1, 9);
      }),
      { seed: 82, numRuns: 40 },
    );
  });

  test("says what it cannot be asked", () => {
    expect(() => learningExponent(0)).toThrow("learning is 0 %");
    expect(() => wrightUnit(0, 80)).toThrow("unit is");
    expect(() => unitTheoryTotal(1.5, 80)).toThrow("unit is 1.5");
    expect(runHours(60, 0, 80)).toBe(0);
  });
});
