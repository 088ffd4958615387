import { decimal, textOfDecimal } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { createBook, createShop, type SomeShopTables, type SomeTables } from "../../testing/book.ts";
import { PriceBook } from "../prices/price-book.ts";
import { breakEven } from "./break-even.ts";
import { makeOrBuy } from "./make-or-buy.ts";

const pricesOf = (book: SomeTables, shop: SomeShopTables): PriceBook =>
  new PriceBook({ book: createBook(book), shop: createShop(shop) });

const EUR = { suppliers: [{ id: "s", currency: "EUR" }] } as const;

describe("make or buy", () => {
  test("break-even of set-up 600, make 1.90, buy 3.50 is 375", () => {
    // Set-up ÷ (buy − make), the make-or-buy formula of operations management; from memory, worked by hand.
    const at = breakEven(decimal(0), decimal("3.50"), decimal(600), decimal("1.90"));
    expect(at).toBe(decimal(375));
    expect(breakEven(decimal(600), decimal("1.90"), decimal(0), decimal("3.50"))).toBe(decimal(375));
    expect(breakEven(decimal(0), decimal(2), decimal(600), decimal(2))).toBeNull();
    expect(breakEven(decimal(0), decimal(2), decimal(600), decimal(3))).toBeNull();
  });

  test("and the curves cross there: making is cheaper above 375", () => {
    const prices = pricesOf(
      { parts: [{ id: "p", source: "buy" }] },
      {
        ...EUR,
        prices: [{ part: "p", supplier: "s", from_quantity: 1, price: 3.5, pack: 1 }],
        ways: [
          { part: "p", way: "bought", kind: "buy", supplier: "s" },
          { part: "p", way: "made", kind: "make", unit_cost: 1.9, setup_cost: 600 },
        ],
      },
    );
    const found = makeOrBuy(prices, "p", [100, 375, 376, 1000]);
    expect(found.ways.map(({ wayId }) => wayId)).toEqual(["bought", "made"]);
    expect(found.ways.map(({ costs }) => costs.map(({ value }) => textOfDecimal(value)))).toEqual([
      ["350", "1312.5", "1316", "3500"],
      ["790", "1312.5", "1314.4", "2500"],
    ]);
    expect(found.cheapest).toEqual([0, 0, 1, 1]);
    expect(found.changes).toEqual([{ from: 376, fromWay: 0, toWay: 1 }]);
  });

  // Common practice, no source: at this scale nobody makes a mould for what costs 0.80 in packs of 100.
  test("a bought-in part at 0.80 in packs of 100 beats a mould in a run of a hundred machines", () => {
    const prices = pricesOf(
      {
        parts: [{ id: "clip", source: "buy" }],
        tooling: [{ id: "mould", part: "clip", cost: 3800, life: 200000 }],
      },
      {
        ...EUR,
        prices: [{ part: "clip", supplier: "s", from_quantity: 1, price: 0.8, pack: 100 }],
        ways: [
          { part: "clip", way: "bought", kind: "buy", supplier: "s" },
          { part: "clip", way: "moulded", kind: "have-made", tooling: "mould", unit_cost: 0.12 },
        ],
      },
    );
    const found = makeOrBuy(prices, "clip", [600, 2400, 10000]);
    expect(found.cheapest).toEqual([0, 0, 1]);
    // 3800 ÷ (0.80 − 0.12) = 5588.2; whole packs let the mould pay a little earlier, and not for good.
    const last = found.changes.at(-1);
    expect(last?.toWay).toBe(1);
    expect(Math.abs((last?.from ?? 0) - 5588.2)).toBeLessThan(100);
  });

  test("a way of which a cost is not known is never the cheapest", () => {
    const prices = pricesOf(
      { parts: [{ id: "p", source: "buy" }], tooling: [{ id: "t", part: "p" }] },
      {
        ...EUR,
        prices: [{ part: "p", supplier: "s", from_quantity: 1, price: 9, pack: 1 }],
        ways: [{ part: "p", way: "moulded", kind: "have-made", tooling: "t", unit_cost: 0.1 }],
      },
    );
    const found = makeOrBuy(prices, "p", [1, 1000]);
    expect(found.ways.map(({ wayId, kind }) => [wayId, kind])).toEqual([
      ["moulded", "have-made"],
      [null, "buy"],
    ]);
    expect(found.ways[0]?.costs[0]?.missing).toEqual([{ lack: "no-tool-cost", id: "t" }]);
    expect(found.cheapest).toEqual([1, 1]);
    expect(found.changes).toEqual([]);
  });
});
