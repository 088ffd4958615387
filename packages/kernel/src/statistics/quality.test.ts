import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { seededRandom } from "../random.ts";
import {
  type ControlRule,
  capability,
  controlSignals,
  individualsChart,
  movingRangeDegrees,
  normality,
  proportion,
  summaryOf,
} from "./index.ts";

/** Normal readings: G. E. P. Box, M. E. Muller, Annals of Mathematical Statistics 29, 1958. */
function normals(seed: number): () => number {
  const random = seededRandom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

describe("shares with their intervals", () => {
  // R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17, 1998, table I,
  // method 3 (from memory); to all digits from SciPy 1.17.1, `binomtest(x, n).proportion_ci(method="wilson")`.
  test.each([
    [81, 263, 0.2552885198782742, 0.36620957698280004],
    [15, 148, 0.06238639953073629, 0.16048724172330803],
    [0, 20, 0, 0.16112515805281935],
    [1, 29, 0.006113214292762667, 0.17175521879320282],
    [25, 25, 0.8668077490609516, 1],
    [23, 25, 0.750338910496047, 0.9777795987151525],
  ])("%i of %i", (x, n, low, high) => {
    const found = proportion(x, n);
    expect(found.value).toBe(x / n);
    expect(found.low).toBeCloseTo(low, 10);
    expect(found.high).toBeCloseTo(high, 10);
  });

  test("hold their share, mirror it, and narrow with more (seed 6)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 500 }), (n, raw) => {
        const x = Math.min(raw, n);
        const [one, other, more] = [proportion(x, n), proportion(n - x, n), proportion(4 * x, 4 * n)];
        expect(one.low).toBeLessThanOrEqual(one.value);
        expect(one.high).toBeGreaterThanOrEqual(one.value);
        expect(other.low).toBeCloseTo(1 - one.high, 12);
        expect(more.high - more.low).toBeLessThan(one.high - one.low);
      }),
      { seed: 6, numRuns: 60 },
    );
    expect(() => proportion(3, 2)).toThrow(RangeError);
    expect(() => proportion(0, 0)).toThrow(RangeError);
  });
});

describe("normality", () => {
  const column = (name: string): number[] =>
    readFileSync(join(import.meta.dirname, "fixtures", `${name}.csv`), "utf8")
      .trim()
      .split(/\r?\n/)
      .slice(1)
      .map(Number);
  // SciPy 1.17.1, `scipy.stats.anderson(values).statistic`, before the adjustment for the number of readings.
  test.each([
    ["michelso", 0.46076385565194755],
    ["mavro", 1.6684654846545612],
    ["lottery", 2.5737264714508115],
  ])("of %s is as SciPy has it", (name, expected) => {
    const values = column(name);
    const n = values.length;
    expect(normality(values).statistic / (1 + 0.75 / n + 2.25 / (n * n))).toBeCloseTo(expected, 9);
  });

  test("is doubted for normal readings about as often as it says (seed 5)", () => {
    const normal = normals(5);
    let doubted = 0;
    const tries = 3000;
    for (let i = 0; i < tries; i++)
      if (normality(Array.from({ length: 25 }, normal)).chance < 0.05) doubted++;
    expect(Math.abs(doubted / tries - 0.05)).toBeLessThan(0.012);
    // Stephens' point of 5 % is at 0.752.
    const even = Array.from({ length: 60 }, (_, i) => i);
    expect(normality([...even, 400]).chance).toBeLessThan(0.001);
    expect(() => normality([1, 2, 3])).toThrow(RangeError);
    expect(() => normality(Array(10).fill(1))).toThrow(RangeError);
  });
});

describe("rules of control charts", () => {
  // C. W. Champ, W. H. Woodall, "Exact results for Shewhart control charts with supplementary runs rules", Technometrics 29,
  // 1987, table 1: mean number of points to the first signal while nothing has changed (from memory).
  test.each<[readonly ControlRule[], number]>([
    [["beyond"], 370.4],
    [["beyond", "two-of-three"], 225.44],
    [["beyond", "four-of-five"], 166.05],
    [["beyond", "two-of-three", "four-of-five"], 132.89],
  ])("%s: a false alarm after so many points (seed 11)", (rules, expected) => {
    const normal = normals(11);
    const runs = 500;
    let points = 0;
    for (let i = 0; i < runs; i++) {
      const z: number[] = [];
      for (;;) {
        for (let k = 0; k < 40; k++) z.push(normal());
        // Only the last points can hold a new signal; the longest rule here looks back over four.
        const from = Math.max(0, z.length - 44);
        const first = controlSignals(z.slice(from), rules).find(({ at }) => from === 0 || at >= 4);
        if (first === undefined) continue;
        points += from + first.at + 1;
        break;
      }
    }
    expect(Math.abs(points / runs / expected - 1)).toBeLessThan(0.1);
  });
});

describe("capability within", () => {
  test("its interval from moving ranges holds the true one about as often as it says (seed 9)", () => {
    const normal = normals(9);
    const tries = 1500;
    let [cps, cpks] = [0, 0];
    for (let i = 0; i < tries; i++) {
      const values = Array.from({ length: 30 }, normal);
      const { deviation } = individualsChart(values);
      const { mean, count } = summaryOf(values);
      const { cp, cpk } = capability(
        { count, mean, deviation, degrees: movingRangeDegrees(count) },
        { lower: -4, upper: 5 },
      );
      if (cp !== null && cp.low <= 1.5 && 1.5 <= cp.high) cps++;
      if (cpk.low <= 4 / 3 && 4 / 3 <= cpk.high) cpks++;
    }
    expect(Math.abs(cps / tries - 0.95)).toBeLessThan(0.02);
    expect(Math.abs(cpks / tries - 0.95)).toBeLessThan(0.025);
  });
});
