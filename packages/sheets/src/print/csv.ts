import { escapeFormula } from "@pinwright/book/csv";
import type { SheetDocument } from "../compose/document.ts";
import type { Grid, GridValue } from "../compose/grid.ts";

function cell(value: GridValue): string {
  if (typeof value === "number") return String(value);
  const text = escapeFormula(value);
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** A list as CSV: comma, LF. Texts that a spreadsheet would run as a formula get an apostrophe. */
export const gridCsv = ({ header, rows }: Pick<Grid, "header" | "rows">): string =>
  `${[header, ...rows].map((row) => row.map(cell).join(",")).join("\n")}\n`;

/** The list of a sheet as CSV: its first grid, UTF-8 with a byte-order mark (spreadsheets need it to read Chinese). */
export function renderCsv(document: SheetDocument): Uint8Array {
  const grid = document.grids[0];
  if (grid === undefined)
    throw new Error(`Sheet ${document.id} has no list: CSV can be written of lists only.`);
  return new TextEncoder().encode(`\ufeff${gridCsv(grid)}`);
}
