import { decimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { runPrices } from "../asks/run-more.ts";
import { runPlan, runsFigures } from "../asks/run-plan.ts";
import type { Model } from "../model.ts";
import { ExampleModel } from "../testing/example-model.ts";
import { billCosts } from "../views/bill-costs.ts";
import { billNodes } from "../views/bill-nodes.ts";
import { partAbout } from "../views/part-about.ts";
import { placedOrders } from "../views/placed-orders.ts";
import { stock, stockHistory } from "../views/stock.ts";
import { planned, variants } from "./planned.ts";

const base = new ExampleModel().now;
const RUN = {
  id: "spring",
  label: "Spring",
  label_zh: "",
  book: base.book.machine.id,
  machines: 10,
  ship: "2027-06-25",
  begin: "",
  state: "planned",
  confidence_pct: 95,
  spare_years: 0,
  remark: "",
} as const;
const MOVED = {
  id: "mv.1",
  day: "2026-11-02",
  part: "p.coil-short",
  revision: "",
  kind: "received",
  quantity: 4,
  run: null,
  stage: null,
  order: "po.1",
  site: null,
  reason: "",
  by: "",
} as const;
const ORDER = {
  id: "po.1",
  supplier: "trade-counter",
  day: "2026-11-01",
  due: "2026-11-15",
  run: null,
  state: "sent",
  remark: "",
} as const;
const LINE = { order: "po.1", part: "p.coil-short", revision: "", quantity: 10, price: 6.5 } as const;

const model: Model = {
  ...base,
  shop: {
    ...base.shop,
    tables: {
      ...base.shop.tables,
      runs: [RUN],
      movements: [MOVED, { ...MOVED, id: "mv.2", day: "2026-11-03", kind: "used", quantity: 5, order: null }],
      orders: [ORDER],
      order_lines: [LINE],
    },
  },
};
const USUAL = { today: "2026-11-30", change: null } as const;

describe("plans", () => {
  it("are made once for a question, and anew for another", () => {
    expect(variants.missing(model)).toEqual([]);
    const { plan } = planned(model, USUAL);
    expect(planned(model, { ...USUAL }).plan).toBe(plan);
    expect(planned(model, { ...USUAL, today: "2026-12-01" }).plan).not.toBe(plan);
    const more = planned(model, { ...USUAL, change: { runId: "spring", machines: 40 } });
    expect(more.plan.costs[0]?.machines).toBe(40);
    expect(plan.costs[0]?.machines).toBe(10);
    expect(() => planned(model, { ...USUAL, today: "soon" })).toThrow("soon");
  });

  it("name everything that a run needs, and whole needs are met by stock, orders and what is still to get", () => {
    const plan = runPlan(model, { ...USUAL, runId: "spring" });
    expect(plan.needs.length).toBeGreaterThan(20);
    for (const { partId, gross, fromStock, fromOrders, net } of plan.needs) {
      expect(plan.parts.has(partId)).toBe(true);
      expect(fromStock + fromOrders + net).toBe(gross);
    }
    expect(runsFigures(model, USUAL).costs).toEqual([plan.cost]);
    const frozen = runPrices(model, { ...USUAL, runId: "spring" });
    expect(frozen.find(({ key }) => key.part === "p.coil-short")).toMatchObject({
      key: { run: "spring", supplier: "trade-counter" },
      cells: { price: "6.5" },
    });
  });
});

describe("stock and orders", () => {
  it("follow from the movements, and of an order the rest is still to come", () => {
    expect(stock.entries(model, null).get("p.coil-short")).toMatchObject({
      count: decimal(-1),
      lastDay: "2026-11-03",
    });
    expect(stock.entries(model, null).get("p.leaf-switch")?.count).toBeNull();
    const balances = [...stockHistory.entries(model, { id: "p.coil-short" }).values()];
    expect(balances.map(({ balance, isBelowZero }) => [balance, isBelowZero])).toEqual([
      [decimal(4), false],
      [decimal(-1), true],
    ]);
    const order = placedOrders.entries(model, { runId: "spring" }).get("po.1");
    expect(order?.lines.map(({ open }) => open)).toEqual([decimal(6)]);
    expect(order?.total).toBe(decimal(65));
  });
});

describe("the bill", () => {
  it("has assemblies before loose parts, and says of each where it is used", () => {
    const nodes = billNodes.entries(model, null);
    const kinds = nodes.get("machine")?.inside.map(({ childId }) => nodes.get(childId)?.kind);
    expect(kinds?.indexOf("part")).toBeGreaterThan(kinds?.lastIndexOf("harness") ?? 0);
    const about = partAbout.entries(model, { id: "p.contact-25" }).get("");
    const total = about?.usedIn.reduce((sum, use) => sum + (use.total ?? 0n), 0n);
    expect(total).toBe(nodes.get("p.contact-25")?.total);
    expect(partAbout.entries(model, { id: "none" }).size).toBe(0);
  });

  it("costs less a machine when more are made", () => {
    const at = (machines: number) => billCosts.entries(model, { machines }).get("machine")?.each.value ?? 0n;
    expect(at(500)).toBeLessThan(at(1));
  });
});
