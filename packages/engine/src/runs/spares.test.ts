import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { spareCount, sparesBinomial } from "./spares.ts";

/** Least spares at service levels of 90, 95 and 99 %, by failures expected: derived from Poisson's law elsewhere. */
const TABLE: readonly (readonly [expected: number, s90: number, s95: number, s99: number])[] = [
  [0.1, 0, 1, 1],
  [0.25, 1, 1, 2],
  [0.5, 1, 2, 3],
  [0.75, 2, 2, 3],
  [1, 2, 3, 4],
  [1.5, 3, 4, 5],
  [2, 4, 5, 6],
  [2.5, 5, 5, 7],
  [3, 5, 6, 8],
  [4, 7, 8, 9],
  [5, 8, 9, 11],
  [6, 9, 10, 12],
  [8, 12, 13, 15],
  [10, 14, 15, 18],
  [15, 20, 22, 25],
  [20, 26, 28, 31],
];

describe("spares by Poisson's law", () => {
  it.each(TABLE)("%d failures expected: %d, %d, %d", (expected, s90, s95, s99) => {
    expect([0.9, 0.95, 0.99].map((level) => spareCount(expected, level))).toEqual([s90, s95, s99]);
  });

  it.each([
    // 45 units, 90 days, mean time between failures 100 000, 200 000 and 300 000 h: published as 3, 2 and 2 by the
    // normal rule, which rounds up; Poisson gives 3, 2 and 1 (data of a published example of spares provisioning).
    { hours: 100_000, spares: 3 },
    { hours: 200_000, spares: 2 },
    { hours: 300_000, spares: 1 },
  ])("45 units, 2160 h, $hours h between failures: $spares", ({ hours, spares }) => {
    expect(spareCount((45 * 2160) / hours, 0.95)).toBe(spares);
  });

  it("is the least that reaches the confidence, however many are expected", () => {
    const below = (expected: number, s: number): number => {
      let log = -expected;
      let sum = s < 0 ? 0 : Math.exp(log);
      for (let k = 1; k <= s; k++) {
        log += Math.log(expected / k);
        sum += Math.exp(log);
      }
      return sum;
    };
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 3000, noNaN: true }),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (expected, confidence) => {
          const s = spareCount(expected, confidence);
          expect(below(expected, s)).toBeGreaterThanOrEqual(confidence - 1e-9);
          expect(below(expected, s - 1)).toBeLessThan(confidence + 1e-9);
        },
      ),
      { seed: 29, numRuns: 60 },
    );
  });
});

describe("spares by the binomial law", () => {
  it("takes 7 for 200 coils of which 2 % fail, where Poisson's law takes 8", () => {
    // P(X ≤ 7) = 0.95066 by the binomial law, 0.94887 by Poisson's.
    expect(sparesBinomial(200, 0.02, 0.95)).toBe(7);
    expect(spareCount(4, 0.95)).toBe(8);
  });

  it("takes none where nothing fails, and all where everything does", () => {
    expect([sparesBinomial(9, 0, 0.99), sparesBinomial(0, 0.5, 0.99), sparesBinomial(9, 1, 0.5)]).toEqual([
      0, 0, 9,
    ]);
    expect(spareCount(0, 0.99)).toBe(0);
  });
});

it.each([
  () => spareCount(-1, 0.9),
  () => spareCount(Number.NaN, 0.9),
  () => spareCount(1, 1),
  () => sparesBinomial(1.5, 0.1, 0.9),
  () => sparesBinomial(10, 1.1, 0.9),
  () => sparesBinomial(10, 0.1, -0.1),
])("refuses what is no number of failures, share or confidence", (ask) => {
  expect(ask).toThrow(RangeError);
});
