import {
  type CellTables,
  cellOf,
  MACHINE_TABLE,
  NO_CELLS,
  NO_ROWS,
  OUTLINE_TABLE,
  OUTLINE_TEXT,
  RANK,
  rowOrder,
} from "./cell-tables.ts";
import type { CellChange } from "./change.ts";
import { longestIncreasing } from "./longest-increasing.ts";
import { ranksFor } from "./ranks.ts";
import { MACHINE_ROW } from "./raw-book.ts";

/** The change of one cell; nothing when it says this already. */
export function setCell(
  tables: CellTables,
  table: string,
  row: string,
  column: string,
  to: string,
): readonly CellChange[] {
  const from = cellOf(tables, table, row, column);
  return from === to ? [] : [{ table, row, column, from, to }];
}

/** Changes that give rows their ranks, in their order. */
function ranked(
  tables: CellTables,
  table: string,
  rows: readonly string[],
  isNew: ReadonlySet<string>,
): readonly CellChange[] {
  const kept = rows.map((row) => (isNew.has(row) ? null : cellOf(tables, table, row, RANK)));
  const ranks = ranksFor(kept);
  return rows.flatMap((row, i) => setCell(tables, table, row, RANK, ranks[i] ?? ""));
}

/** The rows in order with others put after `after`, or before all of them when `after` is null. */
function placed(rows: readonly string[], after: string | null, others: readonly string[]): readonly string[] {
  const at = after === null ? 0 : rows.indexOf(after) + 1;
  // A row that is gone leaves no place: then the end is where nothing gets between other rows.
  const place = after !== null && at === 0 ? rows.length : at;
  return [...rows.slice(0, place), ...others, ...rows.slice(place)];
}

/** New rows of a table, after a row or, with null, before the first. `newRowId` makes ids that no row has had. */
export function insertRows(
  tables: CellTables,
  table: string,
  after: string | null,
  cells: readonly Readonly<Record<string, string>>[],
  newRowId: () => string,
): readonly CellChange[] {
  const ids = cells.map(() => newRowId());
  const order = placed(rowOrder(tables.get(table) ?? NO_ROWS), after, ids);
  const filled = cells.flatMap((row, i) =>
    Object.entries(row).flatMap(([column, to]): CellChange[] =>
      to === "" || column === RANK ? [] : [{ table, row: ids[i] ?? "", column, from: "", to }],
    ),
  );
  return [...ranked(tables, table, order, new Set(ids)), ...filled];
}

/** Takes rows away with all their cells. */
export const deleteRows = (
  tables: CellTables,
  table: string,
  rows: readonly string[],
): readonly CellChange[] =>
  [...new Set(rows)].flatMap((row) =>
    [...(tables.get(table)?.get(row) ?? NO_CELLS)].map(([column, from]) => ({
      table,
      row,
      column,
      from,
      to: "",
    })),
  );

/** Moves rows, in the order in which they stand, after a row or, with null, before the first. */
export function moveRows(
  tables: CellTables,
  table: string,
  rows: readonly string[],
  after: string | null,
): readonly CellChange[] {
  const order = rowOrder(tables.get(table) ?? NO_ROWS);
  const moved = new Set(rows);
  const moving = order.filter((row) => moved.has(row));
  const staying = order.filter((row) => !moved.has(row));
  // After a row that moves itself means after the nearest row above it that stays.
  const above = after === null ? [] : order.slice(0, order.indexOf(after) + 1);
  const anchor = above.filter((row) => !moved.has(row)).pop() ?? null;
  const next = placed(staying, anchor, moving);
  return next.every((row, i) => row === order[i]) ? [] : ranked(tables, table, next, moved);
}

/** Puts the rows of a table in another order, moving as few as can be; rows that `order` leaves out come last. */
export function orderRows(
  tables: CellTables,
  table: string,
  order: readonly string[],
): readonly CellChange[] {
  const places = new Map(rowOrder(tables.get(table) ?? NO_ROWS).map((row, i) => [row, i]));
  const named = new Set(order.filter((row) => places.has(row)));
  const wanted = [...named, ...[...places.keys()].filter((row) => !named.has(row))];
  const staying = longestIncreasing(wanted.map((row) => places.get(row) ?? null));
  const moved = new Set(wanted.filter((_, i) => !staying.has(i)));
  return ranked(tables, table, wanted, moved);
}

/** Another value of `machine.json`; undefined takes the key away. */
export function setMachineValue(tables: CellTables, key: string, value: unknown): readonly CellChange[] {
  const isThere = tables.get(MACHINE_TABLE)?.has(MACHINE_ROW) === true;
  return [
    ...(isThere ? [] : setCell(tables, MACHINE_TABLE, MACHINE_ROW, RANK, "a0")),
    ...setCell(tables, MACHINE_TABLE, MACHINE_ROW, key, JSON.stringify(value) ?? ""),
  ];
}

/** A drawing that is added or takes the place of the one of the same name. */
export function putOutline(tables: CellTables, name: string, text: string): readonly CellChange[] {
  const rows = tables.get(OUTLINE_TABLE) ?? NO_ROWS;
  if (rows.has(name)) return setCell(tables, OUTLINE_TABLE, name, OUTLINE_TEXT, text);
  const last = rowOrder(rows).pop() ?? null;
  return insertRows(tables, OUTLINE_TABLE, last, [{ [OUTLINE_TEXT]: text }], () => name);
}
