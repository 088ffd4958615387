import { PriceBook } from "@pinwright/engine";
import { decimal, divideDecimal, numberOfDecimal } from "@pinwright/kernel";
import { expect, it } from "vitest";
import { ExampleModel } from "../testing/example-model.ts";
import { wayFigures } from "./way-figures.ts";

it("finds from how many machines another way is cheaper, as fixed and unit costs say", () => {
  const { book, shop } = new ExampleModel().now;
  const way = {
    part: "p.post-10",
    label: "",
    label_zh: "",
    kind: "make",
    supplier: null,
    tooling: "",
    minutes: 0,
    setup_minutes: 0,
    lead_days: null,
    chosen: "no",
  } as const;
  const ways = [
    { ...way, way: "by-hand", unit_cost: 5, setup_cost: 0 },
    { ...way, way: "on-a-jig", unit_cost: 1, setup_cost: 850 },
  ] as const;
  const prices = new PriceBook({ book, shop: { ...shop, tables: { ...shop.tables, ways } } });
  // The shop also sells it ready made; that is no question here.
  const two = prices.waysOf("p.post-10").filter(({ wayId }) => wayId !== null);
  const found = wayFigures(prices, two, decimal(3), null, 25);
  // 75 pieces: 5 each by hand; (75 + 850) / 75 on the jig.
  expect(found.each.map(({ value }) => value)).toEqual([
    decimal(5),
    divideDecimal(decimal(925), decimal(75)),
  ]);
  // Equal at 850 / (5 - 1) = 212.5 pieces: the first whole number of machines beyond is 71, with 213 pieces.
  expect(found.change).toEqual({ machines: 71, way: 1 });
  const later = wayFigures(prices, two, decimal(3), null, 100);
  expect([later.change, numberOfDecimal(later.each[0]?.value ?? 0n)]).toEqual([null, 5]);
});
