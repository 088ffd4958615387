import { type Decimal, decimal, divideDecimal, textOfDecimal, timesDecimal } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Machine } from "../../model/index.ts";
import { createMachine, createShop, type SomeShopTables, type SomeTables } from "../../testing/book.ts";
import { PartsSolver } from "../parts-solver.ts";
import { arbitraryBom } from "../testing/arbitrary-bill.ts";
import { type CostQuestion, type CostRollUp, rollUp } from "./roll-up.ts";

const roll = (book: SomeTables, shop: SomeShopTables, question: CostQuestion): CostRollUp => {
  const machine: Machine = createMachine(book, createShop(shop, { labour_rate: 30 }));
  const { bill } = new PartsSolver().solve(machine, new Map(), new Map()).parts;
  return rollUp(machine, bill, question);
};

const MONEY: SomeShopTables = {
  currencies: [
    { id: "EUR", own: "yes", rate: 1 },
    { id: "CNY", rate: 0.128 },
  ],
  suppliers: [
    { id: "far", currency: "CNY", lead_days: 40 },
    { id: "near", currency: "EUR", lead_days: 5 },
  ],
};
const price = (part: string, supplier: string, from_quantity: number, price: number, pack = 1) => ({
  part,
  supplier,
  from_quantity,
  price,
  pack,
});
const shown = (value: Decimal | undefined): string => textOfDecimal(value ?? -1n);

describe("the cost of a machine", () => {
  const BOOK: SomeTables = {
    parts: [
      { id: "arm", source: "make", unit: "each" },
      { id: "bracket", source: "have-made", unit: "each" },
      { id: "screw", source: "buy", unit: "each" },
      { id: "clip", source: "buy", unit: "each" },
    ],
    tooling: [{ id: "mould", part: "clip", cost: 300, life: 1000 }],
    bom: [
      { parent: null, part: "arm", quantity: 2 },
      { parent: "arm", part: "bracket", quantity: 1 },
      { parent: "arm", part: "screw", quantity: 3 },
      { parent: null, part: "clip", quantity: 8 },
    ],
  };
  const SHOP: SomeShopTables = {
    ...MONEY,
    prices: [
      price("bracket", "near", 1, 4),
      price("bracket", "near", 100, 3),
      price("screw", "near", 0, 0.05, 100),
      price("screw", "far", 0, 0.2, 500),
      price("clip", "near", 0, 0.8, 100),
    ],
    ways: [
      { part: "clip", way: "bought", kind: "buy", supplier: "near" },
      { part: "clip", way: "moulded", kind: "have-made", tooling: "mould", unit_cost: 0.1 },
      { part: "arm", way: "welded", kind: "make", minutes: 6, setup_minutes: 20 },
    ],
  };

  test("ten machines, worked by hand", () => {
    const cost = roll(BOOK, SHOP, { machines: 10 });
    expect(cost.currency).toBe("EUR");
    // 20 brackets at 4; 60 screws at 0.05 from a pack of 100 (near: 5.00; far: 500 × 0.2 × 0.128 = 12.80).
    expect(shown(cost.nodes.get("bracket")?.each.value)).toBe("4");
    expect(cost.nodes.get("screw")?.source?.supplierId).toBe("near");
    expect(shown(cost.nodes.get("screw")?.each.value)).toBe("0.05");
    // An arm: 4 + 3 × 0.05, 6 min at 30 an hour, 20 min of set-up over 20 arms.
    expect(shown(cost.nodes.get("arm")?.each.value)).toBe("7.65");
    expect(shown(cost.nodes.get("arm")?.work)).toBe("3");
    // 80 clips: 100 bought for 80.00, or a mould for 300 and 8.00.
    expect(cost.nodes.get("clip")?.source).toMatchObject({
      wayId: "bought",
      kind: "buy",
      supplierId: "near",
    });
    expect(shown(cost.nodes.get("clip")?.each.value)).toBe("0.8");
    expect(shown(cost.each.value)).toBe(shown(decimal(2 * 7.65 + 8 * 0.8)));
    expect(cost.each.missing).toEqual([]);
    // 40 screws and 20 clips stay on the shelf.
    expect(shown(cost.leftOver)).toBe("18");
  });

  test("a thousand machines: the break, the other supplier, and the mould", () => {
    const cost = roll(BOOK, SHOP, { machines: 1000 });
    expect(shown(cost.nodes.get("bracket")?.each.value)).toBe("3");
    expect(cost.nodes.get("screw")?.source?.supplierId).toBe("far");
    expect(shown(cost.nodes.get("screw")?.each.value)).toBe("0.0256");
    // 8 000 clips wear out eight moulds.
    expect(cost.nodes.get("clip")?.source).toMatchObject({ wayId: "moulded" });
    expect(shown(cost.nodes.get("clip")?.each.value)).toBe("0.4");
    expect(cost.nodes.get("clip")?.others.map(({ way }) => way.wayId)).toEqual(["bought"]);
  });

  test("quantities of the run decide the price, not how often it is paid", () => {
    const cost = roll(BOOK, SHOP, { machines: 10, needs: new Map([["bracket", decimal(110)]]) });
    expect(shown(cost.nodes.get("bracket")?.each.value)).toBe("3");
    expect(shown(cost.nodes.get("bracket")?.ofMachine.value)).toBe("6");
  });

  test("work that is told beside the ways is added", () => {
    const cost = roll(BOOK, SHOP, { machines: 10, minutes: new Map([["machine", 120]]) });
    expect(shown(cost.each.value)).toBe(shown(decimal(2 * 7.65 + 8 * 0.8 + 60)));
    expect(shown(cost.nodes.get("machine")?.work)).toBe("66");
  });

  test("a frozen run keeps its prices and rates", () => {
    const shop = createShop({
      ...SHOP,
      run_prices: [
        { run: "r", part: "bracket", supplier: "far", from_quantity: 1, price: 20, rate: 0.1, pack: 1 },
      ],
    });
    const machine = createMachine({ parts: BOOK.parts ?? [], bom: [{ part: "bracket", quantity: 1 }] }, shop);
    const { bill } = new PartsSolver().solve(machine, new Map(), new Map()).parts;
    expect(shown(rollUp(machine, bill, { machines: 1, runId: "r" }).each.value)).toBe("2");
    expect(shown(rollUp(machine, bill, { machines: 1 }).each.value)).toBe("4");
  });

  test("what comes within a bought assembly is not paid for", () => {
    const parts = (BOOK.parts ?? []).map((part) =>
      part.id === "arm" ? { ...part, source: "buy" as const } : part,
    );
    const prices = [...(SHOP.prices ?? []), price("arm", "near", 1, 50)];
    const cost = roll({ ...BOOK, parts }, { ...SHOP, ways: [], prices }, { machines: 10 });
    expect(shown(cost.nodes.get("arm")?.each.value)).toBe("50");
    expect(cost.nodes.get("screw")).toMatchObject({
      needed: 0n,
      quantity: decimal(6),
      ofMachine: { value: 0n },
    });
    expect(shown(cost.each.value)).toBe("106.4");
  });

  test("what is not known is told beside the sum, all the way up", () => {
    const parts = [
      ...(BOOK.parts ?? []),
      { id: "foreign", source: "buy" as const },
      { id: "free", source: "buy" as const },
      { id: "made", source: "make" as const },
      { id: "round", source: "make" as const },
    ];
    const bom = [
      ...(BOOK.bom ?? []),
      { parent: "arm", part: "foreign", quantity: 1 },
      { parent: "arm", part: "made", quantity: 1 },
      { parent: null, part: "free", quantity: 1 },
      { parent: null, part: "round", quantity: 1 },
      { parent: "round", part: "round", quantity: 1 },
    ];
    const suppliers = [...(MONEY.suppliers ?? []), { id: "abroad", currency: "USD" }];
    const prices = [
      price("clip", "near", 0, 0.8, 100),
      price("bracket", "near", 1, 4),
      price("foreign", "abroad", 1, 4),
      price("free", "near", 1, 0),
    ];
    const cost = roll({ ...BOOK, parts, bom }, { ...SHOP, suppliers, prices }, { machines: 10 });
    expect(cost.each.missing).toEqual([
      { lack: "no-rate", id: "abroad" },
      { lack: "bad-pack", id: "free" },
      { lack: "no-source", id: "made" },
      { lack: "circle", id: "round" },
      { lack: "no-price", id: "screw" },
    ]);
    expect(cost.nodes.get("arm")?.each.missing.map(({ id }) => id)).toEqual(["abroad", "made", "screw"]);
    expect(shown(cost.nodes.get("arm")?.each.value)).toBe("7.5");
    expect(cost.nodes.get("clip")?.each.missing).toEqual([]);
  });

  test("is the sum of what is got for it (seed 31)", () => {
    fc.assert(
      fc.property(arbitraryBom, fc.integer({ min: 1, max: 400 }), (tables, machines) => {
        const prices = tables.parts.map(({ id = "" }, i) => price(id, "near", 0, i + 0.25, 1));
        const machine = createMachine(tables, createShop({ ...MONEY, prices }));
        const { bill } = new PartsSolver().solve(machine, new Map(), new Map()).parts;
        const cost = rollUp(machine, bill, { machines });
        let sum = 0n;
        for (const { id, source, ofMachine } of cost.nodes.values())
          if (id !== "machine" && source !== null && source.kind !== "make") sum += ofMachine.value;
        const { value, missing } = cost.each;
        const off = value > sum ? value - sum : sum - value;
        // Every level rounds to billionths.
        expect(off <= 1n + value / 1_000_000n).toBe(true);
        // What is made and contains nothing has no source; it alone is missing.
        expect(missing.every(({ lack }) => lack === "no-source")).toBe(true);
        for (const { id, needed, quantity } of cost.nodes.values())
          expect(needed <= timesDecimal(quantity, decimal(machines)) + BigInt(machines), id).toBe(true);
      }),
      { seed: 31, numRuns: 120 },
    );
  });

  test("costs each no more at a larger quantity of whole packs, where prices fall (seed 32)", () => {
    const quantities = fc.tuple(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 1, max: 300 }));
    fc.assert(
      fc.property(quantities, ([some, more]) => {
        const book = { parts: [{ id: "screw" }], bom: [{ part: "screw", quantity: 100 }] };
        const prices = [price("screw", "near", 0, 0.05, 100), price("screw", "near", 10000, 0.04, 100)];
        const at = (machines: number) => roll(book, { ...MONEY, prices }, { machines }).each.value;
        expect(at(some + more) <= at(some)).toBe(true);
        expect(divideDecimal(at(some), decimal(100)) <= decimal(0.05)).toBe(true);
      }),
      { seed: 32, numRuns: 60 },
    );
  });

  test("a shop without suppliers still has a bill", () => {
    const cost = roll({ parts: [{ id: "p" }], bom: [{ part: "p", quantity: 1 }] }, {}, { machines: 1 });
    expect(cost).toMatchObject({
      currency: "",
      each: { value: 0n, missing: [{ lack: "no-price", id: "p" }] },
    });
  });
});
