import { resolve } from "node:path";
import { detectForeignDelimiter } from "../csv/delimiter.ts";
import { parseCsv } from "../csv/parse.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import type { RawTable } from "../read/raw.ts";
import { newBudget, TextIntake } from "./intake.ts";
import { startsLikeZip, WORKBOOK_ENTRY } from "./kind.ts";
import { isFolder, readText } from "./read-folder.ts";
import { loadWorkbook, newTextBudget, toRawTable } from "./read-xlsx.ts";
import { ZipReader } from "./unzip.ts";

/** A table that somebody else made, with headings of its own. */
export interface ForeignTable {
  /** Name of the worksheet, or of the file. */
  readonly name: string;
  /** Row of the file in which the headings stand; row `i` of `rows` is row `headerRow + 1 + i` of the file. */
  readonly headerRow: number;
  /** Headings; blank where a column has values but no heading. */
  readonly header: readonly string[];
  /** Every row as wide as the heading. */
  readonly rows: readonly (readonly string[])[];
}

/** The tables of a file, as far as it could be read, and what is wrong with it. */
export interface ForeignFile {
  readonly sheets: readonly ForeignTable[];
  readonly faults: readonly Fault[];
}

/** Rows at the top of a sheet among which the headings are looked for. */
const TOP_ROWS = 20;

const isFilled = (cell: string): boolean => cell.trim() !== "";
const filledIn = (row: readonly string[]): number => row.filter(isFilled).length;

/**
 * Index of the row with the headings: the first of the top rows that has more than half as many filled cells as
 * the fullest of them, so that a title above the table is passed over. Common practice, no source.
 */
function headerIndex(rows: readonly (readonly string[])[]): number {
  const counts = rows.slice(0, TOP_ROWS).map(filledIn);
  const fullest = Math.max(0, ...counts);
  return fullest === 0 ? -1 : counts.findIndex((count) => count * 2 > fullest);
}

/** The table of a sheet without what stands above its headings and blank columns; null when nothing is in it. */
function toForeign(name: string, { header, rows }: RawTable): ForeignTable | null {
  const all = [header, ...rows];
  const at = headerIndex(all);
  if (at < 0) return null;
  const below = all.slice(at);
  while (below.length > 1 && filledIn(below[below.length - 1] ?? []) === 0) below.pop();
  const width = below.reduce((most, row) => Math.max(most, row.findLastIndex(isFilled) + 1), 0);
  const wide = below.map((row) => Array.from({ length: width }, (_, k) => row[k] ?? ""));
  const [headings = [], ...body] = wide;
  return { name, headerRow: at + 1, header: headings.map((cell) => cell.trim()), rows: body };
}

/** Blanks cells that no column of a book could hold; each is a fault. */
function withinLimits(table: RawTable, log: FaultLog): RawTable {
  const short = (cell: string, row: number, k: number): string => {
    if (cell.length <= LIMITS.cellChars) return cell;
    log.add({
      code: "cell-too-long",
      file: table.file,
      row,
      column: table.header[k]?.slice(0, 80) ?? `cell ${k + 1}`,
      expected: `at most ${LIMITS.cellChars} characters in a cell; this one is left blank`,
    });
    return "";
  };
  return {
    file: table.file,
    header: table.header.map((cell, k) => short(cell, 1, k)),
    rows: table.rows.map((cells, i) =>
      cells.some((cell) => cell.length > LIMITS.cellChars)
        ? cells.map((cell, k) => short(cell, i + 2, k))
        : cells,
    ),
  };
}

/**
 * Reads a spreadsheet or CSV that somebody else made: every worksheet of an `.xlsx`, or a text in UTF-8 whose
 * cells are separated by comma, semicolon, tab or bar. Limits are those of a book. Nothing is thrown for bad
 * input. `name` is what the person called the file.
 */
export async function readForeignSheet(path: string, name: string): Promise<ForeignFile> {
  const log = new FaultLog();
  const place = resolve(path);
  const isZip = (await isFolder(place)) ? null : await startsLikeZip(place);
  if (isZip === null) {
    log.add({ code: "file-missing", file: name, expected: "an `.xlsx` or a CSV file" });
    return { sheets: [], faults: log.list() };
  }
  const tables = isZip ? await workbookTables(place, name, log) : await csvTables(place, name, log);
  const sheets = tables.flatMap((table) => toForeign(table.file, withinLimits(table, log)) ?? []);
  if (sheets.length === 0 && log.list().length === 0) {
    log.add({ code: "file-unreadable", file: name, expected: "a table with headings; the file is blank" });
  }
  return { sheets, faults: log.list() };
}

async function csvTables(path: string, name: string, log: FaultLog): Promise<readonly RawTable[]> {
  // The separator is known only when the first lines are: the limits of cells are watched after that.
  const text = await readText(path, name, new TextIntake(name, newBudget(), false), log);
  if (text === null) return [];
  const { table } = parseCsv(name, text, log, detectForeignDelimiter(text));
  return table === null ? [] : [table];
}

async function workbookTables(path: string, name: string, log: FaultLog): Promise<readonly RawTable[]> {
  const zip = await ZipReader.open(path, name, log);
  if (zip === null) return [];
  try {
    if (!zip.entries.some((entry) => entry.name === WORKBOOK_ENTRY)) {
      log.add({
        code: "file-unreadable",
        file: name,
        expected: "an `.xlsx` or a CSV file; this is an archive of something else",
      });
      return [];
    }
    const workbook = await loadWorkbook(path, name, zip, log);
    const budget = newTextBudget();
    return workbook?.worksheets.map((sheet) => toRawTable(sheet, budget, log)) ?? [];
  } finally {
    await zip.close();
  }
}
