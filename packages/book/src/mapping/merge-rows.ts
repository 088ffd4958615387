import { type CellTables, NO_CELLS, NO_ROWS, rowOrder } from "../changes/cell-tables.ts";
import type { CellChange } from "../changes/change.ts";
import { insertRows, setCell } from "../changes/edits.ts";
import { ALL_TABLES } from "../schema/tables/index.ts";

type CellRecord = Readonly<Record<string, string>>;

/**
 * Takes rows of cells into a table: one whose key a row has already fills in that row, a blank cell leaving what
 * stands there; the others come after the last row. `newRowId` makes the ids of these.
 */
export function mergeRows(
  tables: CellTables,
  table: string,
  rows: readonly CellRecord[],
  newRowId: () => string,
): readonly CellChange[] {
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
  for (const row of rows) {
    const own = keyOf((column) => row[column]);
    const id = own === null ? undefined : byKey.get(own);
    if (own === null || id === undefined) {
      fresh.push(row);
      continue;
    }
    // A second row of the same key is a row of its own, so that the fault shows.
    byKey.delete(own);
    for (const [column, to] of Object.entries(row)) {
      if (to !== "" && !key.includes(column)) changes.push(...setCell(tables, table, id, column, to));
    }
  }
  return [...changes, ...insertRows(tables, table, order.at(-1) ?? null, fresh, newRowId)];
}
