import type { AnyRow, RawTable } from "../read/raw.ts";
import type { CellKind } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";
import { rawTable } from "../write/table.ts";
import { escapeFormula } from "./formula.ts";

const NUMERIC: ReadonlySet<CellKind> = new Set(["number", "integer"]);
const PLAIN = /^-?\d+(?:\.\d+)?$/;

const quote = (cell: string): string => (/[",\n\r]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/**
 * The CSV of a table of text cells: UTF-8 without byte-order mark, LF, comma, rows in their order, quotes only
 * where they are needed, a line end after the last row. Texts that would run as a formula are escaped; a plain
 * number in a column of numbers is written as it is.
 */
export function writeRawCsv(table: Table, { header, rows }: RawTable): string {
  const isNumber = header.map((name) => {
    const column = table.columns[name];
    return column !== undefined && NUMERIC.has(column.kind);
  });
  const lines = rows.map((cells) =>
    cells
      .map((cell, i) => (isNumber[i] === true && PLAIN.test(cell) ? cell : quote(escapeFormula(cell))))
      .join(","),
  );
  const heading = header.map((name) => quote(escapeFormula(name))).join(",");
  return `${[heading, ...lines].join("\n")}\n`;
}

/** The canonical CSV of a table: heading in the order of the schema, numbers in shortest plain decimal. */
export const writeCsv = (table: Table, rows: readonly Readonly<AnyRow>[]): string =>
  writeRawCsv(table, rawTable(table, rows, `${table.name}.csv`));
