import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fuseGates, leastMeltingA2s, opensWithinS, resettableOpensS } from "./fuse-curve.ts";
import { fuseAmbientShare, neededMeltingA2s, pulseA2s, pulseShare, steadyRatingA } from "./fuse-load.ts";
import { FUSE_RATINGS_A, ratingAtLeast } from "./fuse-series.ts";
import { openingOf, type ShortSource, shortCurrent } from "./short-circuit.ts";
import { expectChecked } from "./testing/check-value.ts";
import { csvRows } from "./testing/csv-rows.ts";

describe("rating of a fuse", () => {
  it("agrees with worked selections", () => {
    expectChecked("W3.1", steadyRatingA(1.5, 0.75, 1));
    expectChecked("W3.2", steadyRatingA(1.5, 0.7, 0.95));
    expectChecked("W3.3", 60 / 0.35);
    expectChecked("W3.4", pulseA2s("rectangle", 8, 0.04));
    expectChecked("W3.5", neededMeltingA2s(pulseA2s("rectangle", 8, 0.04), 100000));
    expectChecked("W3.6", neededMeltingA2s(pulseA2s("rectangle", 8, 0.04), 100));
    expectChecked("W3.7", pulseA2s("half-sine", 10, 0.01));
  });

  it("has the published shares of 100 to 100 000 pulses and falls in between and beyond", () => {
    expect([100, 1000, 10000, 100000].map((n) => Number(pulseShare(n).toFixed(9)))).toEqual([
      0.48, 0.38, 0.29, 0.22,
    ]);
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (d, more) => {
          expect(pulseShare(10 ** (d + more))).toBeLessThanOrEqual(pulseShare(10 ** d) + 1e-12);
          expect(pulseShare(10 ** (d + more))).toBeGreaterThan(0);
        },
      ),
      { seed: 4, numRuns: 200 },
    );
  });

  it("has I²t of shapes that equal numeric integration", () => {
    const integral = (i: (x: number) => number, to: number): number => {
      const n = 20000;
      let sum = 0;
      for (let k = 0; k < n; k++) sum += i(((k + 0.5) * to) / n) ** 2 * (to / n);
      return sum;
    };
    expect(pulseA2s("half-sine", 3, 1)).toBeCloseTo(
      integral((x) => 3 * Math.sin(Math.PI * x), 1),
      6,
    );
    expect(pulseA2s("triangle", 3, 1)).toBeCloseTo(
      integral((x) => 3 * x, 1),
      6,
    );
    expect(pulseA2s("parabola", 3, 1)).toBeCloseTo(
      integral((x) => 3 * x * x, 1),
      6,
    );
    expect(pulseA2s("decay", 3, 1)).toBeCloseTo(
      integral((x) => 3 * Math.exp(-x), 40),
      4,
    );
  });

  it("lies in the catalogue's range at 60 °C (from memory) and is whole at 25 °C", () => {
    expect(fuseAmbientShare("t", 60)).toBeGreaterThan(0.8);
    expect(fuseAmbientShare("t", 60)).toBeLessThan(0.85);
    expect(fuseAmbientShare("f", 60)).toBeGreaterThan(0.929);
    expect(fuseAmbientShare("t", 25)).toBe(1);
  });

  it("comes from the preferred series", () => {
    // IEC 60127-2 standard ratings from 32 mA to 10 A, from memory.
    const listed = [
      0.032, 0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6,
      2, 2.5, 3.15, 4, 5, 6.3, 8, 10,
    ];
    expect(FUSE_RATINGS_A.filter((rating) => rating >= 0.032 && rating <= 10)).toEqual(
      // 31.5 mA of the series is called 32 mA.
      listed.filter((rating) => rating !== 0.032),
    );
    expect(ratingAtLeast(2.1)).toBe(2.5);
    expect(ratingAtLeast(4)).toBe(4);
    expect(ratingAtLeast(81)).toBeNull();
  });
});

const SHEETS = [
  ["sheet 5", "1-3.15 A", "t", 2, 1500],
  ["sheet 5", "4-6.3 A", "t", 5, 1500],
  ["sheet 1", "50 mA-4 A", "f", 2, 1500],
  ["sheet 2", "32-100 mA", "f", 0.1, 35],
  ["sheet 2", "125 mA-6.3 A", "f", 2, 35],
  ["sheet 3", "32-100 mA", "t", 0.1, 35],
  ["sheet 3", "125 mA-6.3 A", "t", 2, 35],
] as const;

describe("opening of a fuse", () => {
  it.each(SHEETS)("keeps the gates of %s, %s", (sheet, range, speed, ratedA, breakingA) => {
    const gates = fuseGates(speed, ratedA, breakingA);
    const rows = csvRows("fuse-gates.csv").filter(
      (row) => row.sheet_or_class === sheet && row.rating_range === range,
    );
    expect(rows).toHaveLength(5);
    for (const { multiple_of_In, min_time_s, max_time_s } of rows) {
      const gate = gates.find(({ multiple }) => multiple === Number(multiple_of_In));
      expect(gate?.leastS ?? "").toBe(min_time_s === "" ? "" : Number(min_time_s));
      expect(gate?.mostS ?? "").toBe(max_time_s === "" ? "" : Number(max_time_s));
      if (max_time_s !== "")
        expect(opensWithinS(gates, Number(multiple_of_In))).toBeCloseTo(Number(max_time_s), 9);
    }
    expect(opensWithinS(gates, 2)).toBe(Number.POSITIVE_INFINITY);
  });

  it("takes less time at a higher current", () => {
    const t = fuseGates("t", 4, 40);
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (m, k) => {
          expect(opensWithinS(t, m * k)).toBeLessThanOrEqual(opensWithinS(t, m));
          expect(resettableOpensS(m * k)).toBeLessThanOrEqual(resettableOpensS(m));
        },
      ),
      { seed: 5, numRuns: 300 },
    );
    expect(leastMeltingA2s(t, 4)).toBeCloseTo(32, 9);
  });
});

const source = (change: Partial<ShortSource>): ShortSource => ({
  volts: 48,
  loopOhm: 0.2,
  limitMode: "none",
  limitA: null,
  shortA: null,
  burstS: null,
  storedJ: null,
  ...change,
});

describe("a short circuit", () => {
  const gates = fuseGates("t", 6.3, 63);
  const opens = (amps: number): number => opensWithinS(gates, amps / 6.3);

  it("opens a fuse at once without a limit", () => {
    const opening = openingOf(shortCurrent(source({})), opens, 300);
    expect(opening.breaksA).toBe(240);
    expect(opening.opensS).toBeCloseTo(0.3 * (63 / 240) ** 2, 9);
    expect(opening.letThroughA2s).toBeCloseTo(0.3 * 63 ** 2, 6);
  });

  it("never opens a fuse that its supply cannot", () => {
    for (const mode of ["constant", "hiccup", "latch", "fold-back"] as const) {
      const limited = source({ limitMode: mode, limitA: 12, shortA: 3, burstS: 0.1, storedJ: 7 });
      const opening = openingOf(shortCurrent(limited), opens, 300);
      expect(opening.opensS, mode).toBe(Number.POSITIVE_INFINITY);
      expect(opening.breaksA).toBe(0);
    }
    const constant = source({ limitMode: "constant", limitA: 15 });
    expect(openingOf(shortCurrent(constant), opens, 300).opensS).toBeLessThan(120);
  });

  it("turns the stored energy to heat in the loop", () => {
    const limited = source({ limitMode: "hiccup", limitA: 15, burstS: 0.01, storedJ: 7.6 });
    const current = shortCurrent(limited);
    // ∫i²dt of a capacitor of E = CV²/2 that discharges through R: V²/R² × RC/2 = E/R.
    const farad = (2 * 7.6) / 48 ** 2;
    expect(current.storedA2s).toBeCloseTo(pulseA2s("decay", 48 / 0.2, 0.2 * farad), 9);
    expect(openingOf(current, opens, 300).letThroughA2s).toBeCloseTo(current.storedA2s + 15 ** 2 * 0.01, 9);
  });
});
