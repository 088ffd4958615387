import type { FaultNote } from "../fault-log.ts";
import type { Table } from "../schema/table.ts";
import { compileCell, type ReadCell } from "./cell.ts";
import { CellProblem } from "./problem.ts";
import type { AnyRow } from "./raw.ts";

interface CompiledColumn {
  readonly name: string;
  readonly blank: unknown;
  readonly isKey: boolean;
  readonly read: ReadCell;
}

/** What is wrong with one cell of a row, before it is known in which line the row stands. */
export type CellFault = Omit<FaultNote, "file" | "row"> & { readonly column: string };

/** A row as far as it could be read. */
export interface RowReading {
  /** A bad cell is the column's blank; null when a cell of the key is bad. */
  readonly row: AnyRow | null;
  readonly faults: readonly CellFault[];
}

/** Text of a cell by the name and the place of its column in the schema; null when there is no such column. */
export type TextOf = (name: string, at: number) => string | null;

const NO_FAULTS: readonly CellFault[] = [];

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

/** Reads the cells of one row; a column that is not there reads as its blank. */
export function readRow(table: Table, textOf: TextOf): RowReading {
  const row: AnyRow = {};
  let faults: CellFault[] | null = null;
  let keyIsGood = true;
  for (const [at, column] of compile(table).entries()) {
    const text = textOf(column.name, at);
    if (text === null) {
      row[column.name] = column.blank;
      continue;
    }
    const reading = column.read(text);
    if (reading instanceof CellProblem) {
      row[column.name] = column.blank;
      if (column.isKey) keyIsGood = false;
      const { code, expected, nearest } = reading;
      faults ??= [];
      faults.push({ code, column: column.name, value: text, expected, nearest });
    } else row[column.name] = reading;
  }
  return { row: keyIsGood ? row : null, faults: faults ?? NO_FAULTS };
}

/** The key of a row as one text; parts cannot run into each other. */
export const keyText = (table: Table, row: Readonly<AnyRow>): string =>
  table.key.length === 1
    ? String(row[table.key[0] ?? ""])
    : table.key.map((name) => String(row[name])).join("\u0000");

/** A key as a reader sees it. */
export const shownKey = (key: string): string => key.split("\u0000").join(" ");

/** That the key of a row was there before, in row `before` of the file. */
export function sameKeyFault(table: Table, key: string, before: number): CellFault {
  const names = table.key.map((name) => `\`${name}\``).join(" and ");
  return {
    code: "id-duplicate",
    column: table.key[table.key.length - 1] ?? "",
    value: shownKey(key),
    expected: `${names} of its own; row ${before} has the same${table.key.length > 1 ? " combination" : ""}. This row is not read`,
  };
}
