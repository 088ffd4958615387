import { type CellRows, type Cells, type CellTables, NO_CELLS, NO_ROWS, RANK } from "./cell-tables.ts";

/** One cell that gets another text. A row comes to be when its `RANK` gets a text, and goes when it loses it. */
export interface CellChange {
  readonly table: string;
  readonly row: string;
  readonly column: string;
  readonly from: string;
  readonly to: string;
}

/** Why a change cannot be made: the cell no longer says what its author saw. */
export interface CellConflict extends CellChange {
  /** What the cell says now. */
  readonly found: string;
  /** `cell`: someone changed it; `row-gone`: its row was deleted; `row-used`: the row to delete was filled in. */
  readonly reason: "cell" | "row-gone" | "row-used";
}

/** What came of a set of changes: all of it, or nothing and the reasons. */
export type Applied =
  | { readonly tables: CellTables; readonly conflicts: readonly [] }
  | { readonly tables: null; readonly conflicts: readonly CellConflict[] };

/** The changes that take a set back, in the order in which they must be made. */
export const inverse = (changes: readonly CellChange[]): readonly CellChange[] =>
  changes.map(({ from, to, ...cell }) => ({ ...cell, from: to, to: from })).reverse();

/**
 * Applies a set of changes, all or nothing, one after the other. Every `from` must be what the cell says; no row
 * may end with cells but without a `RANK`. Whatever is not touched stays the same object.
 */
export function applyChanges(tables: CellTables, changes: readonly CellChange[]): Applied {
  const touched = new Map<string, Map<string, Map<string, string>>>();
  const conflicts: CellConflict[] = [];
  for (const change of changes) {
    const rows = touched.get(change.table) ?? new Map<string, Map<string, string>>();
    touched.set(change.table, rows);
    const cells = rows.get(change.row) ?? new Map(tables.get(change.table)?.get(change.row) ?? NO_CELLS);
    rows.set(change.row, cells);
    const found = cells.get(change.column) ?? "";
    if (found !== change.from) {
      const gone = cells.size === 0 && change.from !== "";
      conflicts.push({ ...change, found, reason: gone ? "row-gone" : "cell" });
    } else if (change.to === "") cells.delete(change.column);
    else cells.set(change.column, change.to);
  }
  if (conflicts.length === 0) conflicts.push(...halfRows(touched, changes));
  if (conflicts.length > 0) return { tables: null, conflicts };
  const result = new Map<string, CellRows>(tables);
  for (const [table, rows] of touched) {
    const all = new Map<string, Cells>(tables.get(table) ?? NO_ROWS);
    for (const [row, cells] of rows) {
      if (cells.size === 0) all.delete(row);
      else all.set(row, cells);
    }
    result.set(table, all);
  }
  return { tables: result, conflicts: [] };
}

/** Rows that would be left with cells but without a place. */
function halfRows(
  touched: ReadonlyMap<string, ReadonlyMap<string, Cells>>,
  changes: readonly CellChange[],
): readonly CellConflict[] {
  return changes.flatMap((change): readonly CellConflict[] => {
    const cells = touched.get(change.table)?.get(change.row) ?? NO_CELLS;
    if (cells.size === 0 || cells.has(RANK)) return [];
    if (change.column === RANK) {
      const [, found = ""] = [...cells][0] ?? [];
      return [{ ...change, found, reason: "row-used" }];
    }
    return change.to === "" ? [] : [{ ...change, found: "", reason: "row-gone" }];
  });
}
