import { expect, it } from "vitest";
import { CraftShop } from "./craft-shop.ts";
import { ExampleModel } from "./testing/example-model.ts";

it("is the same shop while only what happened or is planned is another", () => {
  const { shop } = new ExampleModel().now;
  const craft = new CraftShop();
  expect(craft.of(shop)).toBe(shop);
  const moved = { ...shop, tables: { ...shop.tables, movements: [], runs: [] } };
  expect(craft.of(moved)).toBe(shop);
  const dearer = { ...moved, tables: { ...moved.tables, prices: [] } };
  expect(craft.of(dearer)).toBe(dearer);
  const slower = { ...dearer, numbers: { ...dearer.numbers } };
  expect(craft.of(slower)).toBe(slower);
});
