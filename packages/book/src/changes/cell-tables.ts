/**
 * A book as rows of cells, before it has types: what the store keeps and what people change. A faulty book has
 * this form too. A cell that is not there is the empty text, so every cell of every thinkable row has a value.
 */

/** The texts of one row by column; blank cells are left out. */
export type Cells = ReadonlyMap<string, string>;

/** Rows by row id. A row id is made once and never changes, unlike the row's key, which a person can edit. */
export type CellRows = ReadonlyMap<string, Cells>;

/** Rows by table. Nothing in here is ever changed in place: what is the same object was not edited. */
export type CellTables = ReadonlyMap<string, CellRows>;

/**
 * Column that says that a row exists, and where it stands: rows are in code-point order of this text, then of
 * their ids. No table has a column of this name.
 */
export const RANK = "#";

/** Table of `machine.json`: one row of this id, a column for each key, the values as JSON. */
export const MACHINE_TABLE = "machine";

/** Table of the outline drawings: the row id is the file name. */
export const OUTLINE_TABLE = "outlines";

/** The column of `OUTLINE_TABLE` that holds the drawing. */
export const OUTLINE_TEXT = "text";

export const NO_CELLS: Cells = new Map();
export const NO_ROWS: CellRows = new Map();

/** Text of one cell; empty when there is none. */
export const cellOf = (tables: CellTables, table: string, row: string, column: string): string =>
  tables.get(table)?.get(row)?.get(column) ?? "";

/** Ids of the rows of a table in their order. */
export function rowOrder(rows: CellRows): string[] {
  const ranked = [...rows].map(([id, cells]) => ({ id, rank: cells.get(RANK) ?? "" }));
  ranked.sort((a, b) =>
    a.rank < b.rank ? -1 : a.rank > b.rank ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0,
  );
  return ranked.map((row) => row.id);
}
