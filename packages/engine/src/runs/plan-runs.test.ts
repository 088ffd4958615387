import { numberOfDecimal, textOfDecimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { costAgainstQuantity } from "./against-quantity.ts";
import { changeRun } from "./change.ts";
import { comparePlans, compareRuns } from "./compare-plans.ts";
import { dayText } from "./days.ts";
import { frozenPrices } from "./frozen-prices.ts";
import { planRuns } from "./plan-runs.ts";
import { shortages } from "./shortages.ts";
import { createInput, needTexts, PLAIN, TODAY, type Workshop } from "./testing/workshop.ts";

const inDays = (days: number): string => dayText(TODAY + days);

/** A machine of two boards, a tool and screws, for two runs on two stages. */
const workshop: Workshop = {
  book: {
    parts: [
      { id: "screw", kind: "screw" },
      { id: "bat", kind: "moulded", source: "have-made", revision: "B" },
      { id: "coil", kind: "bought-in", fails_per_year: 0.01, scrap_pct: 5 },
    ],
    bom: [
      { parent: null, part: "screw", quantity: 30 },
      { parent: null, part: "bat", quantity: 2 },
      { parent: null, part: "coil", quantity: 4 },
    ],
    tooling: [{ id: "mould", part: "bat", cost: 900, life: 500, lead_days: 30 }],
  },
  shop: {
    runs: [
      { id: "a", book: "test", machines: 20, ship: inDays(120), spare_years: 5 },
      { id: "b", book: "test", machines: 50, ship: inDays(300), spare_years: 5 },
    ],
    suppliers: [
      { id: "s", currency: "EUR", lead_days: 10, shipping: 12 },
      { id: "m", currency: "CNY", lead_days: 20, deposit_pct: 30, payment_days: 0 },
    ],
    currencies: [
      { id: "EUR", own: "yes" },
      { id: "CNY", rate: 0.128 },
    ],
    prices: [
      { part: "screw", supplier: "s", from_quantity: 0, price: 0.035, pack: 200 },
      { part: "screw", supplier: "s", from_quantity: 2000, price: 0.021, pack: 200 },
      { part: "bat", supplier: "m", from_quantity: 0, price: 6.5 },
      { part: "coil", supplier: "s", from_quantity: 0, price: 7.25 },
    ],
    ways: [{ part: "bat", way: "moulded", kind: "have-made", supplier: "m", tooling: "mould" }],
    benches: [
      { id: "x", people: 2, kind: "assembly" },
      { id: "y", people: 1, kind: "test", rate: 45 },
    ],
    stages: [
      { id: "build", kind: "assembly" },
      { id: "try", kind: "test", minutes: 60, after: ["build"] },
    ],
  },
  minutes: { assembly: 400 },
  numbers: { ...PLAIN, kit_days: 2, order_cost: 15 },
};
const input = createInput(workshop);
const plan = planRuns(input);

describe("a plan", () => {
  it("asks for spares that last, and for what gets spoilt by a part's own share", () => {
    // 80 good ones of which 5 % are spoilt: 80 × 5 ÷ 95 = 4.2. 20 machines × 4 coils × 0.01 × 5 years = 4 failures: 8
    // spares at 95 % (Poisson's law).
    const coils = plan.needs.filter((need) => need.partId === "coil" && need.runId === "a");
    expect(coils.map((n) => [n.build, n.scrap, n.spares].map((q) => textOfDecimal(q)))).toEqual([
      ["80", "5", "0"],
      ["0", "0", "8"],
    ]);
  });

  it("buys a tool once, in time for the first lot, and shares its cost between the machines", () => {
    expect(plan.tools.map((tool) => [tool.toolingId, tool.count, textOfDecimal(tool.cost ?? 0n)])).toEqual([
      ["mould", 1, "900"],
    ]);
    const [tool] = plan.tools;
    const bats = plan.lots.find((lots) => lots.partId === "bat");
    expect(tool?.dueDay).toBeLessThanOrEqual(bats?.orders[0]?.orderDay ?? 0);
    const tooling = plan.costs.map(
      (cost) => (cost.kinds.find(({ kind }) => kind === "tooling")?.each ?? 0n) * BigInt(cost.machines),
    );
    expect(tooling.reduce((sum, own) => sum + numberOfDecimal(own), 0)).toBeCloseTo(900, 4);
  });

  it("pays a deposit with the order and the rest with the delivery", () => {
    const order = plan.orders.find((own) => own.supplierId === "m");
    const own = numberOfDecimal(order?.ownTotal.value ?? 0n);
    expect(own).toBeCloseTo(numberOfDecimal(order?.total.value ?? 0n) * 0.128, 1);
    const first = plan.cash.find(
      (week) => week.week <= (order?.orderDay ?? 0) && week.week + 7 > (order?.orderDay ?? 0),
    );
    expect(numberOfDecimal(first?.material ?? 0n)).toBeGreaterThanOrEqual(0.3 * own - 0.01);
  });

  it("costs less for more machines, and more work for the first of them", () => {
    const costs = costAgainstQuantity(input, "a", [1, 10, 100]);
    expect(costs.map((cost) => cost.machines)).toEqual([1, 10, 100]);
    const each = costs.map((cost) => numberOfDecimal(cost.each.value));
    expect([...each].sort((x, y) => y - x)).toEqual(each);
    expect(costs.flatMap((cost) => cost.each.missing)).toEqual([]);
  });
});

describe("what would be if", () => {
  it("is the same plan where nothing is changed, and another where something is", () => {
    expect(planRuns({ ...input, shop: changeRun(input.shop, {}) })).toEqual(plan);
    const more = planRuns({ ...input, shop: changeRun(input.shop, { runId: "a", machines: 40 }) });
    const dearer = planRuns({ ...input, shop: changeRun(input.shop, { pricesPct: 110 }) });
    const pair = comparePlans(plan, more);
    expect(pair.runs.map((run) => [run.a?.machines, run.b?.machines])).toEqual([
      [20, 40],
      [50, 50],
    ]);
    expect(pair.outlay.b).toBeGreaterThan(pair.outlay.a);
    expect(comparePlans(plan, dearer).outlay.b).toBeGreaterThan(pair.outlay.a);
    expect(pair.cash.at(-1)).toEqual({ week: pair.cash.at(-1)?.week, a: pair.outlay.a, b: pair.outlay.b });
  });

  it("sets two runs side by side, with what makes the difference first", () => {
    const { a, b, contributors } = compareRuns(plan, "a", "b");
    expect([a?.machines, b?.machines]).toEqual([20, 50]);
    expect(contributors[0]?.id).toBe("stage:build");
    expect(compareRuns(plan, "a", "none").b).toBeNull();
  });
});

describe("a frozen run", () => {
  it("keeps its prices when those of today change, and other runs do not", () => {
    const frozen = frozenPrices(input, plan, "a");
    expect(frozen.map((row) => [row.part, row.from_quantity, row.rate])).toEqual([
      ["bat", 0, 0.128],
      ["coil", 0, 1],
      ["screw", 0, 1],
      ["screw", 2000, 1],
    ]);
    const { tables } = input.shop;
    const shop = {
      ...input.shop,
      tables: {
        ...tables,
        run_prices: frozen,
        runs: tables.runs.map((run) => (run.id === "a" ? { ...run, state: "frozen" as const } : run)),
        prices: tables.prices.map((row) => ({ ...row, price: row.price * 2 })),
      },
    };
    const after = planRuns({ ...input, shop });
    const coil = (of: typeof plan, runId: string) =>
      of.costs.find((cost) => cost.runId === runId)?.contributors.find((own) => own.id === "coil")?.each;
    expect(coil(after, "a")).toBe(coil(plan, "a"));
    expect(coil(after, "b")).toBe((coil(plan, "b") ?? 0n) * 2n);
  });
});

describe("what is lacking", () => {
  it("is told stage by stage with its last day to order; what is there is not", () => {
    const { tables } = input.shop;
    const [movement] = createInput({
      ...workshop,
      shop: {
        ...workshop.shop,
        movements: [{ id: "m", day: inDays(-1), part: "screw", kind: "counted", quantity: 600 }],
      },
    }).shop.tables.movements;
    const shop = {
      ...input.shop,
      tables: { ...tables, movements: movement === undefined ? [] : [movement] },
    };
    const stocked = planRuns({ ...input, shop });
    expect(needTexts(stocked).filter((text) => text.startsWith("a screw"))).toEqual([
      "a screw: 600 - 600 - 0 = 0",
    ]);
    const short = shortages({ ...input, shop }, stocked, "a");
    expect(short.map((own) => [own.stageId, own.partId])).toEqual([
      ["build", "bat"],
      ["build", "coil"],
      [null, "coil"],
    ]);
    for (const own of short) expect(own.orderDay).toBeLessThan(own.neededDay);
    expect(shortages({ ...input, shop }, stocked, "a", true)).toHaveLength(4);
  });

  it("is taken off what was kitted for a run already", () => {
    const building = createInput({
      ...workshop,
      shop: {
        ...workshop.shop,
        movements: [
          { id: "m", day: inDays(-2), part: "screw", kind: "counted", quantity: 500 },
          {
            id: "k",
            day: inDays(-1),
            part: "screw",
            kind: "kitted",
            quantity: 400,
            run: "a",
            stage: "build",
          },
        ],
      },
    });
    expect(needTexts(planRuns(building)).filter((text) => text.startsWith("a screw"))).toEqual([
      "a screw: 600 - 500 - 0 = 100",
    ]);
  });
});

describe("bad input", () => {
  it("plans what it can, and names what the cost of a machine lacks", () => {
    const { shop, book } = workshop;
    const bad = createInput({
      ...workshop,
      book: {
        ...book,
        parts: [...(book.parts ?? []), { id: "ghost" }, { id: "own", source: "make" }],
        bom: [
          ...(book.bom ?? []),
          { parent: null, part: "ghost", quantity: 1 },
          { parent: null, part: "own", quantity: 1 },
        ],
      },
      shop: {
        ...shop,
        stages: [...(shop.stages ?? []), { id: "brood", kind: "pack", benches: [] }],
        runs: [{ id: "a", book: "test", machines: 5, ship: inDays(-3) }, ...(shop.runs ?? []).slice(1)],
      },
      minutes: { assembly: 400, pack: null },
    });
    const found = planRuns(bad);
    expect([...new Set(found.findings.map((f) => f.rule))].sort()).toEqual(["need-unsourced", "run-past"]);
    expect(found.costs[0]?.each.missing).toEqual([
      { lack: "no-minutes", id: "brood" },
      { lack: "no-price", id: "ghost" },
      { lack: "no-source", id: "own" },
    ]);
    expect(found.costs[0]?.each.value).toBeGreaterThan(0n);
  });

  it("is no plan at all for a shop without runs, and one without days for a shop without stages", () => {
    const none = planRuns(createInput({ ...workshop, shop: { ...workshop.shop, runs: [] } }));
    expect([none.runs, none.orders, none.cash, none.findings]).toEqual([[], [], [], []]);
    const plain = planRuns(createInput({ ...workshop, shop: { ...workshop.shop, stages: [] } }));
    expect(plain.runs.map((run) => [run.startDay, run.isLate])).toEqual([
      [null, false],
      [null, false],
    ]);
    expect(plain.findings.map((f) => f.rule)).toEqual(["stage-capacity"]);
  });
});
