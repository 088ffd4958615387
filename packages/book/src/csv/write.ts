import type { AnyRow } from "../read/raw.ts";
import type { CellKind } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";
import { rawTable } from "../write/table.ts";
import { escapeFormula } from "./formula.ts";

const NUMERIC: ReadonlySet<CellKind> = new Set(["number", "integer"]);

const quote = (cell: string): string => (/[",\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/**
 * The canonical CSV of a table: UTF-8 without byte-order mark, LF, comma, heading in the order of the schema,
 * rows in their order, quotes only where they are needed, a line end after the last row. Texts that would run
 * as a formula are escaped; numbers are written in shortest plain decimal.
 */
export function writeCsv(table: Table, rows: readonly Readonly<AnyRow>[]): string {
  const raw = rawTable(table, rows, `${table.name}.csv`);
  const isNumber = Object.values(table.columns).map((column) => NUMERIC.has(column.kind));
  const lines = raw.rows.map((cells) =>
    cells.map((cell, i) => (isNumber[i] === true ? cell : quote(escapeFormula(cell)))).join(","),
  );
  return `${[raw.header.join(","), ...lines].join("\n")}\n`;
}
