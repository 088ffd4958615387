import { decimal, timesDecimal } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { buyAt, type Offer } from "./offer.ts";

const offer = (breaks: readonly (readonly [number, number, number])[]): Offer => ({
  partId: "p",
  supplierId: "s",
  currency: "EUR",
  rate: decimal(1),
  leadDays: 5,
  orderNumber: "",
  breaks: breaks.map(([from, price, pack]) => ({
    from: decimal(from),
    price: decimal(price),
    pack: decimal(pack),
  })),
});

describe("a purchase", () => {
  test.each([
    // wanted, breaks [from, price, pack], ordered, price, amount
    [
      60,
      [
        [1, 1, 1],
        [100, 0.8, 1],
      ],
      60,
      1,
      60,
    ],
    [
      96,
      [
        [1, 1, 1],
        [100, 0.8, 1],
      ],
      100,
      0.8,
      80,
    ],
    [
      80,
      [
        [1, 1, 1],
        [100, 0.8, 1],
      ],
      80,
      1,
      80,
    ],
    [5, [[50, 2, 1]], 50, 2, 100],
    [212, [[0, 0.8, 100]], 300, 0.8, 240],
    [0.35, [[0, 0.16, 100]], 100, 0.16, 16],
    // The last pack before the break would reach it, and has its price.
    [
      95,
      [
        [1, 1, 30],
        [100, 0.9, 30],
      ],
      120,
      0.9,
      108,
    ],
  ] as const)("of %s at %j", (wanted, breaks, ordered, price, amount) => {
    const found = buyAt(offer(breaks), decimal(wanted));
    expect(found).toMatchObject({
      ordered: decimal(ordered),
      price: decimal(price),
      amount: decimal(amount),
    });
  });

  test("of nothing, or from nobody, is none", () => {
    expect(buyAt(offer([[1, 1, 1]]), 0n)).toBeNull();
    expect(buyAt(offer([]), decimal(5))).toBeNull();
  });

  test("costs no more than any number of packs that the supplier sells (brute force, seed 12)", () => {
    const breaks = fc.array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 1, max: 400 })), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(
        breaks,
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 200 }),
        (some, pack, wanted) => {
          const froms = [...new Set(some.map(([from]) => from))].sort((a, b) => a - b);
          const sold = offer(froms.map((from, i) => [from, (some[i]?.[1] ?? 1) / 100, pack]));
          const priceAt = (quantity: number) =>
            sold.breaks.findLast(({ from }) => from <= decimal(quantity))?.price;
          let least: bigint | null = null;
          for (let quantity = pack; quantity <= 600; quantity += pack) {
            const price = priceAt(quantity);
            if (quantity < wanted || price === undefined) continue;
            const amount = timesDecimal(decimal(quantity), price);
            if (least === null || amount < least) least = amount;
          }
          const found = buyAt(sold, decimal(wanted));
          expect(found?.amount).toBe(least);
          expect(found?.price).toBe(priceAt(Number(found?.ordered ?? 0n) / 1e9));
        },
      ),
      { seed: 12, numRuns: 300 },
    );
  });
});
