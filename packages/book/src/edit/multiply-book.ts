import type { Book } from "../book.ts";
import type { Column } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, type BookTables } from "../schema/tables/index.ts";

/** Tables whose rows are in the machine; all others describe types and parts, which copies share. */
const PLACED: ReadonlySet<string> = new Set([
  "panels",
  "cutouts",
  "pose_places",
  "waypoints",
  "lanes",
  "crossings",
  "bonds",
  "devices",
  "boards",
  "mechanisms",
  "mechanism_numbers",
  "inlines",
  "nets",
  "ends",
  "cables",
  "cable_cores",
  "harnesses",
  "activity",
  "groups",
  "fuses",
  "supplies",
  "fasteners",
  "step_rules",
  "steps",
  "choices",
]);

/** Distance in the room from one copy to the next, and copies in a row: all within what a place may be. */
const APART_MM = 2200;
const COPIES_A_ROW = 4;

/** How far a copy stands from the first one in the room, so that no two are in the same place. */
const aside = (copy: number): Readonly<Record<string, number>> => ({
  x_mm: (copy % COPIES_A_ROW) * APART_MM,
  y_mm: Math.floor(copy / COPIES_A_ROW) * APART_MM,
});

const suffixed = (id: string, copy: number): string => `${id}.copy${copy}`;

/** `mech.a/coil:feed` → `mech.a.copy2/coil:feed` */
const suffixedItem = (text: string, copy: number): string =>
  text.replace(/^[^/:]+/, (id) => suffixed(id, copy));

/** A choice's subject or value: ids separated by `|` or one space, each perhaps with a point or child behind it. */
function suffixedSubject(text: string, copy: number, known: ReadonlySet<string>): string {
  return text.replace(/[^|\s:/,]+/g, (word) => (known.has(word) ? suffixed(word, copy) : word));
}

function copyCell(column: Column<unknown>, value: unknown, copy: number): unknown {
  const placedRef = column.table !== undefined && PLACED.has(column.table);
  switch (column.kind) {
    case "id":
      return suffixed(String(value), copy);
    case "ref":
      return placedRef && typeof value === "string" ? suffixed(value, copy) : value;
    case "refs":
      return placedRef && Array.isArray(value) ? value.map((id) => suffixed(String(id), copy)) : value;
    case "item":
    case "point":
      return typeof value === "string" ? suffixedItem(value, copy) : value;
    case "items":
      return Array.isArray(value) ? value.map((id) => suffixedItem(String(id), copy)) : value;
    default:
      return value;
  }
}

function copyRow(table: Table, row: object, copy: number, known: ReadonlySet<string>): object {
  return Object.fromEntries(
    Object.entries(row).map(([name, value]) => {
      const column = table.columns[name];
      if (column === undefined) return [name, value];
      if (table.name === "choices" && (name === "subject" || name === "value"))
        return [name, suffixedSubject(String(value), copy, known)];
      if (table.name === "pose_places" && typeof value === "number")
        return [name, value + (aside(copy)[name] ?? 0)];
      if (table.name === "harnesses" && name === "number") return [name, Number(value) + 40 * copy];
      return [name, copyCell(column, value, copy)];
    }),
  );
}

/**
 * A book with everything that is placed in the machine there `times` times, side by side and unconnected, sharing
 * types and parts: what growth is measured on. The first copy is the book itself.
 */
export function multiplyBook(book: Book, times: number): Book {
  const known = new Set(
    Object.values(BOOK_TABLES)
      .filter((table) => PLACED.has(table.name))
      .flatMap((table) =>
        rowsOf(book.tables, table.name).flatMap((row) => ("id" in row ? [String(row.id)] : [])),
      ),
  );
  const tables = Object.fromEntries(
    Object.values(BOOK_TABLES).map((table) => {
      const rows = rowsOf(book.tables, table.name);
      if (!PLACED.has(table.name)) return [table.name, rows];
      const copies = Array.from({ length: times - 1 }, (_, i) =>
        rows.map((row) => copyRow(table, row, i + 1, known)),
      );
      return [table.name, [...rows, ...copies.flat()]];
    }),
  );
  // Every row was copied cell by cell from one that fits the schema, so the copies fit it too.
  return { ...book, tables: tables as unknown as BookTables };
}

function rowsOf(tables: BookTables, name: string): readonly object[] {
  return Object.entries(tables).find(([table]) => table === name)?.[1] ?? [];
}
