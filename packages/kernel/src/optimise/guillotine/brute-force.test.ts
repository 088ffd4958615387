import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutFaults } from "./check.ts";
import { fewestSheets } from "./fewest.ts";
import { mostValue } from "./most-value.ts";
import type { CuttingProblem, CuttingRules } from "./problem.ts";
import { fewestByBruteForce, mostValueByBruteForce, type Single } from "./testing/brute-force.ts";

const NO_TRIM = { leftMm: 0, rightMm: 0, bottomMm: 0, topMm: 0 };

const length = (most: number) => fc.integer({ min: 1, max: most });
const single = fc.record({ width: length(6), height: length(6), mayTurn: fc.boolean() });
const rules = fc.record({
  kerfMm: fc.constantFrom(0, 1),
  stages: fc.constantFrom(1, 2, 3, null),
  firstCut: fc.constantFrom("rip" as const, "cross" as const, "either" as const),
  lastTrim: fc.boolean(),
});

const problemOf = (
  pieces: readonly Single[],
  widthMm: number,
  heightMm: number,
  saw: CuttingRules,
): CuttingProblem => ({
  pieces: pieces.map(({ width, height, mayTurn }) => ({
    widthMm: width,
    heightMm: height,
    count: 1,
    mayTurn,
  })),
  sheets: [{ widthMm, heightMm, trim: NO_TRIM, count: null, cost: 1 }],
  ...saw,
});

describe("against every cut tried", () => {
  it("sheets are as few as can be, and the bound lies below", () => {
    fc.assert(
      fc.property(
        fc.array(single, { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 4, max: 8 }),
        fc.integer({ min: 4, max: 8 }),
        rules,
        (pieces, width, height, saw) => {
          const least = fewestByBruteForce(pieces, width, height, saw);
          const found = fewestSheets(problemOf(pieces, width, height, saw), {
            steps: 20_000,
            settingSteps: 0,
          });
          if (!found.found) return least === Number.POSITIVE_INFINITY;
          return found.cost === least && found.lowerBound <= least;
        },
      ),
      { numRuns: 50, seed: 5 },
    );
  });

  it("the value is the most that can be, and proven", () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ width: length(6), height: length(6), mayTurn: fc.boolean(), value: fc.nat(20) }),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        fc.integer({ min: 3, max: 9 }),
        fc.integer({ min: 3, max: 9 }),
        fc.constantFrom(0, 1),
        (pieces, width, height, kerfMm) => {
          const saw: CuttingRules = { kerfMm, stages: null, firstCut: "either", lastTrim: true };
          const most = mostValueByBruteForce(pieces, width, height, saw);
          const { part, value, upperBound } = mostValue(
            {
              pieces: pieces.map((p) => ({
                widthMm: p.width,
                heightMm: p.height,
                count: 1,
                mayTurn: p.mayTurn,
                value: p.value,
              })),
              sheet: { widthMm: width, heightMm: height, trim: NO_TRIM },
              kerfMm,
            },
            { placeSteps: 2000, tableSteps: 1e6, joinSteps: 1e6 },
          );
          expect({ value, upperBound }).toEqual({ value: most, upperBound: most });
          const faults = cutFaults([{ sheet: 0, part }], problemOf(pieces, width, height, saw));
          expect(faults.filter((fault) => !(fault.kind === "count" && fault.cut < fault.wanted))).toEqual([]);
        },
      ),
      { numRuns: 40, seed: 6 },
    );
  });
});
