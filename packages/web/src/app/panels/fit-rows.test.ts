import { describe, expect, it } from "vitest";
import { axisOf, type Fit, spreadOf, verdictOf } from "./fit-rows.ts";

const fit = (
  worst: readonly [number, number],
  rss: readonly [number, number],
  asked: readonly [number | null, number | null],
): Fit => ({
  fitId: "gap",
  labels: { en: "Gap", zh: "" },
  reason: "",
  terms: [],
  nominalMm: (worst[0] + worst[1]) / 2,
  worstMinMm: worst[0],
  worstMaxMm: worst[1],
  rssMinMm: rss[0],
  rssMaxMm: rss[1],
  minMm: asked[0],
  maxMm: asked[1],
});

describe("a fit", () => {
  it("is good at worst, likely, or bad", () => {
    expect(verdictOf(fit([1, 3], [1.5, 2.5], [1, 3]))).toBe("good");
    expect(verdictOf(fit([0.9, 3], [1.5, 2.5], [1, 3]))).toBe("likely");
    expect(verdictOf(fit([0, 4], [0.9, 3.1], [1, 3]))).toBe("bad");
    expect(verdictOf(fit([0, 4], [1, 3], [null, 3]))).toBe("likely");
    expect(verdictOf(fit([0, 4], [1, 3], [null, null]))).toBe("open");
  });

  it("spreads by both tolerances of a term, as often as it counts", () => {
    const term = {
      term: "a",
      panelId: null,
      panel: null,
      dimension: "other",
      valueMm: 1,
      minusMm: 0.2,
      plusMm: 0.3,
    } as const;
    expect(spreadOf({ ...term, times: -2 })).toBeCloseTo(1);
  });

  it("has an axis that holds its limits and its worst case", () => {
    const { from, to } = axisOf(fit([1, 2], [1.2, 1.8], [0, null]));
    expect(from).toBeLessThan(0);
    expect(to).toBeGreaterThan(2);
  });
});
