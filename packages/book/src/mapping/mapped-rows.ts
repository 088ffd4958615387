import type { FaultCode } from "../fault.ts";
import { compileCell, type ReadCell } from "../read/cell.ts";
import { readNumber } from "../read/number.ts";
import { plainDecimal } from "../read/plain-decimal.ts";
import { CellProblem } from "../read/problem.ts";
import { convertToColumn } from "../read/units.ts";
import type { Column } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";
import { shorten } from "../text/shorten.ts";
import { fold } from "./fold.ts";
import type { MappedHeading } from "./guess.ts";

/** A row of a foreign sheet as cells of a table. */
export interface MappedRow {
  /** Index in the rows of the sheet. */
  readonly index: number;
  readonly cells: Readonly<Record<string, string>>;
}

/** What is wrong with a cell of a foreign sheet; it is taken as it stands, to be mended in the book. */
export interface MappedFault {
  /** Index in the rows of the sheet. */
  readonly index: number;
  readonly heading: string;
  readonly column: string;
  readonly code: FaultCode;
  readonly value: string;
  readonly expected: string;
  readonly nearest: string | null;
}

/** The rows of a foreign sheet as cells of a table. */
export interface MappedRows {
  readonly rows: readonly MappedRow[];
  readonly faults: readonly MappedFault[];
  /** Columns that must be filled and that no heading goes to. */
  readonly missing: readonly string[];
}

interface Target {
  readonly at: number;
  readonly heading: string;
  readonly name: string;
  readonly column: Column<unknown>;
  readonly unit: string | null;
  readonly read: ReadCell;
}

const PLAIN = /^-?\d+(?:\.\d+)?$/;

/**
 * A number in another unit as one in the unit of its column, in plain decimal; null when it is no number. A comma
 * may stand before a fraction or between thousands, so that nothing is converted which has one.
 */
function converted(text: string, unit: string, { name, column }: Target): string | null {
  if (PLAIN.test(text)) {
    const value = convertToColumn(Number(text), unit, name);
    return value === null ? null : plainDecimal(value);
  }
  return /[\p{L},]/u.test(text) ? null : withoutUnit(`${text} ${unit}`, name, column);
}

/** A number with its unit behind it, or a fraction with one, in the unit of its column; null when it is none. */
function withoutUnit(text: string, name: string, column: Column<unknown>): string | null {
  // A whole number would be rounded.
  if (column.kind !== "number" || text.includes(",")) return null;
  const reading = readNumber(text, name, column);
  return reading instanceof CellProblem && reading.code === "number-unit" ? reading.nearest : null;
}

/**
 * The text that a cell surely means, else the text itself: a choice in other letters, another word for yes or
 * no, a number with its unit behind it.
 */
function mended(text: string, { name, column, read }: Target): string {
  const reading = read(text);
  if (!(reading instanceof CellProblem)) return text;
  const { code, nearest } = reading;
  if (code === "choice-unknown" && column.kind === "choice")
    return column.oneOf?.find((word) => fold(word) === fold(text)) ?? text;
  if (code === "flag-form") return nearest ?? text;
  return withoutUnit(text, name, column) ?? text;
}

/** The cell that a text becomes, and what is wrong with it. */
function toCell(
  text: string,
  target: Target,
): { readonly cell: string; readonly problem: CellProblem | null } {
  const { unit } = target;
  const inUnit = unit === null || text === "" ? null : converted(text, unit, target);
  const cell = inUnit ?? mended(text, target);
  if (unit !== null && inUnit === null && text !== "" && cell === text)
    return { cell, problem: notConverted(text, unit) };
  const reading = target.read(cell);
  return { cell, problem: reading instanceof CellProblem ? reading : null };
}

const notConverted = (text: string, unit: string): CellProblem =>
  new CellProblem(
    "number-form",
    `a plain number in ${unit}, as the heading says; \`${shorten(text)}\` is kept as it is`,
  );

/**
 * Takes the rows of a foreign sheet over into the columns of a table. Values in another unit are converted, and
 * what is surely meant is written as the book writes it; everything else that the column does not take stays as
 * it is, with a fault. Blank rows are left out. Whether references lead anywhere shows when the rows are in the
 * book.
 */
export function mappedRows(
  rows: readonly (readonly string[])[],
  mapping: readonly MappedHeading[],
  table: Table,
): MappedRows {
  const targets = mapping.flatMap(({ heading, column: name, unit }, at): Target[] => {
    const column = name === null ? undefined : table.columns[name];
    if (name === null || column === undefined) return [];
    return [{ at, heading, name, column, unit, read: compileCell(name, column) }];
  });
  const faults: MappedFault[] = [];
  const mapped = rows.flatMap((row, index): MappedRow[] => {
    if (targets.every(({ at }) => (row[at] ?? "").trim() === "")) return [];
    const cells: Record<string, string> = {};
    for (const target of targets) {
      const { at, heading, name } = target;
      const text = (row[at] ?? "").trim();
      const { cell, problem } = toCell(text, target);
      if (cell !== "") cells[name] ??= cell;
      if (problem === null) continue;
      const { code, expected, nearest } = problem;
      faults.push({ index, heading, column: name, code, value: shorten(text), expected, nearest });
    }
    return [{ index, cells }];
  });
  const taken = new Set(targets.map(({ name }) => name));
  const missing = Object.entries(table.columns).flatMap(([name, { required }]) =>
    required && !taken.has(name) ? [name] : [],
  );
  return { rows: mapped, faults, missing };
}
