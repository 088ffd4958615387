import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundTo, roundUpTo, toMicrometres } from "./quantise.ts";

describe("roundUpTo", () => {
  it("keeps a value that only noise lifts above a step", () => {
    expect(roundUpTo(0.1 + 0.2, 0.3)).toBe(0.3);
    expect(roundUpTo(3 * 33.35 - 0.05, 5)).toBe(100);
    expect(roundUpTo(100.0004, 5)).toBe(100);
  });

  it("goes up from one micrometre above a step", () => {
    expect(roundUpTo(100.001, 5)).toBe(105);
    expect(roundUpTo(0.001, 5)).toBe(5);
    expect(roundUpTo(-4, 5)).toBe(0);
    expect(Object.is(roundUpTo(-4, 5), 0)).toBe(true);
  });

  it("is the least multiple not below the value (seed 2)", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5e6, max: 5e6 }), fc.integer({ min: 1, max: 50_000 }), (um, stepUm) => {
        const up = toMicrometres(roundUpTo(um / 1000, stepUm / 1000));
        expect(up % stepUm === 0).toBe(true);
        expect(up >= um && up - um < stepUm).toBe(true);
      }),
      { seed: 2, numRuns: 3000 },
    );
  });
});

describe("roundTo", () => {
  it("rounds to the nearest multiple, a half up", () => {
    expect(roundTo(12.5, 5)).toBe(15);
    expect(roundTo(12.4999, 5)).toBe(10);
    expect(roundTo(1.005, 0.01)).toBe(1.01);
    expect(roundTo(0.3000000000004, 0.1)).toBe(0.3);
    expect(Object.is(roundTo(-0.2, 1), 0)).toBe(true);
  });

  it("refuses a step of zero and a value that is not a number", () => {
    expect(() => roundTo(1, 0)).toThrow("step is 0");
    expect(() => roundUpTo(Number.NaN, 1)).toThrow("value is NaN");
  });

  it("is at most half a step away (seed 3)", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5e6, max: 5e6 }), fc.integer({ min: 1, max: 50_000 }), (um, stepUm) => {
        const near = toMicrometres(roundTo(um / 1000, stepUm / 1000));
        expect(near % stepUm === 0).toBe(true);
        expect(Math.abs(near - um) * 2).toBeLessThanOrEqual(stepUm);
      }),
      { seed: 3, numRuns: 3000 },
    );
  });
});
