import { readFile } from "node:fs/promises";
import ExcelJS from "exceljs";
import type { RawFiles } from "../csv/files.ts";
import type { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import type { RawTable } from "../read/raw.ts";
import { isOutlineName } from "../read/words.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { nearest } from "../text/nearest.ts";
import type { ZipReader } from "./unzip.ts";
import { MACHINE_SHEET, OUTLINE_SHEET, unescapeOutline } from "./write-xlsx.ts";
import { cellToText } from "./xlsx-text.ts";

/** Parts of a worksheet that hold no values; some of them could make a small file fill the memory. */
const IGNORED = [
  "mergeCells",
  "dataValidations",
  "conditionalFormatting",
  "hyperlinks",
  "autoFilter",
  "drawing",
  "picture",
  "legacyDrawing",
  "tableParts",
  "rowBreaks",
  "colBreaks",
  "extLst",
];

/** Unpacks everything once without keeping it, to learn that it stays within the limits. */
async function fitsInMemory(zip: ZipReader, name: string, log: FaultLog): Promise<boolean> {
  let left: number = LIMITS.workbookBytes;
  for (const entry of zip.entries) {
    const fault = await zip.read(entry, (piece) => {
      left -= piece.length;
      return left >= 0
        ? null
        : {
            code: "zip-too-large",
            file: name,
            expected: `at most ${LIMITS.workbookBytes} bytes when it is unpacked`,
          };
    });
    if (fault === null) continue;
    log.add({ ...fault, file: name });
    return false;
  }
  return true;
}

/** Characters that the cells of one workbook may still have; the same text in many cells counts each time. */
interface TextBudget {
  charsLeft: number;
}

export const newTextBudget = (): TextBudget => ({ charsLeft: LIMITS.bookBytes });

/** Texts of one row of a worksheet; a cell beyond a limit is blank, with a fault. */
function rowTexts(sheet: ExcelJS.Worksheet, r: number, budget: TextBudget, log: FaultLog): string[] {
  const cells: string[] = [];
  const row = sheet.findRow(r);
  row?.eachCell({ includeEmpty: false }, (cell, column) => {
    if (column > LIMITS.cellsPerRow) return;
    while (cells.length < column - 1) cells.push("");
    const text = cellToText(cell.value);
    budget.charsLeft -= text.length;
    cells[column - 1] = budget.charsLeft < 0 ? "" : text;
  });
  if (row !== undefined && row.cellCount > LIMITS.cellsPerRow) {
    const expected = `at most ${LIMITS.cellsPerRow} cells in a row`;
    log.add({ code: "row-ragged", file: sheet.name, row: r, expected });
  }
  return cells;
}

/** A worksheet as a raw table; its file is the name of the worksheet. */
export function toRawTable(sheet: ExcelJS.Worksheet, budget: TextBudget, log: FaultLog): RawTable {
  const rows: string[][] = [];
  const last = Math.min(sheet.rowCount, LIMITS.rowsPerTable + 2);
  for (let r = 1; r <= last && budget.charsLeft >= 0; r++) {
    const cells = rowTexts(sheet, r, budget, log);
    if (budget.charsLeft >= 0) rows.push(cells);
    else {
      log.add({
        code: "file-too-large",
        file: sheet.name,
        row: r,
        expected: `at most ${LIMITS.bookBytes} characters in all cells of a workbook; the rows from here on are not read`,
      });
    }
  }
  const [header = [], ...body] = rows;
  // A row of a worksheet ends with its last filled cell; a short one is not ragged.
  for (const cells of body) if (cells.length > 0) while (cells.length < header.length) cells.push("");
  return { file: sheet.name, header, rows: body };
}

/** `machine.json` from the rows of its worksheet. */
function toMachine(table: RawTable): unknown {
  const machine: Record<string, unknown> = {};
  for (const [key = "", value = ""] of table.rows) {
    if (key === "") continue;
    if (key === "languages") machine[key] = value.split(" ").filter((word) => word !== "");
    else if (key === "format" || key.endsWith("_deg") || key.endsWith("_mm")) {
      machine[key] = /^-?\d+(?:\.\d+)?$/.test(value) ? Number(value) : value;
    } else machine[key] = value;
  }
  return machine;
}

/** Outline texts from the rows of their worksheet, part after part. */
function toOutlines(table: RawTable, log: FaultLog): Map<string, string> {
  const outlines = new Map<string, string>();
  for (const [i, [file = "", , text = ""]] of table.rows.entries()) {
    if (file === "") continue;
    if (isOutlineName(file)) outlines.set(file, (outlines.get(file) ?? "") + unescapeOutline(text));
    else {
      const expected = "name of a `.dxf` or `.svg` file without a path";
      log.add({
        code: "outline-missing",
        file: table.file,
        row: i + 2,
        column: "file",
        value: file,
        expected,
      });
    }
  }
  return outlines;
}

/** A workbook within the limits, or null with a fault. */
export async function loadWorkbook(
  path: string,
  name: string,
  zip: ZipReader,
  log: FaultLog,
): Promise<ExcelJS.Workbook | null> {
  if (!(await fitsInMemory(zip, name, log))) return null;
  const workbook = new ExcelJS.Workbook();
  try {
    const bytes = await readFile(path);
    await workbook.xlsx.load(Uint8Array.from(bytes).buffer, { ignoreNodes: IGNORED });
    return workbook;
  } catch (error) {
    const why = error instanceof Error ? error.message.slice(0, 120) : "unknown reason";
    log.add({ code: "file-unreadable", file: name, expected: `a workbook that can be read; ${why}` });
    return null;
  }
}

/** A book, and the shop if it has one, from a workbook that `packXlsx` or a person made; null when it cannot be read. */
export async function readXlsx(
  path: string,
  name: string,
  zip: ZipReader,
  log: FaultLog,
): Promise<RawFiles | null> {
  const workbook = await loadWorkbook(path, name, zip, log);
  if (workbook === null) return null;
  const budget = newTextBudget();
  const tables = new Map<string, RawTable>();
  const shopTables = new Map<string, RawTable>();
  let machine: unknown;
  let outlines = new Map<string, string>();
  const known = [MACHINE_SHEET, OUTLINE_SHEET, ...Object.keys(BOOK_TABLES), ...Object.keys(SHOP_TABLES)];
  for (const sheet of workbook.worksheets) {
    const { name: title } = sheet;
    if (title === MACHINE_SHEET) machine = toMachine(toRawTable(sheet, budget, log));
    else if (title === OUTLINE_SHEET) outlines = toOutlines(toRawTable(sheet, budget, log), log);
    else if (Object.hasOwn(BOOK_TABLES, title)) tables.set(title, toRawTable(sheet, budget, log));
    else if (Object.hasOwn(SHOP_TABLES, title)) shopTables.set(title, toRawTable(sheet, budget, log));
    else {
      const expected = "a worksheet named like a table of `docs/book.md`; this one is not read";
      log.add({ code: "file-unknown", file: title, value: title, expected, nearest: nearest(title, known) });
    }
  }
  if (machine === undefined) {
    log.add({
      code: "file-missing",
      file: MACHINE_FILE,
      expected: `a worksheet \`${MACHINE_SHEET}\`, which says what the book is`,
    });
  }
  return {
    raw: { machine, tables, outlines, unreadable: new Set() },
    shop: shopTables.size === 0 ? null : shopTables,
    shopUnreadable: new Set(),
    // A workbook holds texts only.
    drawings: new Map(),
  };
}
