import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type EconomicQuestion, economicQuantity, yearlyCost } from "./economic-quantity.ts";

describe("economic order quantity", () => {
  test("five prices: 200 at 48, 40 080 a year", () => {
    // Solved example "order quantity with five prices", demand 800, order 60, holding 30 % (nursingexpertshelp.com,
    // operations exercise): 200 and 40 080 are published there; the other totals are derived.
    const found = economicQuantity({
      yearly: 800,
      orderCost: 60,
      holdingPct: 30,
      breaks: [
        { from: 1, price: 53 },
        { from: 50, price: 51.5 },
        { from: 100, price: 49.5 },
        { from: 200, price: 48 },
        { from: 500, price: 47 },
      ],
    });
    expect(found?.best.quantity).toBe(200);
    expect(found?.best.total).toBeCloseTo(40080, 6);
    const totalAt = (quantity: number): number | undefined =>
      found?.weighed.find((w) => w.quantity === quantity)?.total;
    expect(totalAt(100)).toBeCloseTo(40822.5, 6);
    expect(totalAt(500)).toBeCloseTo(41221, 6);
  });

  test.each([
    // Solved example "order quantity with discount" (wizedu.com, question 608973): 1 000 published, totals derived.
    { prices: [5, 4.9, 4.85], totals: [25700, 25235, 25342.5] },
    // A textbook of operations management: 24 725 at 1 000; from memory.
    { prices: [5, 4.8, 4.75], totals: [25700, 24725, 24822.5] },
  ])("three prices $prices: 1 000", ({ prices, totals }) => {
    const froms = [1, 1000, 2000];
    const question: EconomicQuestion = {
      yearly: 5000,
      orderCost: 49,
      holdingPct: 20,
      breaks: prices.map((price, i) => ({ from: froms[i] ?? 0, price })),
    };
    const found = economicQuantity(question);
    expect(found?.best.quantity).toBe(1000);
    expect([700, 1000, 2000].map((quantity) => yearlyCost(question, quantity).total)).toEqual(
      totals.map((total) => expect.closeTo(total, 6)),
    );
  });

  test("one price: 5 000 a year at 5 is ordered 700 at a time", () => {
    const breaks = [{ from: 1, price: 5 }];
    const found = economicQuantity({ yearly: 5000, orderCost: 49, holdingPct: 20, breaks });
    expect(found?.best.quantity).toBeCloseTo(700, 9);
  });

  test("all-units discount of Snyder and Shen: 800", () => {
    // Snyder and Shen, Fundamentals of Supply Chain Theory, data of example 3.5 and result of example 3.6.
    const found = economicQuantity({
      yearly: 1300,
      orderCost: 8,
      holdingPct: 30,
      breaks: [
        { from: 0, price: 0.75 },
        { from: 400, price: 0.72 },
        { from: 800, price: 0.68 },
      ],
    });
    expect(found?.best.quantity).toBe(800);
  });

  test("whole packs: 200 of a part at 0.80 in packs of 100", () => {
    // Totals 524, 514, 516 at 100, 200, 300: derived by hand from the formula of the economic quantity.
    const question = {
      yearly: 600,
      orderCost: 6,
      holdingPct: 20,
      breaks: [{ from: 0, price: 0.8 }],
      pack: 100,
    };
    const found = economicQuantity(question);
    expect(found?.best.quantity).toBe(200);
    expect([100, 200, 300].map((quantity) => yearlyCost(question, quantity).total)).toEqual([
      expect.closeTo(524, 6),
      expect.closeTo(514, 6),
      expect.closeTo(516, 6),
    ]);
    const { pack: _pack, ...free } = question;
    expect(economicQuantity(free)?.best.quantity).toBeCloseTo(212.132, 3);
  });

  test("nothing used, or nothing sold, has no quantity", () => {
    expect(
      economicQuantity({ yearly: 0, orderCost: 1, holdingPct: 20, breaks: [{ from: 0, price: 1 }] }),
    ).toBeNull();
    expect(economicQuantity({ yearly: 5, orderCost: 1, holdingPct: 20, breaks: [] })).toBeNull();
  });

  test("no whole pack costs less (brute force, seed 63)", () => {
    const questions = fc.record({
      yearly: fc.integer({ min: 1, max: 3000 }),
      orderCost: fc.integer({ min: 0, max: 80 }),
      holdingPct: fc.integer({ min: 1, max: 60 }),
      pack: fc.integer({ min: 1, max: 60 }),
      prices: fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 4 }),
    });
    fc.assert(
      fc.property(questions, ({ prices, ...rest }) => {
        const falling = [...prices].sort((a, b) => b - a);
        const breaks = falling.map((price, i) => ({ from: i * 170, price: price / 10 }));
        const question = { ...rest, breaks };
        let least = Number.POSITIVE_INFINITY;
        for (let quantity = rest.pack; quantity <= 4000; quantity += rest.pack)
          least = Math.min(least, yearlyCost(question, quantity).total);
        expect(economicQuantity(question)?.best.total ?? 0).toBeLessThanOrEqual(least + 1e-9 * least);
      }),
      { seed: 63, numRuns: 200 },
    );
  });
});
