import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { e24AtLeast, ledA, multiplexedA, seriesResistor } from "./lamp.ts";

describe("a lamp", () => {
  it("has its resistor from the E24 series, and the current and heat that follow", () => {
    // (12 − 6.3) V ÷ 30 mA = 190 Ω; the next value of the series is 200 Ω.
    expect(seriesResistor(12, 6.3, 0.03)?.ohm).toBe(200);
    expect(seriesResistor(12, 6.3, 0.03)?.amps).toBeCloseTo(0.0285, 9);
    expect(seriesResistor(12, 6.3, 0.03)?.watts).toBeCloseTo(0.16245, 9);
    expect(seriesResistor(5, 6.3, 0.03)).toBeNull();
    expect(ledA(5, 6.3, 100)).toBe(0);
    expect(ledA(12, 2, 0)).toBe(0);
  });

  it("needs n times its mean current in a multiplex of n lines", () => {
    expect(multiplexedA(0.02, 1 / 8)).toBeCloseTo(0.16, 9);
  });

  it("takes the next value of 24 a decade, never more than 11 % above", () => {
    const decade = new Set(Array.from({ length: 90 }, (_, i) => e24AtLeast(10 + i)));
    expect([...decade].filter((value) => value < 100)).toHaveLength(24);
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 1e6, noNaN: true }), (ohm) => {
        const value = e24AtLeast(ohm);
        expect(value).toBeGreaterThanOrEqual(ohm * (1 - 1e-8));
        // The widest step of the series is from 1.3 to 1.5.
        expect(value / ohm).toBeLessThan(1.16);
        expect(e24AtLeast(value)).toBe(value);
      }),
      { seed: 8, numRuns: 300 },
    );
  });
});
