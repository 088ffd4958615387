import { describe, expect, test } from "vitest";
import type { Finding } from "../../model/index.ts";
import { createMachine, createShop, type SomeShopTables, type SomeTables } from "../../testing/book.ts";
import { PartsSolver } from "../parts-solver.ts";
import { callOuts } from "./call-outs.ts";

const MONEY: SomeShopTables = {
  currencies: [{ id: "EUR", own: "yes" }],
  suppliers: [
    { id: "s", currency: "EUR", lead_days: 5 },
    { id: "t", currency: "EUR", lead_days: 40 },
  ],
};
const price = (part: string, supplier: string, cells: object = {}) => ({
  part,
  supplier,
  from_quantity: 0,
  price: 1,
  ...cells,
});

const solve = (book: SomeTables, shop: SomeShopTables) => {
  const machine = createMachine(book, createShop({ ...MONEY, ...shop }));
  return { machine, ...new PartsSolver().solve(machine, new Map(), new Map()) };
};
const found = (book: SomeTables, shop: SomeShopTables): readonly Finding[] => solve(book, shop).findings;
const shown = (findings: readonly Finding[]) =>
  findings.map(({ rule, severity, subjects }) => [rule, severity, ...subjects].join(" "));

/** A machine that is made of these parts. */
const madeOf = (...parts: NonNullable<SomeTables["parts"]>): SomeTables => ({
  parts,
  bom: parts.map(({ id = "" }) => ({ parent: null, part: id, quantity: 1 })),
});

describe("checks of parts", () => {
  test("a part with two prices and no faults is not told of", () => {
    expect(found(madeOf({ id: "p" }), { prices: [price("p", "s"), price("p", "t")] })).toEqual([]);
  });

  test.each<[string, SomeTables, SomeShopTables, readonly string[]]>([
    ["no price", madeOf({ id: "p" }), {}, ["part-no-price warning p"]],
    [
      "a price of nothing",
      madeOf({ id: "p", source: "have-made" }),
      { prices: [price("p", "s", { price: 0 })] },
      ["pack-bad warning p s"],
    ],
    [
      "half a pack",
      madeOf({ id: "p", source: "have-made" }),
      { prices: [price("p", "s", { pack: 0.5 })] },
      ["pack-bad warning p s"],
    ],
    ["made of nothing", madeOf({ id: "p", source: "make" }), {}, ["part-no-source warning p"]],
    [
      "chosen to be bought from somebody without a price",
      madeOf({ id: "p", source: "make" }),
      {
        ways: [
          { part: "p", way: "a", kind: "make", unit_cost: 1 },
          { part: "p", way: "b", kind: "buy", supplier: "s", chosen: "yes" },
        ],
      },
      ["part-no-price warning p"],
    ],
    [
      "a currency without a rate",
      madeOf({ id: "p", source: "have-made" }),
      { suppliers: [{ id: "s", currency: "USD" }], prices: [price("p", "s")] },
      ["price-currency warning s"],
    ],
    [
      "dearer by the hundred",
      madeOf({ id: "p", source: "have-made" }),
      { prices: [price("p", "s"), price("p", "s", { from_quantity: 100, price: 1.1 })] },
      ["price-order warning p s"],
    ],
    [
      "a tool that nobody has a price for",
      { ...madeOf({ id: "p", source: "have-made" }), tooling: [{ id: "tl", part: "p" }] },
      { ways: [{ part: "p", way: "moulded", kind: "have-made", tooling: "tl", unit_cost: 0.1 }] },
      ["tool-no-cost warning tl p"],
    ],
    ["one supplier", madeOf({ id: "p" }), { prices: [price("p", "s")] }, ["single-source note p s"]],
    [
      "one supplier, but of what is made to a drawing",
      madeOf({ id: "p", source: "have-made" }),
      { prices: [price("p", "s")] },
      [],
    ],
    [
      "long to wait",
      madeOf({ id: "p", source: "have-made" }),
      { prices: [price("p", "t")] },
      ["long-lead note p"],
    ],
    ["long to wait from one of two", madeOf({ id: "p" }), { prices: [price("p", "s"), price("p", "t")] }, []],
    [
      "a device without a part",
      {
        device_types: [{ id: "dt", width_mm: 9, depth_mm: 9, height_mm: 9 }],
        devices: [{ id: "d", type: "dt", panel: "f", side: "top", x_mm: 1, y_mm: 1 }],
      },
      {},
      ["part-unnamed warning dt"],
    ],
    [
      "a mechanism of which nothing is known",
      {
        mechanism_types: [{ id: "mt", width_mm: 9, depth_mm: 9, height_mm: 9 }],
        mechanisms: [{ id: "m", type: "mt", panel: "f", side: "top", x_mm: 1, y_mm: 1 }],
      },
      {},
      ["part-unnamed warning mt"],
    ],
    [
      "a price for a part that the machine does not have",
      { parts: [{ id: "p" }] },
      { prices: [price("p", "s", { price: 0 })] },
      [],
    ],
  ])("%s", (_, book, shop, expected) => {
    expect(shown(found(book, shop))).toEqual(expected);
  });

  test("asks nothing about what comes within a bought assembly", () => {
    const book: SomeTables = {
      parts: [{ id: "whole", source: "have-made" }, { id: "inside" }],
      bom: [
        { parent: null, part: "whole", quantity: 1 },
        { parent: "whole", part: "inside", quantity: 1 },
      ],
    };
    expect(shown(found(book, { prices: [price("whole", "s")] }))).toEqual([]);
    const { parts } = book;
    const made = { ...book, parts: (parts ?? []).map((part) => ({ ...part, source: "make" as const })) };
    expect(shown(found(made, { prices: [price("whole", "s")] }))).toEqual(["part-no-source warning inside"]);
  });

  test("a device of square metres is counted in the wrong unit", () => {
    const at = { panel: "f", side: "top", x_mm: 1, y_mm: 1 } as const;
    const book: SomeTables = {
      parts: [{ id: "p", unit: "m2", source: "have-made" }],
      device_types: [{ id: "dt", width_mm: 9, depth_mm: 9, height_mm: 9, part: "p" }],
      devices: [{ id: "d", type: "dt", ...at }],
    };
    const [finding] = found(book, { prices: [price("p", "s")] });
    expect(finding).toMatchObject({ rule: "part-unit", numbers: { unit: "m2", wanted: "each" } });
  });

  test("calls out the same parts as the findings", () => {
    const { machine, parts, findings } = solve(madeOf({ id: "p" }, { id: "q" }), {
      prices: [price("p", "s"), price("q", "t")],
    });
    const { singleSource, longLead } = callOuts(machine, parts.bill);
    expect(singleSource).toEqual([
      { partId: "p", supplierId: "s" },
      { partId: "q", supplierId: "t" },
    ]);
    expect(longLead).toEqual([{ partId: "q", leadDays: 40 }]);
    expect(shown(findings)).toEqual(["long-lead note q", "single-source note p s", "single-source note q t"]);
  });
});
