import { textOfDecimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { dayText } from "./days.ts";
import { planRuns } from "./plan-runs.ts";
import { createInput, needTexts, PLAIN, TODAY } from "./testing/workshop.ts";

const week = (w: number): string => dayText(TODAY + 7 * w);

/** One part in each machine, and a run for each demand, so many days apart. */
const onePart = (demand: readonly number[], everyDays: number) => ({
  book: { parts: [{ id: "p" }], bom: [{ parent: null, part: "p", quantity: 1 }] },
  runs: demand.map((machines, k) => ({
    id: `r${String(k + 1).padStart(2, "0")}`,
    book: "test",
    machines,
    ship: dayText(TODAY + 70 + everyDays * k),
  })),
});

describe("netting", () => {
  it("plans the releases of an item with stock and a lead time of two weeks", () => {
    // On hand 120, lead time 2, lot for lot; data from a published worked example of requirements planning, releases
    // by its rule: the stock lasts two weeks and 0 is left after the third.
    const demand = [41, 44, 84, 42, 84, 86, 7, 18, 49, 30];
    const { book } = onePart(demand, 7);
    const runs = demand.map((machines, k) => ({
      id: `r${String(k + 1).padStart(2, "0")}`,
      book: "test",
      machines,
      ship: week(k + 1),
    }));
    const plan = planRuns(
      createInput({
        book,
        shop: {
          runs,
          suppliers: [{ id: "s", currency: "EUR", lead_days: 14 }],
          prices: [{ part: "p", supplier: "s", from_quantity: 0, price: 1 }],
          movements: [{ id: "m", day: week(0), part: "p", kind: "counted", quantity: 120 }],
        },
      }),
    );
    const left = plan.needs.map(({ fromStock }) => Number(textOfDecimal(fromStock)));
    expect(left).toEqual([41, 44, 35, 0, 0, 0, 0, 0, 0, 0]);
    expect(
      plan.orders.map(({ orderDay, lines }) => [
        (orderDay - TODAY) / 7,
        textOfDecimal(lines[0]?.quantity ?? 0n),
      ]),
    ).toEqual([49, 42, 84, 86, 7, 18, 49, 30].map((quantity, k) => [k + 1, String(quantity)]));
    expect(plan.runs.every((run) => !run.isLate)).toBe(true);
  });

  it("takes what is on hand and on order off the gross needs", () => {
    // Gross 150, 195, 240; on hand 150; 50 come in the second period: net 0, 145, 240 (published worked example).
    const demand = [150, 195, 240];
    const { book, runs } = onePart(demand, 7);
    const plan = planRuns(
      createInput({
        book,
        shop: {
          runs,
          suppliers: [{ id: "s", currency: "EUR" }],
          movements: [{ id: "m", day: week(0), part: "p", kind: "counted", quantity: 150 }],
          orders: [{ id: "o", supplier: "s", day: week(0), due: runs[1]?.ship ?? "", state: "confirmed" }],
          order_lines: [{ order: "o", part: "p", quantity: 50, price: 1 }],
        },
      }),
    );
    expect(needTexts(plan)).toEqual([
      "r01 p: 150 - 150 - 0 = 0",
      "r02 p: 195 - 0 - 50 = 145",
      "r03 p: 240 - 0 - 0 = 240",
    ]);
  });

  it("explodes a product into what its parts take", () => {
    // 59 Z; Z = 2 A + 3 B; A = 4 C + 4 D; D = 2 E: 118 A, 177 B, 472 C, 472 D, 944 E (published worked example).
    const make = (id: string) => ({ id, source: "make" as const });
    const plan = planRuns(
      createInput({
        book: {
          parts: [make("z"), make("a"), { id: "b" }, { id: "c" }, make("d"), { id: "e" }],
          bom: [
            { parent: null, part: "z", quantity: 1 },
            { parent: "z", part: "a", quantity: 2 },
            { parent: "z", part: "b", quantity: 3 },
            { parent: "a", part: "c", quantity: 4 },
            { parent: "a", part: "d", quantity: 4 },
            { parent: "d", part: "e", quantity: 2 },
          ],
        },
        shop: { runs: [{ id: "r", book: "test", machines: 59, ship: week(20) }] },
      }),
    );
    const gross = Object.fromEntries(plan.needs.map((need) => [need.partId, textOfDecimal(need.gross)]));
    expect(gross).toEqual({ z: "59", a: "118", b: "177", c: "472", d: "472", e: "944" });
  });
});

describe("lots of a shop with one part", () => {
  it.each([
    // L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, example 3.9: holding 2.
    { name: "four periods", demand: [90, 120, 80, 70], order: 500, price: 10, cost: 1380 },
    // The same book, problem 3.29: holding 0.1, orders 100.
    { name: "five periods", demand: [730, 580, 445, 650, 880], order: 100, price: 0.5, cost: 423 },
    // W. J. Hopp and M. L. Spearman, Factory Physics, section 2.3.3; costs and value from memory: holding 1.
    {
      name: "ten weeks",
      demand: [20, 50, 10, 50, 50, 10, 20, 40, 20, 30],
      order: 100,
      price: 5,
      cost: 580,
    },
    // S. Nahmias, Production and Operations Analysis, example of Silver and Meal's rule; attribution from memory.
    { name: "five weeks", demand: [18, 30, 42, 5, 20], order: 80, price: 10, cost: 310 },
  ])("$name", ({ demand, order, price, cost }) => {
    // Periods of a year, so that a fifth of the price is what holding costs from one to the next.
    const { book, runs } = onePart(demand, 365);
    const plan = planRuns(
      createInput({
        book,
        shop: {
          runs,
          suppliers: [{ id: "s", currency: "EUR", order_cost: order }],
          prices: [{ part: "p", supplier: "s", from_quantity: 0, price }],
        },
        numbers: { ...PLAIN, holding_pct: 20 },
      }),
    );
    const [lots] = plan.lots;
    const units = demand.reduce((sum, d) => sum + d, 0) * price;
    expect(Number(textOfDecimal(lots?.cost ?? 0n))).toBeCloseTo(cost + units, 6);
    expect(lots?.lowerBound).toBe(lots?.cost);
  });
});
