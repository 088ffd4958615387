import { ALL_TABLES, applyChanges, type CellChange, LiveBook, mergedRows } from "@pinwright/book";
import { newRowId } from "../edits/rows.ts";
import type { Model } from "../model.ts";
import type { CellFault } from "../views/table-faults.ts";

/** Rows of cells that would be taken into a table. */
export interface ImportTrialParam {
  readonly table: string;
  readonly rows: readonly Readonly<Record<string, string>>[];
}

/** What taking rows in would do. */
export interface ImportTrial {
  readonly changes: readonly CellChange[];
  readonly added: number;
  /** Rows that are there already by their key, and get other texts. */
  readonly filled: number;
  /** Rows that are there already and say the same. */
  readonly same: number;
  /** What would be wrong with the rows, by their index. */
  readonly faults: readonly { readonly index: number; readonly fault: CellFault }[];
}

/** Reads books as they would be; it remembers, so that the second trial costs as much as what differs. */
let reader: LiveBook | null = null;

/** Takes rows into a table for trial: a row whose key is there already fills in that one, others come last. */
export function importTrial({ tables, shopTables }: Model, { table, rows }: ImportTrialParam): ImportTrial {
  const ofShop = ALL_TABLES[table]?.scope === "shop";
  const before = ofShop ? shopTables : tables;
  const { changes, rowIds, fresh } = mergedRows(before, table, rows, newRowId);
  const after = applyChanges(before, changes).tables ?? before;
  reader ??= new LiveBook();
  const reading = ofShop ? reader.update(tables, after) : reader.update(after, shopTables);
  const indices = new Map(rowIds.map((id, index) => [id, index]));
  const faults = reading.faults().flatMap((fault) => {
    const index = fault.table === table && fault.rowId !== null ? indices.get(fault.rowId) : undefined;
    if (index === undefined) return [];
    const { code, column, value, expected, nearest } = fault;
    return [{ index, fault: { code, column, value, expected, nearest } }];
  });
  const changed = new Set(changes.map((change) => change.row));
  const present = rowIds.filter((id) => before.get(table)?.has(id) === true);
  const filled = present.filter((id) => changed.has(id)).length;
  return { changes, added: fresh, filled, same: present.length - filled, faults };
}
