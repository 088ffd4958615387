import { setImmediate } from "node:timers/promises";
import type { Cells, CellTables } from "@pinwright/book";
import type { Kysely, Selectable } from "kysely";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import { type ChangedIn, cellsJson, readCells, readChangedIn } from "./cells-json.ts";

/** Rows of a book that a change touches, as far as they are known, and who changed them. */
export interface KnownRows {
  readonly tables: CellTables;
  /** By table, then row id; also of rows that are gone. */
  readonly changedIn: ReadonlyMap<string, ReadonlyMap<string, ChangedIn>>;
}

/** A row to write. */
export interface RowToWrite {
  readonly table: string;
  readonly row: string;
  readonly cells: Cells;
  readonly changedIn: ChangedIn;
}

/** Cells of a row that is gone. */
const GONE = "{}";

/** Beyond this many rows a book is read whole. */
const READ_ROW_BY_ROW = 2_000;
const READ_AT_ONCE = 400;
const WRITE_AT_ONCE = 400;

/** All cells of a book. */
export async function readTables(db: Kysely<Tables>, book: string): Promise<CellTables> {
  const rows = await db
    .selectFrom("book_rows")
    .select(["table_name", "row_id", "cells"])
    .where("book", "=", book)
    .where("cells", "!=", GONE)
    .orderBy("table_name")
    .orderBy("row_id")
    .execute();
  const tables = new Map<string, Map<string, Cells>>();
  for (const row of rows) {
    const of = tables.get(row.table_name) ?? new Map<string, Cells>();
    tables.set(row.table_name, of);
    of.set(row.row_id, readCells(row.cells));
  }
  return tables;
}

/** The named rows of a book, with who changed them. */
export async function readRows(
  db: Kysely<Tables>,
  book: string,
  places: Iterable<{ readonly table: string; readonly row: string }>,
): Promise<KnownRows> {
  const wanted = new Map<string, Set<string>>();
  let count = 0;
  for (const { table, row } of places) {
    const rows = wanted.get(table) ?? new Set<string>();
    wanted.set(table, rows);
    if (!rows.has(row)) count += 1;
    rows.add(row);
  }
  const query = db
    .selectFrom("book_rows")
    .select(["table_name", "row_id", "cells", "changed_in"])
    .where("book", "=", book);
  if (count > READ_ROW_BY_ROW) return known(await query.execute());
  const found: Parameters<typeof known>[0][number][] = [];
  for (const [table, rows] of wanted) {
    for (const some of inChunks([...rows], READ_AT_ONCE)) {
      found.push(...(await query.where("table_name", "=", table).where("row_id", "in", some).execute()));
    }
  }
  return known(found);
}

function known(
  rows: readonly Pick<Selectable<Tables["book_rows"]>, "table_name" | "row_id" | "cells" | "changed_in">[],
): KnownRows {
  const tables = new Map<string, Map<string, Cells>>();
  const changedIn = new Map<string, Map<string, ChangedIn>>();
  for (const row of rows) {
    if (row.cells !== GONE) entry(tables, row.table_name).set(row.row_id, readCells(row.cells));
    entry(changedIn, row.table_name).set(row.row_id, readChangedIn(row.changed_in));
  }
  return { tables, changedIn };
}

function entry<T>(map: Map<string, Map<string, T>>, key: string): Map<string, T> {
  const inner = map.get(key) ?? new Map<string, T>();
  map.set(key, inner);
  return inner;
}

/** Writes rows, new or not. */
export async function writeRows(
  db: Kysely<Tables>,
  book: string,
  rows: readonly RowToWrite[],
): Promise<void> {
  for (const some of inChunks(rows, WRITE_AT_ONCE)) {
    await db
      .insertInto("book_rows")
      .values(
        some.map(({ table, row, cells, changedIn }) => ({
          book,
          table_name: table,
          row_id: row,
          cells: cellsJson(cells),
          changed_in: cellsJson(changedIn),
        })),
      )
      .onConflict((conflict) =>
        conflict.columns(["book", "table_name", "row_id"]).doUpdateSet((row) => ({
          cells: row.ref("excluded.cells"),
          changed_in: row.ref("excluded.changed_in"),
        })),
      )
      .execute();
    // Statements on SQLite never wait for anything; during a large import others get their turn here.
    if (some.length === WRITE_AT_ONCE) await setImmediate();
  }
}
