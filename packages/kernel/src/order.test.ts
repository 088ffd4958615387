import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareText } from "./order.ts";

/** The definition: lists of code points, compared one by one. */
const byCodePoints = (a: string, b: string): number => {
  const x = [...a].map((c) => c.codePointAt(0) ?? 0);
  const y = [...b].map((c) => c.codePointAt(0) ?? 0);
  for (let i = 0; i < Math.min(x.length, y.length); i++) {
    const d = (x[i] ?? 0) - (y[i] ?? 0);
    if (d !== 0) return Math.sign(d);
  }
  return Math.sign(x.length - y.length);
};

describe("compareText", () => {
  it("sorts upper case before lower case and a prefix first", () => {
    expect(["b", "a10", "a", "B", "a2", ""].sort(compareText)).toEqual(["", "B", "a", "a10", "a2", "b"]);
  });

  it("puts U+1F600 after U+FF5E, unlike a comparison of UTF-16 units", () => {
    expect(compareText("\u{1f600}", "～")).toBeGreaterThan(0);
    expect("\u{1f600}" < "～").toBe(true);
  });

  it("is the order of the code points (seed 1)", () => {
    const text = fc.string({ unit: "binary" });
    fc.assert(
      fc.property(text, text, (a, b) => {
        expect(Math.sign(compareText(a, b))).toBe(byCodePoints(a, b));
      }),
      { seed: 1, numRuns: 2000 },
    );
  });
});
