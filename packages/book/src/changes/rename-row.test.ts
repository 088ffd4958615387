import { describe, expect, it } from "vitest";
import { renameId } from "../edit/rename-id.ts";
import { readRawBook } from "../read/book.ts";
import { RENAMABLE } from "../rules/renames-lead.ts";
import { BOOK_TABLES } from "../schema/tables/index.ts";
import { sampleCells } from "../testing/cells.ts";
import { cellOf } from "./cell-tables.ts";
import { applyChanges } from "./change.ts";
import { rawBookOf } from "./raw-book.ts";
import { renameRow } from "./rename-row.ts";

const tables = sampleCells();
const read = (cells = tables) => readRawBook(rawBookOf(cells).raw);

describe("renameRow", () => {
  const ids = RENAMABLE.flatMap((table) =>
    [...(tables.get(table) ?? [])].map(([, cells]) => [table, cells.get("id") ?? ""] as const),
  );

  it.each(ids)("does to the cells what renameId does to the typed book: %s %s", (table, id) => {
    const renaming = renameRow(tables, table, id, "quite.new", () => "n1");
    if (!renaming.ok) throw new Error(renaming.reason);
    const applied = applyChanges(tables, renaming.changes);
    expect(applied.conflicts).toEqual([]);
    const typed = renameId(read().book, table, id, "quite.new");
    if (!typed.ok) throw new Error(typed.reason);
    const now = read(applied.tables ?? tables);
    expect(now.book).toEqual(typed.book);
    expect(now.faults).toEqual([]);
  });

  it("renames back, and keeps the first name for whoever still uses it", () => {
    const there = renameRow(tables, "devices", "sw.left", "sw.right", () => "n1");
    const middle = there.ok ? (applyChanges(tables, there.changes).tables ?? tables) : tables;
    const back = renameRow(middle, "devices", "sw.right", "sw.left", () => "n2");
    const end = back.ok ? (applyChanges(middle, back.changes).tables ?? middle) : middle;
    expect(read(end).faults).toEqual([]);
    expect(read(end).book.tables.renames).toEqual([
      { table: "devices", old: "sw.old", new: "sw.left" },
      { table: "devices", old: "sw.right", new: "sw.left" },
    ]);
  });

  it("says why it does not rename", () => {
    const reason = (table: string, from: string, to: string) => {
      const renaming = renameRow(tables, table, from, to, () => "n1");
      return renaming.ok ? null : renaming.reason;
    };
    expect(reason("devices", "sw.left", "SW")).toBe("id-form");
    expect(reason("devices", "sw.none", "sw.x")).toBe("id-unknown");
    expect(reason("devices", "sw.left", "flip.left")).toBe("id-taken");
    expect(reason("ends", "sw.left", "sw.x")).toBe("table-unknown");
  });

  it("works in a book with faults, and leaves faulty cells as they are", () => {
    const row = [...(tables.get("lanes")?.keys() ?? [])][0] ?? "";
    const faulty =
      applyChanges(tables, [
        { table: "lanes", row, column: "from", from: "w1", to: " w1 " },
        {
          table: "lanes",
          row,
          column: "max_diameter_mm",
          from: cellOf(tables, "lanes", row, "max_diameter_mm"),
          to: "?",
        },
      ]).tables ?? tables;
    const renaming = renameRow(faulty, "waypoints", "w1", "w.first", () => "n1");
    const after = renaming.ok ? applyChanges(faulty, renaming.changes).tables : null;
    expect(after && cellOf(after, "lanes", row, "from")).toBe("w.first");
    expect(after && cellOf(after, "lanes", row, "max_diameter_mm")).toBe("?");
    expect(Object.keys(BOOK_TABLES)).toContain("lanes");
  });
});
