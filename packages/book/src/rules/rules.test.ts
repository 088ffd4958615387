import { describe, expect, test } from "vitest";
import { filesOf, readBookFiles, writeBookFiles } from "../csv/files.ts";
import type { AnyRow } from "../read/raw.ts";
import { sampleBook, sampleShop } from "../testing/sample.ts";
import { isDay } from "./day.ts";
import { BOOK_RULES } from "./index.ts";
import { onCircle } from "./no-circle.ts";
import { SHOP_RULES } from "./shop.ts";

/** One way to break a rule: in this table, this row of the sample with these cells, or a further row. */
interface Breach {
  readonly table: string;
  /** Index of the row of the sample that is changed; null: a copy of row 0 with the cells is added. */
  readonly at: number | null;
  readonly cells: AnyRow;
  readonly column: string;
  readonly nearest?: string | null;
}

const BREACHES: readonly Breach[] = [
  { table: "cutouts", at: 0, cells: { width_mm: null }, column: "width_mm" },
  { table: "cutouts", at: 0, cells: { shape: "rect" }, column: "height_mm" },
  { table: "cutouts", at: 1, cells: { outline: null }, column: "outline" },
  { table: "cutouts", at: 0, cells: { height_mm: 21 }, column: "height_mm", nearest: "" },
  { table: "cutouts", at: 0, cells: { shape: "slot", height_mm: 21 }, column: "height_mm" },
  { table: "poses", at: 0, cells: { usual: "no" }, column: "usual" },
  { table: "poses", at: 1, cells: { usual: "yes" }, column: "usual", nearest: "no" },
  { table: "lanes", at: 0, cells: { to: "w1" }, column: "to" },
  { table: "lanes", at: 0, cells: { to: "w3" }, column: "to" },
  { table: "lanes", at: 0, cells: { classes: ["coil", "lamps"] }, column: "classes", nearest: "lamp" },
  { table: "crossings", at: 0, cells: { kind: "hole" }, column: "to" },
  { table: "crossings", at: 0, cells: { to: "w2" }, column: "to" },
  { table: "crossings", at: 0, cells: { classes: ["coils"] }, column: "classes", nearest: "coil" },
  { table: "board_types", at: 0, cells: { holes: "4, 4; 76,4" }, column: "holes", nearest: "4,4 76,4" },
  { table: "mechanism_fasteners", at: 0, cells: { child: "coil" }, column: "child" },
  {
    table: "mechanism_fasteners",
    at: 0,
    cells: { moments: "tigthen" },
    column: "moments",
    nearest: "tighten",
  },
  { table: "mechanism_numbers", at: 0, cells: { item: "flip.left" }, column: "item" },
  { table: "mechanism_steps", at: 0, cells: { min: 4 }, column: "max" },
  { table: "mechanism_steps", at: 0, cells: { nominal: 9 }, column: "nominal" },
  { table: "bodies", at: 0, cells: { mechanism_type: null }, column: "device_type" },
  { table: "bodies", at: 0, cells: { width_mm: null }, column: "width_mm" },
  { table: "bodies", at: 0, cells: { to_mm: 0 }, column: "to_mm" },
  { table: "inlines", at: 0, cells: { connector: "cn.lamp" }, column: "connector" },
  { table: "elements", at: 0, cells: { device_type: null }, column: "device_type" },
  { table: "elements", at: 0, cells: { board_type: "bt.driver" }, column: "device_type" },
  { table: "elements", at: 0, cells: { to: "com" }, column: "to" },
  { table: "connector_families", at: 0, cells: { area_min_mm2: 0.6 }, column: "area_max_mm2" },
  { table: "connector_families", at: 0, cells: { insulation_min_mm: 3 }, column: "insulation_max_mm" },
  { table: "connectors", at: 1, cells: { board_type: "bt.driver" }, column: "device_type" },
  { table: "connectors", at: 2, cells: { name: "P.F" }, column: "name", nearest: "pf" },
  { table: "connectors", at: null, cells: { id: "cn.other" }, column: "name" },
  {
    table: "connectors",
    at: null,
    cells: { id: "cn.other", board_type: null, device_type: "microswitch", name: "com" },
    column: "name",
  },
  { table: "pins", at: 0, cells: { pin: 7 }, column: "pin", nearest: "6" },
  { table: "pins", at: 0, cells: { class: "coils" }, column: "class", nearest: "coil" },
  { table: "ends", at: 0, cells: { point: "brd.driver:j1.4" }, column: "point" },
  { table: "fuses", at: 0, cells: { to: "brd.driver:j1.1" }, column: "to" },
  { table: "fasteners", at: 0, cells: { moments: "start start" }, column: "moments", nearest: "start" },
  { table: "step_rules", at: 0, cells: { first_item: null }, column: "first_item" },
  { table: "step_rules", at: 0, cells: { then_harness: "h.pf" }, column: "then_item" },
  { table: "steps", at: 0, cells: { after: ["st.2"] }, column: "after" },
  { table: "steps", at: 1, cells: { after: ["st.2"] }, column: "after" },
  { table: "tests", at: 0, cells: { board_type: null }, column: "board_type" },
  { table: "tests", at: 0, cells: { harness: "h.pf" }, column: "harness", nearest: "" },
  { table: "tests", at: 0, cells: { min: 5.05, max: 5 }, column: "max" },
  { table: "tests", at: 0, cells: { nominal: 4 }, column: "nominal" },
  { table: "tests", at: 0, cells: { nominal: 6 }, column: "nominal" },
  { table: "bom", at: null, cells: { parent: "p.screw", part: "p.mech" }, column: "part" },
  { table: "options", at: null, cells: { id: "mains-115" }, column: "usual", nearest: "no" },
  { table: "harnesses", at: null, cells: { id: "h.other" }, column: "number" },
  { table: "renames", at: 0, cells: { table: "device" }, column: "table", nearest: "devices" },
  { table: "renames", at: 0, cells: { old: "lamp.left" }, column: "old" },
  { table: "renames", at: 0, cells: { new: "sw.lefd" }, column: "new", nearest: "sw.left" },
  { table: "shop_settings", at: 0, cells: { id: "ties_min" }, column: "id", nearest: "tie_min" },
  { table: "shop_settings", at: 0, cells: { value: -1 }, column: "value", nearest: "1" },
  { table: "holders", at: 0, cells: { min_diameter_mm: 16 }, column: "max_diameter_mm" },
  { table: "calendars", at: 0, cells: { day: "2026-02-29" }, column: "day" },
  { table: "runs", at: 0, cells: { ship: "2027-02-30" }, column: "ship" },
  { table: "runs", at: 0, cells: { begin: "4 January" }, column: "begin" },
  { table: "runs", at: 0, cells: { ship: "2027-01-03" }, column: "ship" },
  { table: "orders", at: 0, cells: { day: "2026-13-01" }, column: "day" },
  { table: "orders", at: 0, cells: { due: "2027-02-29" }, column: "due" },
  { table: "orders", at: 0, cells: { due: "2027-01-03" }, column: "due" },
  { table: "movements", at: 0, cells: { day: "2027-1-14" }, column: "day" },
  { table: "samples", at: 0, cells: { asked: "2026-11-31" }, column: "asked" },
  { table: "samples", at: 0, cells: { received: "2026-00-04" }, column: "received" },
  { table: "samples", at: 0, cells: { decided: "soon" }, column: "decided" },
  { table: "suppliers", at: 0, cells: { currency: "EURO" }, column: "currency", nearest: "EUR" },
  { table: "currencies", at: 1, cells: { id: "USS" }, column: "id", nearest: "USD" },
  { table: "currencies", at: 1, cells: { own: "yes", rate: 1 }, column: "own", nearest: "no" },
  { table: "currencies", at: 0, cells: { rate: 2 }, column: "rate", nearest: "1" },
  { table: "run_mix", at: 0, cells: { machines: 26 }, column: "machines" },
  { table: "panel_sizes", at: 0, cells: { thickness_of: null }, column: "thickness_of" },
  { table: "panel_sizes", at: 0, cells: { thickness_of: "cabinet" }, column: "thickness_of" },
  { table: "fits", at: 0, cells: { min_mm: null, max_mm: null }, column: "min_mm" },
  { table: "fits", at: 0, cells: { min_mm: 6 }, column: "max_mm" },
  { table: "fit_terms", at: 0, cells: { panel: null }, column: "panel" },
  { table: "fit_terms", at: 1, cells: { nominal_mm: null }, column: "nominal_mm" },
  { table: "drawings", at: 0, cells: { file: "../mech.pdf" }, column: "file" },
  { table: "drawings", at: 0, cells: { sha256: "abc" }, column: "sha256" },
  { table: "tests", at: 5, cells: { order: 5 }, column: "order" },
  { table: "test_steps", at: 0, cells: { min: 13 }, column: "max" },
  { table: "test_steps", at: 0, cells: { test: "t.1" }, column: "test" },
  { table: "instruments", at: 0, cells: { calibrated_until: "2027-06-31" }, column: "calibrated_until" },
  { table: "instruments", at: 0, cells: { device: "/dev/ttyS0" }, column: "device" },
  { table: "instruments", at: 0, cells: { port: null }, column: "port" },
  { table: "instruments", at: 0, cells: { host: "" }, column: "port" },
  { table: "instruments", at: 1, cells: { device: "" }, column: "host" },
  { table: "instrument_measures", at: 0, cells: { query: "OUTP ON" }, column: "query" },
  { table: "instrument_measures", at: 0, cells: { query: "READ?;*RST" }, column: "query" },
  { table: "instrument_measures", at: 0, cells: { min: 61 }, column: "max" },
  { table: "instrument_measures", at: 0, cells: { instrument: "tester" }, column: "instrument" },
];

function breakSample({ table, at, cells }: Breach) {
  const [book, shop] = [sampleBook(), sampleShop()];
  const change = (
    tables: Readonly<Record<string, readonly Readonly<AnyRow>[]>>,
  ): Record<string, readonly AnyRow[]> => {
    const rows = tables[table];
    if (rows === undefined) return { ...tables };
    const changed =
      at === null
        ? [...rows, { ...rows[0], ...cells }]
        : rows.map((row, i) => (i === at ? { ...row, ...cells } : row));
    return { ...tables, [table]: changed };
  };
  // Only the cells of one row were exchanged for cells of the same columns.
  const files = writeBookFiles(
    { ...book, tables: change(book.tables) as unknown as typeof book.tables },
    { ...shop, tables: change(shop.tables) as unknown as typeof shop.tables },
  );
  return readBookFiles(filesOf(files)).faults;
}

describe("every rule finds its breach, and says nothing else", () => {
  test.each(BREACHES.map((breach, i) => ({ ...breach, i })))("$i $table $column", (breach) => {
    const faults = breakSample(breach).filter((fault) => fault.code === "row-rule");
    expect(new Set(faults.map((fault) => fault.column))).toEqual(new Set([breach.column]));
    for (const fault of faults) {
      expect(fault.file).toMatch(new RegExp(`^(shop/)?${breach.table}.csv$`));
      expect(fault.nearest).toBe(breach.nearest ?? null);
    }
  });

  test("every rule has a breach above", () => {
    const broken = new Set<unknown>();
    for (const breach of BREACHES) {
      for (const rule of [...BOOK_RULES, ...SHOP_RULES]) {
        if (rule.table === breach.table && rule.reads.includes(breach.column)) broken.add(rule);
      }
    }
    const without = [...BOOK_RULES, ...SHOP_RULES]
      .filter((rule) => !broken.has(rule))
      .map((rule) => rule.about);
    expect(without).toEqual([]);
  });
});

test("a point that has two nets in two harnesses is told", () => {
  const book = sampleBook();
  const [net] = book.tables.nets;
  const [end] = book.tables.ends.slice(1);
  const [harness] = book.tables.harnesses;
  if (net === undefined || end === undefined || harness === undefined) throw new Error("the sample has them");
  const tables = {
    ...book.tables,
    nets: [...book.tables.nets, { ...net, id: "net.other" }],
    harnesses: [...book.tables.harnesses, { ...harness, id: "h.two", number: 2 }],
    ends: [...book.tables.ends, { ...end, net: "net.other", harness: "h.two" }],
  };
  expect(readBookFiles(filesOf(writeBookFiles({ ...book, tables }))).faults).toMatchObject([
    { code: "row-rule", file: "ends.csv", row: 5, column: "net", value: "net.other", nearest: "net.coil" },
  ]);
});

test("a rule is silent where a cell that it reads was faulty", () => {
  const files = new Map(writeBookFiles(sampleBook()));
  files.set("cutouts.csv", (files.get("cutouts.csv") ?? "").replace(",20,", ",20 mm,"));
  expect(readBookFiles(filesOf(files)).faults.map((fault) => fault.code)).toEqual(["number-unit"]);
});

test("circles are found whole, and nothing that only leads to one", () => {
  const graph = new Map([
    ["a", ["b"]],
    ["b", ["c"]],
    ["c", ["b", "d"]],
    ["d", []],
    ["e", ["e"]],
  ]);
  expect([...onCircle(graph)].sort()).toEqual(["b", "c", "e"]);
  const long = new Map(Array.from({ length: 100_000 }, (_, i) => [`n${i}`, [`n${i + 1}`]] as const));
  expect(onCircle(long).size).toBe(0);
});

// Gregorian rule: years divisible by 4 are leap years, those by 100 are not, those by 400 are.
test.each([
  ["2024-02-29", true],
  ["2023-02-29", false],
  ["1900-02-29", false],
  ["2000-02-29", true],
  ["2026-13-01", false],
  ["2026-04-31", false],
  ["2026-4-1", false],
])("%s is a day: %s", (text, is) => {
  expect(isDay(text)).toBe(is);
});
