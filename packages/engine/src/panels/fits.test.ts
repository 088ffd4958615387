import { seededRandom } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FitTermValue } from "../model/index.ts";
import { stackOf } from "./fits.ts";

const term = (over: Partial<FitTermValue>, i = 0): FitTermValue => ({
  term: String.fromCharCode(97 + i),
  panelId: null,
  dimension: "other",
  times: 1,
  valueMm: 0,
  minusMm: 0,
  plusMm: 0,
  ...over,
});

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const terms = fc
  .array(
    fc.record({
      times: fc.constantFrom(1, -1, 2, -2),
      valueMm: tenths(0, 600),
      minusMm: tenths(0, 2),
      plusMm: tenths(0, 2),
    }),
    { minLength: 1, maxLength: 7 },
  )
  .map((list) => list.map(term));

describe("stackOf", () => {
  it("is at worst what every combination of ends gives (seed 1)", () => {
    fc.assert(
      fc.property(terms, (list) => {
        let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
        for (let ends = 0; ends < 2 ** list.length; ends++) {
          const sum = list.reduce(
            (total, { times, valueMm, minusMm, plusMm }, i) =>
              total + times * ((ends >> i) & 1 ? valueMm + plusMm : valueMm - minusMm),
            0,
          );
          least = Math.min(least, sum);
          most = Math.max(most, sum);
        }
        const stack = stackOf(list);
        expect(stack.worstMinMm).toBeCloseTo(least, 2);
        expect(stack.worstMaxMm).toBeCloseTo(most, 2);
      }),
      { seed: 1, numRuns: 60 },
    );
  });

  // Root sum of squares supposes normal sizes whose tolerance is three standard deviations; then 99.73 % of the sums lie
  // within. 40 000 boxes are built here from such sizes: the share within must be that, ±4 standard errors (0.0010).
  it("holds 99.73 % of boxes of normal sizes", () => {
    const list = [
      term({ valueMm: 700, minusMm: 0.5, plusMm: 0.5 }),
      term({ times: -1, valueMm: 17.6, minusMm: 0.2, plusMm: 0.2 }, 1),
      term({ times: -1, valueMm: 17.6, minusMm: 0.2, plusMm: 0.2 }, 2),
      term({ times: 2, valueMm: 9, minusMm: 0.1, plusMm: 0.3 }, 3),
      term({ times: -1, valueMm: 680.8, minusMm: 0.5, plusMm: 0.5 }, 4),
    ];
    const random = seededRandom(7);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const { rssMinMm, rssMaxMm } = stackOf(list);
    const boxes = 40_000;
    let within = 0;
    for (let i = 0; i < boxes; i++) {
      const sum = list.reduce((total, { times, valueMm, minusMm, plusMm }) => {
        const middle = valueMm + (plusMm - minusMm) / 2;
        return total + times * (middle + (normal() * (minusMm + plusMm)) / 6);
      }, 0);
      if (sum >= rssMinMm && sum <= rssMaxMm) within++;
    }
    expect(Math.abs(within / boxes - 0.9973)).toBeLessThan(0.001);
  });

  it("is never wider by squares than at worst, and as wide for one term (seed 2)", () => {
    fc.assert(
      fc.property(terms, (list) => {
        const stack = stackOf(list);
        expect(stack.rssMinMm).toBeGreaterThanOrEqual(stack.worstMinMm - 0.011);
        expect(stack.rssMaxMm).toBeLessThanOrEqual(stack.worstMaxMm + 0.011);
        const [one] = list;
        if (one === undefined) return;
        const alone = stackOf([one]);
        expect(alone.rssMaxMm).toBeCloseTo(alone.worstMaxMm, 2);
      }),
      { seed: 2, numRuns: 60 },
    );
  });

  it("adds both uses of one size of a panel before it squares: they vary together", () => {
    const side = { panelId: "side", dimension: "thickness", valueMm: 18, minusMm: 0.2, plusMm: 0.2 } as const;
    const twice = stackOf([term(side), term(side, 1)]);
    expect([twice.rssMinMm, twice.rssMaxMm]).toEqual([35.6, 36.4]);
    const away = stackOf([term(side), term({ ...side, times: -1 }, 1)]);
    expect([away.worstMinMm, away.worstMaxMm]).toEqual([0, 0]);
  });
});
