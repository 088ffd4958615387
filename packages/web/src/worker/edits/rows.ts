import { ALL_TABLES, type CellTables, RANK, rowOrder } from "@pinwright/book";
import { generateNKeysBetween } from "fractional-indexing";

/** Row id of the row of a table whose first key column says `key`. */
export function rowOfKey(tables: CellTables, table: string, key: string): string | null {
  const column = ALL_TABLES[table]?.key[0] ?? "id";
  for (const [row, cells] of tables.get(table) ?? []) if (cells.get(column) === key) return row;
  return null;
}

/** A row id that nobody else makes up. */
export const newRowId = (): string => crypto.randomUUID().slice(0, 13).replace("-", "");

/** The row after which new rows go when nothing is said: the last one. */
const lastRow = (tables: CellTables, table: string): string | null =>
  rowOrder(tables.get(table) ?? new Map()).at(-1) ?? null;

/** Ranks of `count` new rows at the end of a table, in their order. */
export function rankAtEnd(tables: CellTables, table: string, count: number): readonly string[] {
  const last = lastRow(tables, table);
  const rank = last === null ? undefined : tables.get(table)?.get(last)?.get(RANK);
  return generateNKeysBetween(rank ?? null, null, count);
}
