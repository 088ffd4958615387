import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bestLots, type LotProblem } from "./index.ts";

/** One price, one unit a pack, nothing in stock, a cost of ordering and holding that may differ by period. */
const plain = (demand: readonly number[], order: number | readonly number[], hold: number): LotProblem => ({
  demand,
  stock: 0,
  orderCost: typeof order === "number" ? demand.map(() => order) : order,
  holdingCost: demand.map(() => hold),
  breaks: [{ from: 0, price: 0 }],
  pack: 1,
});

const costOf = ({ demand, stock, orderCost, holdingCost, breaks }: LotProblem, orders: readonly number[]) => {
  let left = stock;
  let cost = 0;
  for (const [t, order] of orders.entries()) {
    const price = breaks.findLast(({ from }) => order >= from)?.price;
    if (order > 0 && price === undefined) return Number.POSITIVE_INFINITY;
    if (order > 0) cost += (orderCost[t] ?? 0) + order * (price ?? 0);
    left += order - (demand[t] ?? 0);
    if (left < 0) return Number.POSITIVE_INFINITY;
    cost += left * (holdingCost[t] ?? 0);
  }
  return cost;
};

/** Every combination of orders up to `most` packs. */
function byTrying(problem: LotProblem, most: number): number {
  const each = (orders: readonly number[]): number =>
    orders.length === problem.demand.length
      ? costOf(problem, orders)
      : Math.min(...Array.from({ length: most + 1 }, (_, k) => each([...orders, k * problem.pack])));
  return each([]);
}

describe("published examples", () => {
  it.each([
    {
      // H. M. Wagner and T. M. Whitin, Management Science 5, 1958: the example of twelve months.
      name: "twelve months",
      problem: plain(
        [69, 29, 36, 61, 61, 26, 34, 67, 45, 67, 79, 56],
        [85, 102, 102, 101, 98, 114, 105, 86, 119, 110, 98, 114],
        1,
      ),
      cost: 864,
    },
    {
      // L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, example 3.9.
      name: "four periods",
      problem: plain([90, 120, 80, 70], 500, 2),
      cost: 1380,
    },
    {
      // The same book, problem 3.29, money in tenths.
      name: "five periods",
      problem: plain([730, 580, 445, 650, 880], 1000, 1),
      cost: 4230,
    },
    {
      // W. J. Hopp and M. L. Spearman, Factory Physics, section 2.3.3; costs and value from memory.
      name: "ten weeks",
      problem: plain([20, 50, 10, 50, 50, 10, 20, 40, 20, 30], 100, 1),
      cost: 580,
    },
  ])("$name", ({ problem, cost }) => {
    const plan = bestLots(problem);
    expect(plan.cost).toBe(cost);
    expect(costOf(problem, plan.orders)).toBe(cost);
  });
});

describe("laws", () => {
  const problems = fc
    .record({
      demand: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 4 }),
      stock: fc.integer({ min: 0, max: 5 }),
      order: fc.integer({ min: 0, max: 9 }),
      hold: fc.integer({ min: 0, max: 3 }),
      price: fc.integer({ min: 0, max: 5 }),
      steps: fc.array(fc.integer({ min: 1, max: 5 }), { maxLength: 2 }),
      least: fc.integer({ min: 0, max: 3 }),
      pack: fc.integer({ min: 1, max: 3 }),
    })
    .map(({ demand, stock, order, hold, price, steps, least, pack }): LotProblem => {
      let from = least;
      const froms = [least, ...steps.map((step) => (from += step))];
      return {
        demand,
        stock,
        orderCost: demand.map((_, t) => order + t),
        holdingCost: demand.map(() => hold),
        breaks: froms.map((from, j) => ({ from, price: Math.max(0, price - j) })),
        pack,
      };
    });

  it("costs what trying every order finds, and its orders meet the demand at that cost", () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const plan = bestLots(problem);
        const most = Math.ceil((problem.demand.reduce((a, b) => a + b, 0) + 10) / problem.pack);
        if ((most + 1) ** problem.demand.length > 60_000) return;
        expect(plan.cost).toBe(byTrying(problem, most));
        expect(costOf(problem, plan.orders)).toBe(plan.cost);
      }),
      { numRuns: 60 },
    );
  });

  it("takes no more than its levels for years of large demand", () => {
    const demand = Array.from({ length: 24 }, (_, t) => 900 + ((t * 131) % 400));
    const plan = bestLots({
      ...plain(demand, 40_000, 3),
      breaks: [
        { from: 100, price: 80 },
        { from: 2000, price: 75 },
      ],
    });
    expect(plan.orders.reduce((a, b) => a + b, 0)).toBe(demand.reduce((a, b) => a + b, 0));
  });
});

describe("what cannot be planned", () => {
  it.each([
    {
      name: "breaks that fall",
      change: {
        breaks: [
          { from: 5, price: 2 },
          { from: 5, price: 1 },
        ],
      },
    },
    { name: "no breaks", change: { breaks: [] } },
    { name: "a pack of none", change: { pack: 0 } },
    { name: "half a unit", change: { demand: [0.5] } },
    { name: "costs of other periods", change: { orderCost: [1, 2] } },
    { name: "stock beyond all measure", change: { demand: [1e12] } },
  ])("$name", ({ change }) => {
    expect(() => bestLots({ ...plain([3], 1, 1), ...change })).toThrow(RangeError);
  });
});
