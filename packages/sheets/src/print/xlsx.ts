import { escapeFormula } from "@pinwright/book/csv";
import excel, { type Worksheet } from "exceljs";
import { unzipSync, zipSync } from "fflate";
import type { SheetDocument } from "../compose/document.ts";
import type { Grid } from "../compose/grid.ts";

/** Least and largest width of a column, in characters. */
const WIDTH = { least: 6, most: 42 } as const;

/** The first day that a zip file can hold: a workbook must not change because it was written later. */
const ZIP_START = new Date(1980, 0, 1);

function fill(sheet: Worksheet, grid: Grid): void {
  sheet.addRow([...grid.header]);
  for (const row of grid.rows) {
    sheet.addRow(row.map((v) => (typeof v === "string" ? escapeFormula(v) : v)));
  }
  const head = sheet.getRow(1);
  head.font = { bold: true };
  head.alignment = { wrapText: true, vertical: "top" };
  grid.header.forEach((title, i) => {
    const texts = [title, ...grid.rows.map((row) => String(row[i] ?? ""))];
    const longest = Math.max(...texts.flatMap((t) => t.split("\n").map((l) => l.length)));
    sheet.getColumn(i + 1).width = Math.min(WIDTH.most, Math.max(WIDTH.least, longest + 2));
  });
  sheet.views = [{ state: "frozen", ySplit: 1 }];
  sheet.autoFilter = { from: { row: 1, column: 1 }, to: { row: 1, column: grid.header.length } };
}

/**
 * The lists of a sheet as a workbook, one worksheet a grid: numbers as numbers, texts as texts, formula-like texts
 * with an apostrophe. Times in it are the date of issue, so the same list gives the same bytes.
 */
export async function renderXlsx(document: SheetDocument): Promise<Uint8Array> {
  if (document.grids.length === 0)
    throw new Error(`Sheet ${document.id} has no list: XLSX can be written of lists only.`);
  const issued = new Date(`${document.identity.date}T00:00:00Z`);
  const book = new excel.Workbook();
  book.creator = "Pinwright";
  book.lastModifiedBy = "Pinwright";
  book.created = issued;
  book.modified = issued;
  book.title = document.title;
  for (const grid of document.grids) fill(book.addWorksheet(grid.name), grid);
  // Stored, not packed: it is unpacked at once to be zipped with a fixed time.
  const written = new Uint8Array(await book.xlsx.writeBuffer({ zip: { compression: "STORE" } }));
  const entries = Object.entries(unzipSync(written)).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  // Level 2 takes half the time of the usual 6.
  return zipSync(Object.fromEntries(entries), { mtime: ZIP_START, level: 2 });
}
