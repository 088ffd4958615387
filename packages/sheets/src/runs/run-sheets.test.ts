import { emptyShop } from "@pinwright/book";
import { dayNumber, type LineResult, planRuns, type RunsPlan, variantOf } from "@pinwright/engine";
import { numberOfDecimal } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import { leavesOf } from "../compose/leaves.ts";
import { OPTIONS, woodenLine } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { RUN_SHEET_KINDS } from "./identity.ts";
import { composeRunSheets, runSheetNames } from "./run-sheets.ts";

/** First-light with a run of 25 machines that is in time and one of 40 that is not, on two stages. */
let line: Pick<LineResult, "machine">;
let plan: RunsPlan;
beforeAll(async () => {
  const whole = await woodenLine();
  const { book, shop } = whole.machine;
  const usual = variantOf(whole);
  const blank = { label: "", label_zh: "", begin: "", confidence_pct: 95, spare_years: 5, remark: "" };
  const stage = { label_zh: "", after: [], benches: [], batch: 1, wait_hours: 0, most_per_day: null };
  const bench = { label: "", label_zh: "", site: null, people: 2, hours_day: 8, rate: null };
  const tables = {
    ...emptyShop().tables,
    ...shop.tables,
    runs: [
      {
        ...blank,
        id: "run.spring",
        book: book.machine.id,
        machines: 25,
        ship: "2027-05-28",
        state: "planned" as const,
      },
      {
        ...blank,
        id: "run.now",
        book: book.machine.id,
        machines: 40,
        ship: "2026-12-02",
        state: "planned" as const,
      },
    ],
    benches: [{ ...bench, id: "bench", kind: "assembly" as const }],
    stages: [
      { ...stage, id: "build", label: "Put together on the bench", kind: "assembly" as const, minutes: 240 },
      { ...stage, id: "rest", label: "Burnt in", kind: "transport" as const, minutes: 0, after: ["build"] },
    ],
  };
  line = { machine: { ...whole.machine, shop: { ...shop, tables } } };
  plan = planRuns({
    book,
    shop: line.machine.shop,
    today: dayNumber("2026-11-30") ?? 0,
    variants: new Map([[usual.optionIds.join(" "), usual]]),
  });
});

describe.each(["en", "zh", "both"] as const satisfies readonly SheetLanguage[])(
  "sheets of runs in %s",
  (language) => {
    test("are there under their names, with nothing over another and nothing outside the frame", () => {
      const documents = [...composeRunSheets(plan, line, { ...OPTIONS, language })];
      expect(documents.map((d) => d.id)).toEqual(runSheetNames(plan, language));
      expect(documents.length).toBeGreaterThan(RUN_SHEET_KINDS.length);
      expect(documents.flatMap(overlapLines)).toEqual([]);
      expect(documents.flatMap(strayLines)).toEqual([]);
    });
  },
);

test("an order says what its lines are, in figures that add up", () => {
  const orders = [...composeRunSheets(plan, line, OPTIONS, { kinds: ["purchase-order"] })];
  expect(orders.length).toBe(plan.orders.length);
  for (const [i, document] of orders.entries()) {
    const amounts = (document.grids[0]?.rows ?? []).map((row) => Number(row[9]));
    const total = amounts.reduce((sum, amount) => sum + amount, 0);
    expect(total).toBeCloseTo(numberOfDecimal(plan.orders[i]?.total.value ?? 0n), 6);
  }
});

test("one run has its own lists, and the orders that are for it", () => {
  const names = runSheetNames(plan, "en", { runId: "run.now", kinds: ["run-cost", "run-shortages"] });
  expect(names).toEqual(["runs.run-shortages-run.now.en", "runs.run-cost-run.now.en"]);
});

test("the schedule says that a run is late, and what holds it", () => {
  const [document] = [...composeRunSheets(plan, line, OPTIONS, { kinds: ["run-schedule"] })];
  const texts = (document?.pages ?? []).flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])),
  );
  expect(texts.join(" ")).toMatch(/\d+ days late/u);
  expect(document?.grids[0]?.rows.map((row) => row[0])).toEqual([
    "run.now",
    "run.now",
    "run.spring",
    "run.spring",
  ]);
});

test("a shop without runs has no sheets of them", () => {
  const none = { ...plan, runs: [] };
  expect([...composeRunSheets(none, line, OPTIONS)]).toEqual([]);
});
