import { escapeFormula } from "@pinwright/book/csv";
import type { SheetDocument } from "../compose/document.ts";
import type { GridValue } from "../compose/grid.ts";

function cell(value: GridValue): string {
  if (typeof value === "number") return String(value);
  const text = escapeFormula(value);
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * The list of a sheet as CSV: its first grid, UTF-8 with a byte-order mark (spreadsheets need it to read Chinese),
 * comma, LF. Texts that a spreadsheet would run as a formula get an apostrophe.
 */
export function renderCsv(document: SheetDocument): Uint8Array {
  const grid = document.grids[0];
  if (grid === undefined)
    throw new Error(`Sheet ${document.id} has no list: CSV can be written of lists only.`);
  const lines = [grid.header, ...grid.rows].map((row) => row.map(cell).join(","));
  return new TextEncoder().encode(`\ufeff${lines.join("\n")}\n`);
}
