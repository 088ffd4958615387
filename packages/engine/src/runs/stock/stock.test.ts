import { textOfDecimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { createShop, type SomeShopTables } from "../../testing/book.ts";
import { day } from "../testing/workshop.ts";
import { openReceipts } from "./receipts.ts";
import { stockLedger, stockOf, usableStock } from "./stock.ts";

type Movements = NonNullable<SomeShopTables["movements"]>;
const shopOf = (movements: Movements) => createShop({ movements });

const moves: Movements = [
  { id: "m1", day: "2027-01-04", part: "p", kind: "received", quantity: 10 },
  { id: "m3", day: "2027-01-06", part: "p", kind: "counted", quantity: 5.5 },
  { id: "m2", day: "2027-01-05", part: "p", kind: "kitted", quantity: 12 },
  { id: "m4", day: "2027-01-06", part: "p", kind: "scrapped", quantity: 1 },
];

describe("stock", () => {
  it("adds, takes away and counts in the order of days; what leaves less than nothing is told", () => {
    const lines = stockLedger(shopOf(moves), "p");
    expect(lines.map((l) => [l.movement.id, textOfDecimal(l.balance), l.isBelowZero])).toEqual([
      ["m1", "10", false],
      ["m2", "-2", true],
      ["m3", "5.5", false],
      ["m4", "4.5", false],
    ]);
    expect(textOfDecimal(stockOf(shopOf(moves)).get("p")?.count ?? 0n)).toBe("4.5");
  });

  it("keeps revisions and sites apart: a count without a site is of all of them", () => {
    const shop = shopOf([
      { id: "a", day: "2027-01-04", part: "p", revision: "A", kind: "received", quantity: 3, site: "x" },
      { id: "b", day: "2027-01-05", part: "p", revision: "B", kind: "received", quantity: 4, site: "x" },
      { id: "c", day: "2027-01-05", part: "p", revision: "B", kind: "received", quantity: 2, site: "y" },
      { id: "d", day: "2027-01-06", part: "p", revision: "A", kind: "counted", quantity: 1 },
      { id: "e", day: "2027-01-06", part: "p", revision: "B", kind: "counted", quantity: 7, site: "y" },
    ]);
    const stock = stockOf(shop).get("p");
    expect(stock?.revisions.map((r) => [r.revision, textOfDecimal(r.count)])).toEqual([
      ["A", "1"],
      ["B", "11"],
    ]);
    expect(stock?.sites.map((s) => [s.siteId, textOfDecimal(s.count)])).toEqual([
      [null, "1"],
      ["x", "4"],
      ["y", "7"],
    ]);
    expect(
      [usableStock(stock, "B"), usableStock(stock, "C"), usableStock(undefined, "A")].map((q) =>
        textOfDecimal(q),
      ),
    ).toEqual(["11", "0", "0"]);
  });
});

it("expects of an order what has not come of it, and what is overdue today; a draft is no order", () => {
  const shop = createShop({
    orders: [
      { id: "o1", supplier: "s", day: "2026-12-01", due: "2026-12-20", state: "sent" },
      { id: "o2", supplier: "s", day: "2026-12-01", due: "2027-02-01", state: "draft" },
    ],
    order_lines: [
      { order: "o1", part: "p", quantity: 10 },
      { order: "o1", part: "q", quantity: 4 },
      { order: "o2", part: "p", quantity: 99 },
    ],
    movements: [
      { id: "m", day: "2026-12-21", part: "p", kind: "received", quantity: 7, order: "o1" },
      { id: "n", day: "2026-12-21", part: "q", kind: "received", quantity: 4, order: "o1" },
    ],
  });
  const found = openReceipts(shop, day("2027-01-04"));
  expect(found.map((r) => [r.orderId, r.partId, textOfDecimal(r.quantity), r.dueDay])).toEqual([
    ["o1", "p", "3", day("2027-01-04")],
  ]);
});
