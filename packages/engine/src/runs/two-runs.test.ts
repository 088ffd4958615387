import { numberOfDecimal } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayText } from "./days.ts";
import { planRuns } from "./plan-runs.ts";
import { createInput, PLAIN, TODAY } from "./testing/workshop.ts";

interface Case {
  readonly first: number;
  readonly second: number;
  readonly days: number;
  readonly order: number;
  readonly price: number;
  readonly from: number;
  readonly fall: number;
  readonly pack: number;
}

const cases: fc.Arbitrary<Case> = fc.record({
  first: fc.integer({ min: 1, max: 30 }),
  second: fc.integer({ min: 1, max: 60 }),
  days: fc.integer({ min: 7, max: 500 }),
  order: fc.integer({ min: 0, max: 40 }),
  price: fc.integer({ min: 1, max: 40 }),
  from: fc.integer({ min: 2, max: 100 }),
  fall: fc.integer({ min: 0, max: 40 }),
  pack: fc.constantFrom(1, 5),
});

const priceOf = ({ price, from, fall }: Case, quantity: number): number =>
  quantity >= from ? (price * (100 - fall)) / 100 : price;

/** Least cost of all pairs of orders: the units at their prices, the orders, and a fifth a year of what lies. */
function byTrying(asked: Case): number {
  const { first, second, days, order, pack, from } = asked;
  // What lies is worth the price at which all of it is bought.
  const held = (0.2 * priceOf(asked, first + second) * days) / 365;
  let least = Number.POSITIVE_INFINITY;
  const most = first + second + from + pack;
  for (let a = pack; a <= most; a += pack)
    for (let b = 0; b <= most; b += pack) {
      if (a < first || a + b < first + second) continue;
      const orders = [a, b].filter((quantity) => quantity > 0);
      const units = orders.reduce((sum, quantity) => sum + order + quantity * priceOf(asked, quantity), 0);
      least = Math.min(least, units + (a - first) * held);
    }
  return least;
}

describe("lots of one part for two runs", () => {
  it("cost the least of all that could be ordered for the first, for the second, or for both at once", () => {
    fc.assert(
      fc.property(cases, (asked) => {
        const { first, second, days, order, price, from, pack } = asked;
        const base = { part: "p", supplier: "s", pack };
        const plan = planRuns(
          createInput({
            book: { parts: [{ id: "p" }], bom: [{ parent: null, part: "p", quantity: 1 }] },
            shop: {
              runs: [first, second].map((machines, i) => ({
                id: `r${i}`,
                book: "test",
                machines,
                ship: dayText(TODAY + 70 + i * days),
              })),
              suppliers: [{ id: "s", currency: "EUR", order_cost: order }],
              prices: [
                { ...base, from_quantity: 0, price },
                { ...base, from_quantity: from, price: priceOf(asked, from) },
              ],
            },
            numbers: { ...PLAIN, holding_pct: 20 },
          }),
        );
        expect(numberOfDecimal(plan.lots[0]?.cost ?? 0n)).toBeCloseTo(byTrying(asked), 3);
      }),
      { seed: 29, numRuns: 150 },
    );
  });

  it("are bought for each run by itself where a break does not pay for half a year on the shelf", () => {
    // 25 and 100 at 10, 9 from 100 on: together 125 × 9 + 100 × 0.2 × 9 / 2 = 1,215; apart 250 + 900 = 1,150.
    const plan = planRuns(
      createInput({
        book: { parts: [{ id: "p" }], bom: [{ parent: null, part: "p", quantity: 1 }] },
        shop: {
          runs: [25, 100].map((machines, i) => ({
            id: `r${i}`,
            book: "test",
            machines,
            ship: dayText(TODAY + 70 + i * 183),
          })),
          suppliers: [{ id: "s", currency: "EUR", order_cost: 15 }],
          prices: [
            { part: "p", supplier: "s", from_quantity: 0, price: 10 },
            { part: "p", supplier: "s", from_quantity: 100, price: 9 },
          ],
        },
        numbers: { ...PLAIN, holding_pct: 20 },
      }),
    );
    expect(plan.lots[0]?.orders.map((lot) => numberOfDecimal(lot.quantity))).toEqual([25, 100]);
    expect(plan.cash.flatMap((week) => week.runs.map(({ runId }) => runId))).toEqual(["r0", "r1"]);
  });
});
