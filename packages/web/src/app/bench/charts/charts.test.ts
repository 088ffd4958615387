import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { histogram, readingScale } from "./scale.ts";
import { thinned } from "./thin.ts";

describe("a chart of many points", () => {
  it("draws ends, extremes and whatever must be seen, and all where there is room (seed 14)", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -99, max: 99 }), { minLength: 1, maxLength: 400 }),
        fc.integer({ min: 1, max: 30 }),
        fc.nat(399),
        (points, columns, asked) => {
          const must = asked % points.length;
          const drawn = thinned(points, columns, [must]);
          const values = drawn.map((i) => points[i] ?? 0);
          expect(drawn).toContain(must);
          expect(drawn[0]).toBe(0);
          expect(drawn.at(-1)).toBe(points.length - 1);
          expect(Math.max(...values)).toBe(Math.max(...points));
          expect(Math.min(...values)).toBe(Math.min(...points));
          expect(drawn.length).toBeLessThanOrEqual(Math.max(2 * columns + 3, points.length));
          if (points.length <= 2 * columns) expect(drawn).toHaveLength(points.length);
        },
      ),
      { seed: 14, numRuns: 60 },
    );
  });

  it("has an axis round its readings, also where they are all the same", () => {
    const scale = readingScale([4.96, 5.04], 0, 100, 5);
    expect(scale.ticks.map(({ value }) => value)).toEqual([4.96, 4.98, 5, 5.02, 5.04]);
    expect([scale.at(4.96), scale.at(5.04)].map(Math.round)).toEqual([0, 100]);
    expect(readingScale([5, 5], 0, 100).ticks.length).toBeGreaterThan(2);
  });
});

describe("a histogram", () => {
  it("has every reading in one bin of one width (seed 15)", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -5000, max: 5000 }), { minLength: 1, maxLength: 300 }),
        (whole) => {
          const values = whole.map((value) => value / 8);
          const bins = histogram(values);
          expect(bins.reduce((sum, { count }) => sum + count, 0)).toBe(values.length);
          for (const { from, to, count } of bins.slice(0, -1))
            expect(values.filter((value) => value >= from && value < to)).toHaveLength(count);
        },
      ),
      { seed: 15, numRuns: 60 },
    );
    expect(histogram([])).toEqual([]);
    expect(histogram([2, 2])).toEqual([{ from: 2, to: 2, count: 2 }]);
  });
});
