import {
  type CellChange,
  type CellTables,
  deleteRows,
  insertRows,
  moveRows,
  orderRows,
} from "@pinwright/book";
import type { TableRow } from "./arrange.ts";

/** A cell of a row that gets another text. */
export interface CellEdit {
  readonly row: string;
  readonly column: string;
  readonly to: string;
}

/** What a person did in a grid: cells that got other texts, and rows that came at the end. */
export interface GridEdit {
  readonly what: "type" | "paste" | "cut" | "clear" | "fill" | "mend";
  readonly cells: readonly CellEdit[];
  readonly added: readonly Readonly<Record<string, string>>[];
}

/** A table by its name, with its rows in the order of the book. */
export interface TableRows {
  readonly table: string;
  readonly rows: readonly TableRow[];
}

const tablesOf = ({ table, rows }: TableRows): CellTables =>
  new Map([[table, new Map(rows.map(({ id, cells }) => [id, new Map(Object.entries(cells))]))]]);

/** Changes that give cells other texts. Cells that say it already are left out, and so are those of rows gone. */
function cellChanges({ table, rows }: TableRows, cells: readonly CellEdit[]): readonly CellChange[] {
  const byId = new Map(rows.map((row) => [row.id, row.cells]));
  return cells.flatMap(({ row, column, to }) => {
    const from = byId.get(row)?.[column] ?? "";
    return from === to || !byId.has(row) ? [] : [{ table, row, column, from, to }];
  });
}

/** Changes that make rows before the one at `index`. */
export const insertChanges = (
  source: TableRows,
  index: number,
  added: readonly Readonly<Record<string, string>>[],
  newId: () => string,
): readonly CellChange[] =>
  added.length === 0
    ? []
    : insertRows(tablesOf(source), source.table, source.rows[index - 1]?.id ?? null, added, newId);

/** Changes that take rows away, every cell of them. */
export const deleteChanges = (source: TableRows, ids: readonly string[]): readonly CellChange[] =>
  deleteRows(tablesOf(source), source.table, ids);

/** Changes that put rows into another order. */
export const orderChanges = (source: TableRows, order: readonly string[]): readonly CellChange[] =>
  orderRows(tablesOf(source), source.table, order);

/** Changes that bring the rows from `top` to `bottom` one place up (-1) or down (1). */
export const moveChanges = (
  source: TableRows,
  top: number,
  bottom: number,
  by: -1 | 1,
): readonly CellChange[] => {
  const { table, rows } = source;
  const ids = rows.slice(top, bottom + 1).map((row) => row.id);
  const after = by < 0 ? rows[top - 2] : rows[bottom + 1];
  const stays = by < 0 ? top === 0 : after === undefined;
  return stays ? [] : moveRows(tablesOf(source), table, ids, after?.id ?? null);
};

/** All changes of what a person did in a grid. */
export const gridChanges = (
  source: TableRows,
  edit: GridEdit,
  newId: () => string,
): readonly CellChange[] => [
  ...cellChanges(source, edit.cells),
  ...insertChanges(source, source.rows.length, edit.added, newId),
];
