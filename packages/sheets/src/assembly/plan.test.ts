import { fileURLToPath } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { Line } from "@pinwright/engine";
import { expect, test } from "vitest";
import { usualPlan } from "./plan.ts";

const { book, shop } = await readBook(
  fileURLToPath(new URL("../../../../examples/first-light", import.meta.url)),
);

test("a plan follows the stations, also where the steps are the same as before", () => {
  const line = new Line();
  const before = line.run(book, shop ?? emptyShop());
  const places = usualPlan(before).loads.length;
  const stations = book.tables.stations.map((row, i) => (i === 0 ? { ...row, people: row.people + 1 } : row));
  const after = line.run({ ...book, tables: { ...book.tables, stations } }, shop ?? emptyShop());
  expect(after.steps).toBe(before.steps);
  expect(usualPlan(after).loads).toHaveLength(places + 1);
  expect(usualPlan(before).loads).toHaveLength(places);
  expect(usualPlan(before)).toBe(usualPlan(before));
});
