import { machineSchema } from "../machine.ts";
import { NotJson } from "../read/machine.ts";
import type { RawBook, RawTable } from "../read/raw.ts";
import { isOutlineName } from "../read/words.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import {
  type CellRows,
  type Cells,
  type CellTables,
  MACHINE_TABLE,
  NO_CELLS,
  NO_ROWS,
  OUTLINE_TABLE,
  OUTLINE_TEXT,
  RANK,
  rowOrder,
} from "./cell-tables.ts";

/** The one row of `MACHINE_TABLE`. */
export const MACHINE_ROW = "machine";

/** Ids of the rows of each table in order: the id of index `i` is that of row `i + 2` of a fault. */
export type RowIds = ReadonlyMap<string, readonly string[]>;

const byCodePoint = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** File that faults of a shop's table name. */
export const shopFile = (table: string): string => `shop/${table}.csv`;

/** File that faults of a book's table name. */
export const bookFile = (table: string): string => `${table}.csv`;

/** Columns of a row that its table does not have. */
export function otherColumns(table: Table, cells: Cells): readonly string[] {
  let others: string[] | null = null;
  for (const name of cells.keys()) {
    if (name === RANK || Object.hasOwn(table.columns, name)) continue;
    others ??= [];
    others.push(name);
  }
  return others ?? NO_COLUMNS;
}

const NO_COLUMNS: readonly string[] = [];

/** The heading of a table: its columns in order, then whatever else its cells have. */
export function headingOf(table: Table, others: Iterable<string>): readonly string[] {
  return [...Object.keys(table.columns), ...[...new Set(others)].sort(byCodePoint)];
}

/** A table of text cells, with the ids of its rows. */
function rawTableOf(
  table: Table,
  rows: CellRows,
  file: string,
): { readonly raw: RawTable; readonly ids: readonly string[] } {
  const ids = rowOrder(rows);
  const ordered = ids.map((id) => rows.get(id) ?? NO_CELLS);
  const header = headingOf(
    table,
    ordered.flatMap((cells) => otherColumns(table, cells)),
  );
  const body = ordered.map((cells) => header.map((name) => cells.get(name) ?? ""));
  return { raw: { file, header, rows: body }, ids };
}

/** The tables of a schema that have rows. */
function rawTables(
  schema: Readonly<Record<string, Table>>,
  tables: CellTables,
  fileOf: (table: string) => string,
): { readonly raw: ReadonlyMap<string, RawTable>; readonly rowIds: Map<string, readonly string[]> } {
  const raw = new Map<string, RawTable>();
  const rowIds = new Map<string, readonly string[]>();
  for (const [name, table] of Object.entries(schema)) {
    const rows = tables.get(name);
    if (rows === undefined || rows.size === 0) continue;
    const made = rawTableOf(table, rows, fileOf(name));
    raw.set(name, made.raw);
    rowIds.set(name, made.ids);
  }
  return { raw, rowIds };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return new NotJson(text);
  }
}

/** `machine.json` from its cells; undefined when there are none. */
export function machineOf(rows: CellRows): unknown {
  const cells = rows.get(MACHINE_ROW);
  if (cells === undefined) return undefined;
  const known = Object.keys(machineSchema.shape);
  const others = [...cells.keys()].filter((key) => key !== RANK && !known.includes(key)).sort(byCodePoint);
  return Object.fromEntries(
    [...known, ...others].flatMap((key) => {
      const text = cells.get(key);
      return text === undefined ? [] : [[key, parsed(text)]];
    }),
  );
}

/** Drawings by file name, in the order of their rows; a row whose id is no name of a drawing is left out. */
export function outlineTextsOf(rows: CellRows): ReadonlyMap<string, string> {
  const names = rowOrder(rows).filter(isOutlineName);
  return new Map(names.map((name) => [name, rows.get(name)?.get(OUTLINE_TEXT) ?? ""]));
}

/**
 * A book of cells as raw tables, and the ids of their rows, so that a fault leads to a cell. A table without
 * rows is absent; a value of the machine that is no JSON is kept so that reading calls it a fault.
 */
export function rawBookOf(tables: CellTables): { readonly raw: RawBook; readonly rowIds: RowIds } {
  const { raw, rowIds } = rawTables(BOOK_TABLES, tables, bookFile);
  return {
    raw: {
      machine: machineOf(tables.get(MACHINE_TABLE) ?? NO_ROWS),
      tables: raw,
      outlines: outlineTextsOf(tables.get(OUTLINE_TABLE) ?? NO_ROWS),
      unreadable: new Set(),
    },
    rowIds,
  };
}

/** The same for the tables of a shop. */
export function rawShopOf(tables: CellTables): {
  readonly raw: ReadonlyMap<string, RawTable>;
  readonly rowIds: RowIds;
} {
  return rawTables(SHOP_TABLES, tables, shopFile);
}
