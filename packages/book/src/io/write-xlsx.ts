import ExcelJS from "exceljs";
import { unzipSync } from "fflate";
import type { Book, Shop } from "../book.ts";
import { type BookText, bookText, machineKeys, type TableText } from "../changes/export.ts";
import { plainDecimal } from "../read/plain-decimal.ts";
import type { Column } from "../schema/column.ts";
import { packZip } from "./write-zip.ts";
import { toWorkbookText } from "./xlsx-text.ts";

/** Worksheet of `machine.json`: a row for each key. */
export const MACHINE_SHEET = "machine";
/** Worksheet of the outline files: their text, in rows of at most `OUTLINE_CHARS` characters. */
export const OUTLINE_SHEET = "outlines";
/** A cell of a workbook holds at most 32,767 characters; escapes may make a text longer. */
const OUTLINE_CHARS = 4_000;

const FIXED_TIME = new Date(Date.UTC(1980, 0, 1));

/** Texts are stored as text and shown as text, so that nothing in them runs or turns into a number or date. */
const TEXT_FORMAT = "@";

function addSheet(workbook: ExcelJS.Workbook, name: string, header: readonly string[]): ExcelJS.Worksheet {
  const sheet = workbook.addWorksheet(name, { views: [{ state: "frozen", ySplit: 1 }] });
  sheet.columns = header.map((heading) => ({ header: heading, width: Math.max(10, heading.length + 2) }));
  sheet.getRow(1).font = { bold: true };
  return sheet;
}

function putText(sheet: ExcelJS.Worksheet, row: number, column: number, text: string): void {
  if (text === "") return;
  const cell = sheet.getCell(row, column);
  cell.value = toWorkbookText(text);
  cell.numFmt = TEXT_FORMAT;
}

/** A text that a workbook can hold as a number and give back as the same text. */
const isNumber = (column: Column<unknown> | undefined, text: string): boolean =>
  (column?.kind === "number" || column?.kind === "integer") &&
  /^-?\d/.test(text) &&
  plainDecimal(Number(text)) === text;

function addTable(workbook: ExcelJS.Workbook, { table, raw }: TableText): void {
  const sheet = addSheet(workbook, table.name, raw.header);
  for (const [i, cells] of raw.rows.entries()) {
    for (const [k, text] of cells.entries()) {
      if (isNumber(table.columns[raw.header[k] ?? ""], text))
        sheet.getCell(i + 2, k + 1).value = Number(text);
      else putText(sheet, i + 2, k + 1, text);
    }
  }
}

function shown(value: unknown): string {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map(shown).join(" ");
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

function addMachine(workbook: ExcelJS.Workbook, machine: BookText["machine"]): void {
  const sheet = addSheet(workbook, MACHINE_SHEET, ["key", "value"]);
  for (const [i, key] of machineKeys(machine).entries()) {
    const value = machine[key];
    putText(sheet, i + 2, 1, key);
    if (typeof value === "number") sheet.getCell(i + 2, 2).value = value;
    else putText(sheet, i + 2, 2, shown(value));
  }
}

/** A line of outline text as a cell shows it: backslashes and what XML would not keep are written as escapes. */
export const escapeOutline = (text: string): string =>
  text.replace(/[\\\r\ufffe\uffff]|[^\P{Cc}\n\t]|\p{Cs}/gu, (c) =>
    c === "\\" ? "\\\\" : `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );

/** Takes back what `escapeOutline` did. */
export const unescapeOutline = (text: string): string =>
  text.replace(/\\(?:\\|u([0-9a-f]{4}))/g, (_, code: string | undefined) =>
    code === undefined ? "\\" : String.fromCharCode(Number.parseInt(code, 16)),
  );

function addOutlines(workbook: ExcelJS.Workbook, outlines: BookText["outlines"]): void {
  if (outlines.size === 0) return;
  const sheet = addSheet(workbook, OUTLINE_SHEET, ["file", "part", "text"]);
  let row = 2;
  for (const [name, text] of outlines) {
    for (let at = 0, part = 1; at < text.length; part++, row++) {
      // A pair of surrogates is one character: it is never cut in two.
      const end = /[\ud800-\udbff]$/.test(text.slice(at, at + OUTLINE_CHARS))
        ? at + OUTLINE_CHARS + 1
        : at + OUTLINE_CHARS;
      putText(sheet, row, 1, name);
      sheet.getCell(row, 2).value = part;
      putText(sheet, row, 3, escapeOutline(text.slice(at, end)));
      at = end;
    }
  }
}

/**
 * A workbook of a book: one worksheet a table with every heading, `machine`, and `outlines` with the text of
 * the drawings. The shop's tables are there when a shop is given. The same book gives the same bytes.
 */
export const packXlsx = (book: Book, shop: Shop | null): Promise<Uint8Array> =>
  packTextXlsx(bookText(book, shop));

/** The workbook of a book's text. */
export async function packTextXlsx(text: BookText): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  workbook.created = FIXED_TIME;
  workbook.modified = FIXED_TIME;
  addMachine(workbook, text.machine);
  for (const table of [...text.tables, ...(text.shop ?? [])]) addTable(workbook, table);
  addOutlines(workbook, text.outlines);
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer());
  // Packed again because the library stamps its entries with the time of day.
  return packZip(Object.entries(unzipSync(bytes)));
}
