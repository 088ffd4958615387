import type { AnyRow, RawTable } from "../read/raw.ts";
import type { Table } from "../schema/table.ts";
import { cellText } from "./cell.ts";

/** A table as text cells: the heading in the order of the schema, the rows in their own. */
export function rawTable(table: Table, rows: readonly Readonly<AnyRow>[], file: string): RawTable {
  const columns = Object.entries(table.columns);
  return {
    file,
    header: columns.map(([name]) => name),
    rows: rows.map((row) => columns.map(([name, column]) => cellText(column, row[name]))),
  };
}
