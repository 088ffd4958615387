import { type CellChange, RANK } from "@pinwright/book";
import type { TableRow } from "./arrange.ts";
import { ranksAfter, ranksInOrder } from "./ranks.ts";

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

/** A table by its name, with its rows in the order of the file. */
export interface TableRows {
  readonly table: string;
  readonly rows: readonly TableRow[];
}

const rankOf = (row: TableRow): string => row.cells[RANK] ?? "";

/** Changes that give cells other texts. Cells that say it already are left out. */
export function cellChanges({ table, rows }: TableRows, cells: readonly CellEdit[]): readonly CellChange[] {
  const byId = new Map(rows.map((row) => [row.id, row.cells]));
  return cells.flatMap(({ row, column, to }) => {
    const from = byId.get(row)?.[column] ?? "";
    return from === to || !byId.has(row) ? [] : [{ table, row, column, from, to }];
  });
}

/** Changes that make rows after the one at `index`; -1: before the first. */
export function insertChanges(
  { table, rows }: TableRows,
  index: number,
  added: readonly Readonly<Record<string, string>>[],
  newId: () => string,
): readonly CellChange[] {
  const ranks = ranksAfter(rows.map(rankOf), index, added.length);
  return added.flatMap((cells, i) => {
    const row = newId();
    return Object.entries({ [RANK]: ranks[i] ?? "", ...cells }).flatMap(([column, to]) =>
      to === "" ? [] : [{ table, row, column, from: "", to }],
    );
  });
}

/** Changes that take rows away, every cell of them. */
export const deleteChanges = ({ table, rows }: TableRows, ids: ReadonlySet<string>): readonly CellChange[] =>
  rows.flatMap(({ id, cells }) =>
    ids.has(id)
      ? Object.entries(cells).map(([column, from]) => ({ table, row: id, column, from, to: "" }))
      : [],
  );

/** Changes that make the rows of a table stand in the order of `wanted`; rows that it leaves out stay behind them. */
export function orderChanges({ table, rows }: TableRows, wanted: readonly string[]): readonly CellChange[] {
  const byId = new Map(rows.map((row) => [row.id, row]));
  const named = new Set(wanted);
  const order = [...wanted.flatMap((id) => byId.get(id) ?? []), ...rows.filter((row) => !named.has(row.id))];
  const ranks = ranksInOrder(order.map(rankOf));
  return order.flatMap((row, i) => {
    const [from, to] = [rankOf(row), ranks[i] ?? ""];
    return from === to ? [] : [{ table, row: row.id, column: RANK, from, to }];
  });
}

/** The order of rows after some of them went one place up (-1) or down (1), each with its neighbours in between. */
export function movedOrder(
  rows: readonly TableRow[],
  moved: ReadonlySet<string>,
  by: -1 | 1,
): readonly string[] {
  const order = rows.map((row) => row.id);
  const first = order.findIndex((id) => moved.has(id));
  const last = order.findLastIndex((id) => moved.has(id));
  if (first < 0 || (by < 0 ? first === 0 : last === order.length - 1)) return order;
  const block = order.filter((id) => moved.has(id));
  const rest = order.filter((id) => !moved.has(id));
  const at = by < 0 ? first - 1 : last + 2 - block.length;
  return [...rest.slice(0, at), ...block, ...rest.slice(at)];
}

/** All changes of what a person did in a grid. */
export const gridChanges = (
  source: TableRows,
  edit: GridEdit,
  newId: () => string,
): readonly CellChange[] => [
  ...cellChanges(source, edit.cells),
  ...insertChanges(source, source.rows.length - 1, edit.added, newId),
];
