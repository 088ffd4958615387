import { bestLots } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breakPlan } from "./break-plan.ts";
import { packLots } from "./pack-lots.ts";
import { costOfOrders, type PackProblem } from "./problem.ts";

const problems = (most: number): fc.Arbitrary<PackProblem> =>
  fc
    .record({
      demand: fc.array(fc.integer({ min: 0, max: most }), { minLength: 1, maxLength: 8 }),
      orderCost: fc.integer({ min: 0, max: 60 }),
      hold: fc.integer({ min: 0, max: 4 }),
      price: fc.integer({ min: 5, max: 30 }),
      least: fc.integer({ min: 0, max: 4 }),
      steps: fc.array(fc.tuple(fc.integer({ min: 1, max: most }), fc.integer({ min: 0, max: 3 })), {
        maxLength: 3,
      }),
    })
    .map(({ demand, orderCost, hold, price, least, steps }) => {
      let from = least;
      let each = price;
      const more = steps.map(([step, fall]) => {
        from += step;
        each = Math.max(0, each - fall);
        return { from, price: each };
      });
      const holdingCost = demand.map((_, t) => hold + (t % 2));
      return { demand, orderCost, holdingCost, breaks: [{ from: least, price }, ...more] };
    });

/** The kernel's programme over periods and levels of stock, which a solver has been held against. */
const byLevels = ({ demand, orderCost, holdingCost, breaks }: PackProblem): number =>
  bestLots({ demand, stock: 0, orderCost: demand.map(() => orderCost), holdingCost, breaks, pack: 1 }).cost;

describe("lots in packs", () => {
  it("cost what the programme over all levels of stock finds, and their orders cost just that", () => {
    fc.assert(
      fc.property(problems(15), (problem) => {
        const plan = packLots(problem);
        expect(plan.cost).toBe(byLevels(problem));
        expect(plan.lowerBound).toBe(plan.cost);
        expect(costOfOrders(problem, plan.orders)).toBe(plan.cost);
        expect(breakPlan(problem).cost).toBe(plan.cost);
      }),
      { seed: 29, numRuns: 400 },
    );
  });

  it("that are too many for the exact programme meet the demand, between their bound and one price for all", () => {
    fc.assert(
      fc.property(problems(60), (problem) => {
        const plan = packLots(problem, 40);
        expect(costOfOrders(problem, plan.orders)).toBe(plan.cost);
        const best = byLevels(problem);
        expect(plan.cost).toBeGreaterThanOrEqual(best);
        expect(plan.lowerBound).toBeLessThanOrEqual(best);
      }),
      { seed: 29, numRuns: 100 },
    );
  });
});

describe("published examples", () => {
  it.each([
    // L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, example 3.9.
    { name: "four periods", demand: [90, 120, 80, 70], orderCost: 500, hold: 2, cost: 1380 },
    // The same book, problem 3.29, money in tenths.
    { name: "five periods", demand: [730, 580, 445, 650, 880], orderCost: 1000, hold: 1, cost: 4230 },
    // W. J. Hopp and M. L. Spearman, Factory Physics, section 2.3.3; costs and value from memory.
    {
      name: "ten weeks",
      demand: [20, 50, 10, 50, 50, 10, 20, 40, 20, 30],
      orderCost: 100,
      hold: 1,
      cost: 580,
    },
  ])("$name", ({ demand, orderCost, hold, cost }) => {
    const problem = {
      demand,
      orderCost,
      holdingCost: demand.map(() => hold),
      breaks: [{ from: 0, price: 0 }],
    };
    expect(packLots(problem)).toMatchObject({ cost, lowerBound: cost });
    expect(breakPlan(problem).cost).toBe(cost);
  });
});
