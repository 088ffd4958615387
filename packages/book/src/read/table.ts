import type { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import type { Table } from "../schema/table.ts";
import { compileCell, type ReadCell } from "./cell.ts";
import { readHeader } from "./header.ts";
import { CellProblem } from "./problem.ts";
import type { AnyRow, RawTable } from "./raw.ts";

/** A table with types, and for each row its place in the file. */
export interface TableRows {
  readonly table: Table;
  readonly file: string;
  rows: AnyRow[];
  /** Row in the file, the heading being 1. */
  lines: number[];
  /** Cells that had a fault, so that no rule complains of the blank that took their place; see `markBad`. */
  readonly bad: Set<string>;
  /** False when the file could not be read as far as its keys: references into it are then not judged. */
  readonly usable: boolean;
}

export const emptyTable = (table: Table, file: string, usable = true): TableRows => ({
  table,
  file,
  rows: [],
  lines: [],
  bad: new Set(),
  usable,
});

/** Remembers that a cell, or with `line` null a whole column, holds a blank only because it was faulty. */
export const markBad = (source: TableRows, line: number | null, column: string): void => {
  source.bad.add(`${line ?? "all"} ${column}`);
};

/** Whether the value of a cell stands for one that was faulty. */
export const isBad = (source: TableRows, line: number, column: string): boolean =>
  source.bad.size > 0 && (source.bad.has(`${line} ${column}`) || source.bad.has(`all ${column}`));

interface CompiledColumn {
  readonly name: string;
  readonly blank: unknown;
  readonly isKey: boolean;
  readonly read: ReadCell;
}

const compiled = new WeakMap<Table, readonly CompiledColumn[]>();

function compile(table: Table): readonly CompiledColumn[] {
  const known = compiled.get(table);
  if (known !== undefined) return known;
  const columns = Object.entries(table.columns).map(([name, column]) => ({
    name,
    blank: column.blank,
    isKey: table.key.includes(name),
    read: compileCell(name, column),
  }));
  compiled.set(table, columns);
  return columns;
}

/**
 * Reads a table cell by cell. A bad cell becomes the column's blank; a row whose key has a bad cell is dropped,
 * as is a row whose key was there before. Every one of these is a fault in the log.
 */
export function readTable(table: Table, raw: RawTable, log: FaultLog): TableRows {
  const columns = compile(table);
  const places = readHeader(table, raw, log);
  const keyMissing = columns.some(
    (c, i) => c.isKey && places[i] === -1 && table.columns[c.name]?.required === true,
  );
  if (keyMissing) return emptyTable(table, raw.file, false);
  const result = emptyTable(table, raw.file);
  columns.forEach((column, i) => {
    if (places[i] === -1 && table.columns[column.name]?.required === true) markBad(result, null, column.name);
  });
  const width = raw.header.length;
  const seen = new Map<string, number>();
  for (const [index, cells] of raw.rows.entries()) {
    const line = index + 2;
    if (index >= LIMITS.rowsPerTable) {
      log.add({
        code: "rows-too-many",
        file: raw.file,
        row: line,
        expected: `at most ${LIMITS.rowsPerTable} rows in a table; the rows from here on are not read`,
      });
      break;
    }
    if (cells.every((cell) => cell === "")) continue;
    if (cells.length !== width) checkWidth(raw, cells, line, width, log);
    const row = readRow(columns, places, cells, line, result, log);
    if (row === null) continue;
    const key = keyText(table, row);
    const before = seen.get(key);
    if (before !== undefined) {
      duplicateKey(table, raw.file, line, key, before, log);
      continue;
    }
    seen.set(key, line);
    result.rows.push(row);
    result.lines.push(line);
  }
  return result;
}

function readRow(
  columns: readonly CompiledColumn[],
  places: readonly number[],
  cells: readonly string[],
  line: number,
  result: TableRows,
  log: FaultLog,
): AnyRow | null {
  const row: AnyRow = {};
  let keyIsGood = true;
  for (const [i, column] of columns.entries()) {
    const at = places[i] ?? -1;
    if (at < 0) {
      row[column.name] = column.blank;
      continue;
    }
    const cell = cells[at] ?? "";
    const reading = column.read(cell);
    if (reading instanceof CellProblem) {
      row[column.name] = column.blank;
      if (column.isKey) keyIsGood = false;
      markBad(result, line, column.name);
      log.add({
        code: reading.code,
        file: result.file,
        row: line,
        column: column.name,
        value: cell,
        expected: reading.expected,
        nearest: reading.nearest,
      });
    } else row[column.name] = reading;
  }
  return keyIsGood ? row : null;
}

function checkWidth(
  raw: RawTable,
  cells: readonly string[],
  line: number,
  width: number,
  log: FaultLog,
): void {
  const extra = cells.slice(width).filter((cell) => cell.trim() !== "");
  if (cells.length > width && extra.length === 0) return;
  const why =
    cells.length < width
      ? "a separator is missing, or the row was cut off"
      : "a value with the separator in it must stand in double quotes";
  log.add({
    code: "row-ragged",
    file: raw.file,
    row: line,
    value: extra[0] ?? null,
    expected: `${width} cells as in the heading, found ${cells.length}; ${why}`,
  });
}

/** The key of a row as one text; parts cannot run into each other. */
export const keyText = (table: Table, row: AnyRow): string =>
  table.key.length === 1
    ? String(row[table.key[0] ?? ""])
    : table.key.map((name) => String(row[name])).join("\u0000");

function duplicateKey(
  table: Table,
  file: string,
  line: number,
  key: string,
  before: number,
  log: FaultLog,
): void {
  const names = table.key.map((name) => `\`${name}\``).join(" and ");
  log.add({
    code: "id-duplicate",
    file,
    row: line,
    column: table.key[table.key.length - 1] ?? null,
    value: key.split("\u0000").join(" "),
    expected: `${names} of its own; row ${before} has the same${table.key.length > 1 ? " combination" : ""}. This row is not read`,
  });
}
