import type { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import type { Table } from "../schema/table.ts";
import { readHeader } from "./header.ts";
import type { AnyRow, RawTable } from "./raw.ts";
import { keyText, readRow, sameKeyFault } from "./row.ts";

/** A table with types, and for each row its place in the file. */
export interface TableRows {
  readonly table: Table;
  readonly file: string;
  rows: readonly Readonly<AnyRow>[];
  /** Row in the file, the heading being 1. */
  lines: readonly number[];
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

/**
 * Reads a table cell by cell. A bad cell becomes the column's blank; a row whose key has a bad cell is dropped,
 * as is a row whose key was there before. Every one of these is a fault in the log.
 */
export function readTable(table: Table, raw: RawTable, log: FaultLog): TableRows {
  const places = readHeader(table, raw, log);
  const missing = Object.entries(table.columns).flatMap(([name, column], i) =>
    places[i] === -1 && column.required ? [name] : [],
  );
  if (missing.some((name) => table.key.includes(name))) return emptyTable(table, raw.file, false);
  const [rows, lines]: [AnyRow[], number[]] = [[], []];
  const result: TableRows = { ...emptyTable(table, raw.file), rows, lines };
  for (const name of missing) markBad(result, null, name);
  const width = raw.header.length;
  const seen = new Map<string, number>();
  for (const [index, cells] of raw.rows.entries()) {
    const line = index + 2;
    if (index >= LIMITS.rowsPerTable) {
      tooManyRows(raw.file, log);
      break;
    }
    if (cells.every((cell) => cell === "")) continue;
    if (cells.length !== width) checkWidth(raw, cells, line, width, log);
    const { row, faults } = readRow(table, (_, i) => {
      const at = places[i] ?? -1;
      return at < 0 ? null : (cells[at] ?? "");
    });
    for (const fault of faults) {
      markBad(result, line, fault.column);
      log.add({ ...fault, file: raw.file, row: line });
    }
    if (row === null) continue;
    const key = keyText(table, row);
    const before = seen.get(key);
    if (before !== undefined) {
      log.add({ ...sameKeyFault(table, key, before), file: raw.file, row: line });
      continue;
    }
    seen.set(key, line);
    rows.push(row);
    lines.push(line);
  }
  return result;
}

/** That a table has more rows than are read. */
export function tooManyRows(file: string, log: FaultLog): void {
  log.add({
    code: "rows-too-many",
    file,
    row: LIMITS.rowsPerTable + 2,
    expected: `at most ${LIMITS.rowsPerTable} rows in a table; the rows from here on are not read`,
  });
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
