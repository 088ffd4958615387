import { type CellTables, NO_CELLS, NO_ROWS, rowOrder } from "../changes/cell-tables.ts";
import type { CellChange } from "../changes/change.ts";
import { insertRows, setCell } from "../changes/edits.ts";
import { ALL_TABLES } from "../schema/tables/index.ts";

type CellRecord = Readonly<Record<string, string>>;

/**
 * Takes rows of cells into a table: one whose key a row has already fills in that row, a blank cell leaving what
 * stands there; the others come after the last row. `newRowId` makes the ids of these.
 */
export const mergeRows = (
  tables: CellTables,
  table: string,
  rows: readonly CellRecord[],
  newRowId: () => string,
): readonly CellChange[] => mergedRows(tables, table, rows, newRowId).changes;

/** What taking rows into a table changes, and which row each of them becomes or fills in. */
export interface MergedRows {
  readonly changes: readonly CellChange[];
  /** Row id for each of the rows. */
  readonly rowIds: readonly string[];
  /** How many of them are new. */
  readonly fresh: number;
}

/** The changes of `mergeRows`, and where each row goes. */
export function mergedRows(
  tables: CellTables,
  table: string,
  rows: readonly CellRecord[],
  newRowId: () => string,
): MergedRows {
  const present = tables.get(table) ?? NO_ROWS;
  const key = ALL_TABLES[table]?.key ?? [];
  const keyOf = (cell: (column: string) => string | undefined): string | null => {
    const parts = key.map((column) => cell(column)?.trim() ?? "");
    return parts.every((part) => part === "") ? null : parts.join("\u0000");
  };
  const order = rowOrder(present);
  const byKey = new Map<string, string>();
  for (const id of order) {
    const cells = present.get(id) ?? NO_CELLS;
    const own = keyOf((column) => cells.get(column));
    if (own !== null && !byKey.has(own)) byKey.set(own, id);
  }
  const changes: CellChange[] = [];
  const fresh: CellRecord[] = [];
  const freshIds: string[] = [];
  const rowIds: string[] = [];
  for (const row of rows) {
    const own = keyOf((column) => row[column]);
    const id = own === null ? undefined : byKey.get(own);
    if (own === null || id === undefined) {
      const added = newRowId();
      fresh.push(row);
      freshIds.push(added);
      rowIds.push(added);
      continue;
    }
    rowIds.push(id);
    // A second row of the same key is a row of its own, so that the fault shows.
    byKey.delete(own);
    for (const [column, to] of Object.entries(row)) {
      if (to !== "" && !key.includes(column)) changes.push(...setCell(tables, table, id, column, to));
    }
  }
  let next = 0;
  const added = insertRows(tables, table, order.at(-1) ?? null, fresh, () => freshIds[next++] ?? newRowId());
  return { changes: [...changes, ...added], rowIds, fresh: fresh.length };
}
