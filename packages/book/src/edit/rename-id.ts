import type { Book } from "../book.ts";
import { ITEM_TABLES } from "../check/names.ts";
import type { AnyRow } from "../read/raw.ts";
import { isId } from "../read/words.ts";
import { RENAMABLE } from "../rules/renames-lead.ts";
import type { Column } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, type BookTables } from "../schema/tables/index.ts";
import { isItemRenaming, type Renaming, renameChoice, renameItem, renamePoint } from "./renaming.ts";

/** The book after a renaming, or why there is none. */
export type Renamed =
  | { readonly ok: true; readonly book: Book }
  | { readonly ok: false; readonly reason: NotRenamed };

/** Why an id cannot be renamed. */
export type NotRenamed = "table-unknown" | "id-unknown" | "id-form" | "id-taken";

type Rows = readonly Readonly<AnyRow>[];

const rowsOf = (book: Book, table: string): Rows =>
  Object.entries(book.tables).find(([name]) => name === table)?.[1] ?? [];

/**
 * Renames one row of a table whose rows have an id, and everything that names it: references, items, points,
 * choices, and `renames`, where the old name is kept so that whoever still uses it finds the new one. Rows
 * and tables that do not name it are shared with the old book.
 */
export function renameId(book: Book, table: string, from: string, to: string): Renamed {
  const renaming: Renaming = { table, from, to };
  const reason = whyNotRenamed(renaming, (name, id) => rowsOf(book, name).some((row) => row.id === id));
  if (reason !== null) return { ok: false, reason };

  const renamed: Record<string, Rows> = {};
  for (const [name, schema] of Object.entries(BOOK_TABLES)) {
    const rename = rowRenamer(schema, renaming);
    const rows = rowsOf(book, name);
    renamed[name] = rename === null ? rows : mapShared(rows, rename);
  }
  // Every table of the schema is there, and a renamed row has the columns of the old one.
  const tables = renamed as unknown as BookTables;
  const choices = mapShared(tables.choices, (row) => renameChoice(row, renaming));
  return {
    ok: true,
    book: { ...book, tables: { ...tables, choices, renames: renamesWith(tables.renames, renaming) } },
  };
}

/** Why an id cannot be renamed, or null when it can. */
export function whyNotRenamed(
  renaming: Renaming,
  hasId: (table: string, id: string) => boolean,
): NotRenamed | null {
  const { table, from, to } = renaming;
  if (!RENAMABLE.includes(table)) return "table-unknown";
  if (!hasId(table, from)) return "id-unknown";
  if (!isId(to)) return "id-form";
  const siblings = isItemRenaming(renaming) ? ITEM_TABLES : [table];
  return siblings.some((name) => hasId(name, to)) ? "id-taken" : null;
}

/** Maps rows; the same list when every row stays the same object. */
function mapShared<R>(rows: readonly R[], map: (row: R) => R): readonly R[] {
  const mapped = rows.map(map);
  return mapped.every((row, i) => row === rows[i]) ? rows : mapped;
}

function renamesWith(renames: BookTables["renames"], { table, from, to }: Renaming): BookTables["renames"] {
  const kept = renames.filter((row) => !(row.table === table && row.old === to));
  const moved = mapShared(kept, (row) =>
    row.table === table && row.new === from ? { ...row, new: to } : row,
  );
  return [...moved, { table, old: from, new: to }];
}

/** How one word of a cell follows the renaming, or null when its column cannot name the id. */
export function cellRenamer(
  schema: Table,
  name: string,
  column: Column<unknown>,
  renaming: Renaming,
): ((cell: string) => string) | null {
  const { table, from, to } = renaming;
  const plain = (cell: string) => (cell === from ? to : cell);
  switch (column.kind) {
    case "id":
      return schema.name === table && name === "id" ? plain : null;
    case "ref":
    case "refs":
      return column.table === table ? plain : null;
    case "item":
    case "items":
      return isItemRenaming(renaming) ? (cell) => renameItem(cell, renaming) : null;
    case "point":
      return isItemRenaming(renaming) ? (cell) => renamePoint(cell, renaming) : null;
    case "text":
      // The one text that is an item's id: a remark that nothing checks, but that should not go stale.
      return schema.name === "cutouts" && name === "serves" && isItemRenaming(renaming)
        ? (cell) => renameItem(cell, renaming)
        : null;
    default:
      return null;
  }
}

/** How a row of a table follows the renaming, or null when no column of the table can name the id. */
function rowRenamer(schema: Table, renaming: Renaming): ((row: Readonly<AnyRow>) => Readonly<AnyRow>) | null {
  const cells = Object.entries(schema.columns).flatMap(([name, column]) => {
    const rename = cellRenamer(schema, name, column, renaming);
    return rename === null ? [] : [{ name, rename }];
  });
  if (cells.length === 0) return null;
  return (row) => {
    let changed: AnyRow | null = null;
    for (const { name, rename } of cells) {
      const value = row[name];
      const next =
        typeof value === "string" ? rename(value) : Array.isArray(value) ? mapShared(value, rename) : value;
      if (next === value) continue;
      changed ??= { ...row };
      changed[name] = next;
    }
    return changed ?? row;
  };
}
