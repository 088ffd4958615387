import type { FaultLog } from "../fault-log.ts";
import type { AnyRow } from "../read/raw.ts";
import type { CellFault } from "../read/row.ts";
import type { TableRows } from "../read/table.ts";
import { ITEM_TABLES } from "./names.ts";
import { dropRows } from "./references.ts";

/** An item whose id an item before it has; both by table and index among the rows of that table. */
export interface SameItem {
  readonly table: string;
  readonly at: number;
  readonly id: string;
  readonly beforeTable: string;
  readonly beforeAt: number;
}

/** Items whose id is taken, table by table in order: an item's id is used once in all item tables. */
export function sameItems(rowsOf: (table: string) => readonly Readonly<AnyRow>[]): readonly SameItem[] {
  const first = new Map<string, { readonly table: string; readonly at: number }>();
  const same: SameItem[] = [];
  for (const table of ITEM_TABLES) {
    for (const [at, row] of rowsOf(table).entries()) {
      const id = String(row.id);
      const before = first.get(id);
      if (before === undefined) first.set(id, { table, at });
      else same.push({ table, at, id, beforeTable: before.table, beforeAt: before.at });
    }
  }
  return same;
}

/** That an item's id is taken by the row of another file. */
export const sameItemFault = (id: string, beforeFile: string, beforeLine: number): CellFault => ({
  code: "id-duplicate",
  column: "id",
  value: id,
  expected: `an id that no other item has; row ${beforeLine} of ${beforeFile} has it. This row is not read`,
});

/** Drops later items with an id that is taken; each is a fault. */
export function checkItemIds(tables: ReadonlyMap<string, TableRows>, log: FaultLog): void {
  const drops = new Map<TableRows, Set<number>>();
  for (const same of sameItems((name) => tables.get(name)?.rows ?? [])) {
    const [source, before] = [tables.get(same.table), tables.get(same.beforeTable)];
    if (source === undefined || before === undefined) continue;
    const fault = sameItemFault(same.id, before.file, before.lines[same.beforeAt] ?? 0);
    log.add({ ...fault, file: source.file, row: source.lines[same.at] ?? 0 });
    drops.set(source, (drops.get(source) ?? new Set()).add(same.at));
  }
  for (const [source, rows] of drops) dropRows(source, rows);
}
