import { type BalanceProblem, balanceFaults, leastTakt } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { smoothPlan } from "./smooth.ts";

const line: fc.Arbitrary<BalanceProblem> = fc.integer({ min: 1, max: 14 }).chain((n) =>
  fc.record({
    times: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: n, maxLength: n }),
    before: fc
      .array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: n })
      .map((pairs) => pairs.flatMap(([i, j]) => (i < j ? [[i, j] as const] : []))),
    allowed: fc.array(fc.option(fc.uniqueArray(fc.nat(3), { minLength: 1 }), { freq: 1 }), {
      minLength: n,
      maxLength: n,
    }),
  }),
);
const longest = ({ times }: BalanceProblem, plan: readonly (readonly number[])[]): number =>
  Math.max(...plan.map((tasks) => tasks.reduce((sum, task) => sum + (times[task] ?? 0), 0)));
const squares = ({ times }: BalanceProblem, plan: readonly (readonly number[])[]): number =>
  plan.reduce((sum, tasks) => sum + tasks.reduce((load, task) => load + (times[task] ?? 0), 0) ** 2, 0);

describe("an evened plan", () => {
  test("keeps every rule of the line and is no less even (seed 121)", () => {
    fc.assert(
      fc.property(line, (problem) => {
        const found = leastTakt(problem, 4, { steps: 1 });
        fc.pre(found.found);
        if (!found.found) return;
        const even = smoothPlan(problem, found.stations, 100_000);
        const takt = longest(problem, even);
        expect(balanceFaults(problem, takt, even)).toEqual([]);
        expect(squares(problem, even)).toBeLessThanOrEqual(squares(problem, found.stations));
      }),
      { seed: 121, numRuns: 300 },
    );
  });

  test("flows over from a full station through the middle, and never changes places with what comes before", () => {
    const problem: BalanceProblem = {
      times: [4, 4, 4, 4, 4, 4],
      before: [
        [0, 1],
        [1, 2],
        [2, 3],
        [3, 4],
        [4, 5],
      ],
    };
    expect(longest(problem, smoothPlan(problem, [[0, 1, 2, 3, 4, 5], [], []], 1000))).toBe(12);
    const chain: BalanceProblem = { times: [5, 3], before: [[1, 0]] };
    expect(smoothPlan(chain, [[1], [0]], 1000)).toEqual([[1], [0]]);
    expect(smoothPlan(problem, [[0, 1, 2, 3, 4, 5], [], []], 0)[0]).toHaveLength(6);
  });
});
