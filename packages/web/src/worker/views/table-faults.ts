import type { FaultCode } from "@pinwright/book";
import { view } from "./view.ts";

/** What is wrong with a cell or, where `column` is null, with a row. */
export interface CellFault {
  readonly code: FaultCode;
  readonly column: string | null;
  readonly value: string | null;
  readonly expected: string;
  readonly nearest: string | null;
}

/** Faults of one table by row id; those of no row in particular under the empty id. */
export const tableFaults = view<string, readonly CellFault[]>({
  uses: ({ tables, shopTables }) => [tables, shopTables],
  entries: (model, name) => {
    const byRow = new Map<string, CellFault[]>();
    for (const { table, rowId, code, column, value, expected, nearest } of model.faults()) {
      if (table !== name) continue;
      const row = rowId ?? "";
      const list = byRow.get(row) ?? [];
      list.push({ code, column, value, expected, nearest });
      byRow.set(row, list);
    }
    return byRow;
  },
  restsInPreview: true,
});
