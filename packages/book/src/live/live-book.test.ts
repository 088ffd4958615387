import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CellTables,
  MACHINE_TABLE,
  OUTLINE_TABLE,
  OUTLINE_TEXT,
  RANK,
  rowOrder,
} from "../changes/cell-tables.ts";
import { applyChanges, type CellChange } from "../changes/change.ts";
import { cellTablesOf, cellTablesOfRaw } from "../changes/import.ts";
import { rawBookOf, rawShopOf } from "../changes/raw-book.ts";
import type { Fault } from "../fault.ts";
import { readRawBook, readRawShop } from "../read/book.ts";
import { ALL_TABLES, BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { sampleCells, sampleShopCells } from "../testing/cells.ts";
import { LiveBook, type LiveFault } from "./live-book.ts";

const plain = ({ code, file, row, column, value, expected, nearest }: LiveFault): Fault => ({
  code,
  file,
  row,
  column,
  value,
  expected,
  nearest,
});

/** What reading from scratch gives. */
function scratch(tables: CellTables, shop: CellTables) {
  const book = readRawBook(rawBookOf(tables).raw);
  const read = readRawShop(rawShopOf(shop).raw, new Set());
  return { book: book.book, shop: read.shop, faults: [...book.faults, ...read.faults] };
}

/** Makes changes without asking who was first. */
function edited(tables: CellTables, changes: readonly Omit<CellChange, "from">[]): CellTables {
  let now = tables;
  for (const change of changes) {
    const from = now.get(change.table)?.get(change.row)?.get(change.column) ?? "";
    now = applyChanges(now, [{ ...change, from }]).tables ?? now;
  }
  return now;
}

const removed = (tables: CellTables, table: string, row: string): CellTables => {
  const rows = new Map(tables.get(table));
  rows.delete(row);
  return new Map([...tables, [table, rows]]);
};

interface Edit {
  readonly kind: "cell" | "cell" | "remove" | "add" | "copy" | "move";
  readonly scope: boolean;
  readonly table: number;
  readonly row: number;
  readonly column: number;
  readonly text: string;
  readonly other: number;
}

const BOOK_NAMES = [...Object.keys(BOOK_TABLES), MACHINE_TABLE, OUTLINE_TABLE];
const SHOP_NAMES = Object.keys(SHOP_TABLES);

/** Texts that name things of the sample, near misses of them, and what no column takes. */
function words(tables: CellTables): readonly string[] {
  const found = new Set<string>(["", "x", "no such thing", "1", "-3", "12.5", "1 in", "A\u0007", "yes"]);
  for (const [name, rows] of tables) {
    if (name === OUTLINE_TABLE) continue;
    for (const cells of rows.values())
      for (const text of cells.values()) if (text.length < 60) found.add(text);
  }
  for (const text of [...found]) if (text.length > 3) found.add(text.slice(0, -1));
  return [...found].sort();
}

function applyEdit(tables: CellTables, edit: Edit, all: readonly string[], n: number): CellTables {
  const names = edit.scope ? SHOP_NAMES : BOOK_NAMES;
  const table = names[edit.table % names.length] ?? "";
  const rows = tables.get(table) ?? new Map<string, ReadonlyMap<string, string>>();
  const ids = rowOrder(rows);
  const row = ids[edit.row % Math.max(1, ids.length)] ?? `n${n}`;
  const columns = [
    ...Object.keys(ALL_TABLES[table]?.columns ?? { label: 1, slope_deg: 1, languages: 1, [OUTLINE_TEXT]: 1 }),
    "stray",
  ];
  const column = columns[edit.column % columns.length] ?? "";
  const text = all[edit.other % all.length] ?? edit.text;
  switch (edit.kind) {
    case "cell":
      return edited(tables, [{ table, row, column, to: edit.column % 3 === 0 ? edit.text : text }]);
    case "remove":
      return removed(tables, table, row);
    case "add":
      return edited(tables, [
        { table, row: `n${n}`, column: RANK, to: "a0V" },
        { table, row: `n${n}`, column, to: text },
      ]);
    case "copy":
      return new Map([
        ...tables,
        [table, new Map([...rows, [`n${n}`, rows.get(row) ?? new Map([[RANK, "a1"]])]])],
      ]);
    case "move":
      return edited(tables, [{ table, row, column: RANK, to: `Z${edit.text}` }]);
  }
}

describe("LiveBook", () => {
  const start = sampleCells();
  const shopStart = sampleShopCells();

  it("equals reading from scratch after every edit, faults included", () => {
    const all = words(start);
    const edit: fc.Arbitrary<Edit> = fc.record({
      kind: fc.constantFrom("cell" as const, "cell" as const, "remove", "add", "copy", "move"),
      scope: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
      table: fc.nat(1000),
      row: fc.nat(1000),
      column: fc.nat(1000),
      text: fc.string({ maxLength: 3 }),
      other: fc.nat(100_000),
    });
    fc.assert(
      fc.property(fc.array(fc.array(edit, { minLength: 1, maxLength: 4 }), { maxLength: 6 }), (steps) => {
        const live = new LiveBook();
        let [tables, shop] = [start, shopStart];
        let n = 0;
        for (const step of [[], ...steps]) {
          for (const one of step) {
            n++;
            if (one.scope) shop = applyEdit(shop, one, all, n);
            else tables = applyEdit(tables, one, all, n);
          }
          const reading = live.update(tables, shop);
          const expected = scratch(tables, shop);
          expect(reading.book).toEqual(expected.book);
          expect(reading.shop).toEqual(expected.shop);
          // Faults are asked now and then only, so that those of skipped moments are not left behind.
          if (n % 3 !== 1) expect(reading.faults().map(plain)).toEqual(expected.faults);
        }
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  it("follows a reference again when a renaming comes and goes", () => {
    const live = new LiveBook();
    const lane = [...(start.get("lanes")?.keys() ?? [])][0] ?? "";
    const lost = edited(start, [{ table: "lanes", row: lane, column: "from", to: "w9" }]);
    const renamed = edited(lost, [
      { table: "renames", row: "n1", column: RANK, to: "b" },
      { table: "renames", row: "n1", column: "table", to: "waypoints" },
      { table: "renames", row: "n1", column: "old", to: "w9" },
      { table: "renames", row: "n1", column: "new", to: "w1" },
    ]);
    const froms = [start, lost, renamed, lost].map(
      (tables) => live.update(tables, shopStart).book.tables.lanes[0]?.from,
    );
    expect(froms).toEqual(["w1", "", "w1", ""]);
  });

  it("follows ids that come, go, are taken twice and are renamed", () => {
    const ids = ["sw.left", "sw.old", "sw.new", "flip.left", "w1", "w9", "inl.pf"];
    const place = fc.constantFrom(
      ...["devices", "boards", "mechanisms", "waypoints", "inlines"].map((table) => [table, "id"] as const),
      ...["old", "new"].map((column) => ["renames", column] as const),
      ["groups", "items"] as const,
      ["lanes", "from"] as const,
      ["activity", "item"] as const,
    );
    const edit = fc.record({
      place,
      row: fc.constantFrom("1", "2", "3"),
      to: fc.constantFrom("", ...ids),
      table: fc.constantFrom("devices", "waypoints"),
    });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
        const live = new LiveBook();
        live.update(start, shopStart);
        let tables = start;
        for (const { place, row, to, table } of edits) {
          tables = edited(tables, [
            { table: place[0], row, column: RANK, to: `a${row}` },
            { table: place[0], row, column: place[1], to },
            ...(place[0] === "renames" ? [{ table: "renames", row, column: "table", to: table }] : []),
          ]);
          const reading = live.update(tables, shopStart);
          const expected = scratch(tables, shopStart);
          expect(reading.book).toEqual(expected.book);
          expect(reading.faults().map(plain)).toEqual(expected.faults);
        }
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it("keeps every object that an edit does not concern", () => {
    const live = new LiveBook();
    const before = live.update(start, shopStart);
    expect(live.update(start, shopStart)).toBe(before);
    const ids = rowOrder(start.get("devices") ?? new Map());
    const row = ids[0] ?? "";
    const after = live.update(
      edited(start, [{ table: "devices", row, column: "x_mm", to: "77" }]),
      shopStart,
    );
    expect(after.shop).toBe(before.shop);
    expect(after.book.machine).toBe(before.book.machine);
    expect(after.book.outlines).toBe(before.book.outlines);
    for (const [name, rows] of Object.entries(after.book.tables)) {
      if (name !== "devices") expect(rows).toBe(Reflect.get(before.book.tables, name));
    }
    expect(after.book.tables.devices).not.toBe(before.book.tables.devices);
    expect(after.book.tables.devices.map((r, i) => r === before.book.tables.devices[i])).toEqual([
      false,
      ...ids.slice(1).map(() => true),
    ]);
    expect(after.book.tables.devices[0]?.x_mm).toBe(77);
  });

  it("gives the same objects for cells that were made anew and say the same", () => {
    const live = new LiveBook();
    const before = live.update(start, shopStart);
    const again = new Map(
      [...start].map(([name, rows]) => [name, new Map([...rows].map(([id, cells]) => [id, new Map(cells)]))]),
    );
    expect(live.update(again, shopStart).book).toBe(before.book);
  });

  it("leads each fault to its cell", () => {
    const device =
      [...(start.get("devices") ?? [])].find(([, cells]) => cells.get("id") === "sw.left")?.[0] ?? "";
    const tables = edited(start, [
      { table: "devices", row: device, column: "x_mm", to: "12 mm" },
      { table: MACHINE_TABLE, row: "machine", column: "ball_mm", to: "twenty" },
      { table: OUTLINE_TABLE, row: "slot.dxf", column: OUTLINE_TEXT, to: "no drawing" },
    ]);
    const shop = edited(shopStart, [{ table: "shop_settings", row: "1", column: "value", to: "-1" }]);
    const faults = new LiveBook().update(tables, shop).faults();
    const at = (of: string, table: string, rowId: string, column: string | null) =>
      expect(faults).toContainEqual(expect.objectContaining({ of, table, rowId, column }));
    at("book", "devices", device, "x_mm");
    at("book", MACHINE_TABLE, "machine", "ball_mm");
    at("book", OUTLINE_TABLE, "slot.dxf", null);
    at("shop", "shop_settings", "1", "value");
  });

  it("answers for the newest book when an older reading is asked late", () => {
    const live = new LiveBook();
    const old = live.update(start, shopStart);
    const bad = edited(start, [{ table: "poses", row: "1", column: "usual", to: "perhaps" }]);
    const now = live.update(bad, shopStart);
    expect(old.faults()).toBe(now.faults());
    expect(now.faults().length).toBeGreaterThan(0);
  });
});

describe("cellTablesOf", () => {
  it("is taken back by rawBookOf", () => {
    const { raw } = rawBookOf(sampleCells());
    expect(cellTablesOf(raw)).toEqual(sampleCells());
    expect(cellTablesOfRaw(rawShopOf(sampleShopCells()).raw)).toEqual(sampleShopCells());
  });
});
