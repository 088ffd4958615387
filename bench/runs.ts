/**
 * Plans of runs: Tidewatch's own, the same with a thousand machines, its cost against quantity; and an invented machine
 * of 750, 3,000 and 12,000 parts in twelve runs over two years. `npx tsx bench/runs.ts`
 */
import { join } from "node:path";
import { type BookRow, emptyShop, type ShopRow } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  type Bill,
  type BillLine,
  type BillNode,
  changeRun,
  costAgainstQuantity,
  dayNumber,
  dayText,
  Line,
  type MachineVariant,
  type PlanInput,
  planRuns,
  runMixes,
  variantOf,
} from "@pinwright/engine";
import { decimal, seededRandom } from "@pinwright/kernel";
import { figures, once, tenth, writeResults } from "./measure.ts";

const TODAY = dayNumber("2026-11-30") ?? 0;
const TIMES = 3;
const rows: Record<string, string | number>[] = [];

const measured = (what: string, work: () => unknown): number => {
  const row = figures(
    what,
    Array.from({ length: TIMES }, () => once(work)),
  );
  rows.push(row);
  return Number(row.least_cpu_ms);
};

const { book, shop: ownShop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const shop = ownShop ?? emptyShop();
const line = new Line();
const variants = new Map<string, MachineVariant>();
for (const { key, optionIds } of runMixes(book, shop))
  if (!variants.has(key)) variants.set(key, variantOf(line.run(book, shop, new Set(optionIds))));
const input: PlanInput = { book, shop, today: TODAY, variants };

measured("Tidewatch's runs, 125 machines in three sets of options", () => planRuns(input));
const [largest] = [...shop.tables.runs].sort((a, b) => b.machines - a.machines);
const thousand = changeRun(shop, { runId: largest?.id ?? "", machines: 1000, ship: "2029-11-30" });
measured("the same with a run of a thousand", () => planRuns({ ...input, shop: thousand }));
measured("cost of a machine at 10, 25, 100 and 1,000", () => costAgainstQuantity(input, largest?.id ?? null));

/** A first row of a table, to make others like it. */
function like<R>(list: readonly R[]): R {
  const [first] = list;
  if (first === undefined) throw new Error("Tidewatch has no such row");
  return first;
}

/** Assemblies of the invented machine, by kind. */
const ASSEMBLIES = ["harness", "board", "mechanism"] as const;
const EACH = 30;

/** A machine of so many bought parts, in assemblies and by themselves. */
function inventedBill(parts: readonly BookRow<"parts">[], random: () => number): Bill {
  const labels = { en: "", zh: "" };
  const nodes = new Map<string, BillNode>([
    ["machine", { id: "machine", kind: "machine", partId: null, labels, unit: "each" }],
  ]);
  const lines: BillLine[] = [];
  const add = (parentId: string, childId: string, why: BillLine["why"], count: number): void => {
    lines.push({ parentId, childId, why, colour: "", quantity: decimal(count), at: [] });
  };
  for (const kind of ASSEMBLIES)
    for (let i = 0; i < EACH; i++) {
      const id = `${kind}:${i}`;
      nodes.set(id, { id, kind, partId: null, labels, unit: "each" });
      add("machine", id, kind, 1);
    }
  for (const part of parts) {
    nodes.set(part.id, { id: part.id, kind: "part", partId: part.id, labels, unit: "each" });
    const kind = ASSEMBLIES[Math.floor(random() * 4)];
    const parentId = kind === undefined ? "machine" : `${kind}:${Math.floor(random() * EACH)}`;
    add(parentId, part.id, kind === "board" ? "placement" : "bom", 1 + Math.floor(random() * 12));
  }
  const totals = new Map([...nodes.keys()].map((id) => [id, decimal(1)]));
  for (const own of lines) totals.set(own.childId, own.quantity);
  const order = [
    ...parts.map((part) => part.id),
    ...[...nodes.keys()].filter((id) => id.includes(":")),
    "machine",
  ];
  return { nodes, lines, totals, order, circles: [] };
}

/** Twelve runs of 10 to 100 machines, one every two months, of a machine of so many parts with three prices each. */
function invented(count: number): PlanInput {
  const random = seededRandom(7);
  const parts = Array.from({ length: count }, (_, i) => ({
    ...like(book.tables.parts),
    id: `p${String(i).padStart(5, "0")}`,
    kind: "electronic" as const,
    source: "buy" as const,
    fails_per_year: i % 10 === 0 ? 0.02 : null,
  }));
  const suppliers = shop.tables.suppliers;
  const prices = parts.flatMap(({ id }): ShopRow<"prices">[] => {
    const supplier = suppliers[Math.floor(random() * suppliers.length)]?.id ?? "";
    const price = 0.05 + random() * 20;
    const pack = [1, 1, 10, 100][Math.floor(random() * 4)] ?? 1;
    return [0, 50 * pack, 500 * pack].map((from_quantity, i) => ({
      ...like(shop.tables.prices),
      part: id,
      supplier,
      from_quantity,
      price: Math.round(price * (1 - 0.12 * i) * 10_000) / 10_000,
      pack,
      lead_days: 5 + Math.floor(random() * 50),
    }));
  });
  const runs = Array.from({ length: 12 }, (_, i) => ({
    ...like(shop.tables.runs),
    id: `run-${String(i).padStart(2, "0")}`,
    machines: 10 + Math.floor(random() * 91),
    ship: dayText(TODAY + 180 + 61 * i),
    state: "planned" as const,
  }));
  const [usual] = variants.values();
  if (usual === undefined) throw new Error("Tidewatch has no machine");
  const variant = { ...usual, bill: inventedBill(parts, random), sheetUse: new Map() };
  const none = { run_mix: [], orders: [], order_lines: [], movements: [], ways: [], run_prices: [] };
  return {
    book: { ...book, tables: { ...book.tables, parts, dimensions: [], tooling: [] } },
    shop: { ...shop, tables: { ...shop.tables, ...none, prices, runs } },
    today: TODAY,
    variants: new Map([...variants.keys(), usual.optionIds.join(" ")].map((key) => [key, variant])),
  };
}

const times = [750, 3000, 12_000].map((count) => {
  const asked = invented(count);
  const plan = planRuns(asked);
  const ms = measured(`twelve runs over two years, ${count} parts`, () => planRuns(asked));
  const open = plan.lots.filter((lots) => lots.lowerBound < lots.cost).length;
  rows.push({ what: `  lots of ${plan.lots.length} parts, of which not proven`, value: open });
  return ms;
});
times.forEach((ms, i) => {
  const before = times[i - 1];
  if (before !== undefined)
    rows.push({
      what: `growth from ${4 ** (i - 1)} to ${4 ** i} times, as a power`,
      value: tenth(Math.log(ms / before) / Math.log(4)),
    });
});
writeResults("runs", rows);
