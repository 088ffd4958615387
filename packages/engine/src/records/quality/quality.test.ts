import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { controlStudy, defectsPerUnit, pareto, rolledYield, type StudyReading } from "./index.ts";

const NO_LIMIT = { lower: null, upper: null };

const readings = (values: readonly (number | null)[], more: Partial<StudyReading> = {}): StudyReading[] =>
  values.map((value, i) => ({
    ...{ no: i + 1, unit: `b-${i}`, value, instrument: "meter-1" },
    at: new Date(Date.UTC(2027, 0, 4, 8, i)).toISOString(),
    ...more,
  }));

// NIST/SEMATECH e-Handbook, 6.3.2.2: flow rates of ten batches.
const FLOW = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

describe("a study of a measurement", () => {
  test("has the limits of the handbook's example, and says that ten are few", () => {
    const study = controlStudy(readings(FLOW), { lower: 40, upper: 60 });
    expect(study?.values.limits.centre).toBeCloseTo(50.81, 10);
    expect(study?.values.limits.upper).toBeCloseTo(55.8041, 2);
    expect(study?.spreads.points).toHaveLength(9);
    expect(study?.doubts).toEqual(["few"]);
    // (60 − 50.81) / (3 · 1.8778 / 1.128)
    expect(study?.within?.cpk.value).toBeCloseTo(1.84, 2);
    expect(study?.overall?.cpk.value).not.toBe(study?.within?.cpk.value);
  });

  test("takes the first reading of each unit, with a value, by an instrument that is in calibration", () => {
    const again = readings([99], { unit: "b-3", no: 50 });
    const blank = readings([null], { unit: "b-90" });
    const [late] = readings([99], { unit: "b-91", instrument: "meter-2" });
    if (late === undefined) throw new RangeError("one reading");
    const sameDay = { ...late, unit: "b-92", value: 50, at: "2027-01-03T23:00:00.000Z" };
    const study = controlStudy(
      [...readings(FLOW), ...again, ...blank, late, sameDay],
      NO_LIMIT,
      new Map([["meter-2", "2027-01-03"]]),
    );
    expect(study?.leftOut).toEqual({ withoutValue: 1, outOfCalibration: 1, again: 1 });
    expect(study?.readings.map(({ value }) => value)).toEqual([...FLOW, 50]);
    expect([study?.within, study?.overall]).toEqual([null, null]);
  });

  test("marks which rule is broken and where, and only limits on ranges", () => {
    const steady = Array.from({ length: 40 }, (_, i) => (i % 3) - 1);
    const study = controlStudy(readings([...steady, 20]), NO_LIMIT);
    expect(study?.values.signals.filter(({ rule }) => rule === "beyond")).toEqual([
      { rule: "beyond", at: 40 },
    ]);
    expect(study?.spreads.signals).toEqual([{ rule: "beyond", at: 39 }]);
    expect(study?.doubts).toEqual(["out-of-control", "not-normal", "coarse"]);
  });

  test("of samples has means and ranges, and leaves an incomplete one out", () => {
    // Samples of 5, grand mean 10, mean range 0.5: 9.7115 to 10.2885 (table A.22, S52).
    const sample = [9.75, 10.25, 10, 10, 10];
    const study = controlStudy(readings([...sample, ...sample, ...sample, 10]), NO_LIMIT, new Map(), 5);
    expect(study?.values.points).toEqual([10, 10, 10]);
    expect(study?.values.limits.lower).toBeCloseTo(9.7115, 3);
    expect(study?.spreads.limits.upper).toBeCloseTo(1.057, 3);
    expect(controlStudy(readings(sample), NO_LIMIT, new Map(), 5)).toBeNull();
    expect(controlStudy([], NO_LIMIT)).toBeNull();
  });

  test("does not change with the unit of measure (seed 12)", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 30, maxLength: 60 }),
        fc.integer({ min: 1, max: 4 }),
        (values, power) => {
          const scale = 2 ** power;
          const one = controlStudy(readings(values), { lower: -600, upper: 700 });
          const other = controlStudy(readings(values.map((value) => value * scale)), {
            lower: -600 * scale,
            upper: 700 * scale,
          });
          expect(other?.values.signals).toEqual(one?.values.signals);
          expect(other?.doubts).toEqual(one?.doubts);
          expect(other?.overall?.cpk.value ?? 0).toBeCloseTo(one?.overall?.cpk.value ?? 0, 9);
        },
      ),
      { seed: 12, numRuns: 40 },
    );
  });
});

describe("yields", () => {
  test("of stages multiply, and defects at random leave e to the minus of their mean", () => {
    // Handbook example (S51b in the sheet of figures): 0.171 defects a unit leave 84.3 % without one.
    const { perUnit, expectedShare } = defectsPerUnit(171, 1000);
    expect(perUnit).toBeCloseTo(0.171, 12);
    expect(expectedShare).toBeCloseTo(0.843, 3);
    expect(rolledYield([0.9, 0.8, 0.5])).toBeCloseTo(0.36, 12);
    expect(() => defectsPerUnit(1, 0)).toThrow(RangeError);
  });
});

describe("a Pareto", () => {
  const things = [
    { key: "dry-joint", minutes: 3 },
    { key: "wrong-part", minutes: 40 },
    { key: "dry-joint", minutes: 0 },
    { key: "bridge", minutes: 0 },
  ];

  test("has the most first, up to everything", () => {
    expect(pareto(things)).toEqual([
      { key: "dry-joint", count: 2, minutes: 3, cumulativeShare: 0.5 },
      { key: "bridge", count: 1, minutes: 0, cumulativeShare: 0.75 },
      { key: "wrong-part", count: 1, minutes: 40, cumulativeShare: 1 },
    ]);
    expect(pareto(things, "minutes").map(({ key }) => key)).toEqual(["wrong-part", "dry-joint", "bridge"]);
    expect(pareto([])).toEqual([]);
  });

  test("keeps every one of them, whatever their order (seed 13)", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ key: fc.constantFrom("a", "b", "c"), minutes: fc.nat(9) })),
        (list) => {
          const bars = pareto(list);
          expect(bars.reduce((sum, { count }) => sum + count, 0)).toBe(list.length);
          expect(bars.at(-1)?.cumulativeShare ?? 1).toBeCloseTo(1, 12);
          expect(pareto([...list].reverse())).toEqual(bars);
          expect(bars).toEqual([...bars].sort((a, b) => b.count - a.count));
        },
      ),
      { seed: 13, numRuns: 50 },
    );
  });
});
