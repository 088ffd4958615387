import { ALL_TABLES, type CellChange, type CellTables, RANK } from "@pinwright/book";
import { newRowId, rankAtEnd } from "./rows.ts";

type Cells = Readonly<Record<string, string>>;

/** Rows by their keys: one that is there gets the given cells, one that is not is made at the end of its table. */
export interface PutRows {
  readonly kind: "put";
  readonly rows: readonly { readonly table: string; readonly key: Cells; readonly cells: Cells }[];
  /** Rows that go. */
  readonly gone?: readonly { readonly table: string; readonly key: Cells }[];
}

/** Row id of the row of a table whose key columns say all of `key`; one of a blank key column says nothing there. */
function rowWith(tables: CellTables, table: string, key: Cells): string | null {
  const columns = ALL_TABLES[table]?.key ?? ["id"];
  for (const [row, cells] of tables.get(table) ?? [])
    if (columns.every((column) => (cells.get(column) ?? "") === (key[column] ?? ""))) return row;
  return null;
}

function setCells(tables: CellTables, table: string, row: string, cells: Cells): readonly CellChange[] {
  const before = tables.get(table)?.get(row);
  return Object.entries(cells).flatMap(([column, to]) => {
    const from = before?.get(column) ?? "";
    return from === to ? [] : [{ table, row, column, from, to }];
  });
}

function made(tables: CellTables, table: string, rows: readonly Cells[]): readonly CellChange[] {
  const ranks = rankAtEnd(tables, table, rows.length);
  return rows.flatMap((cells, i) => {
    const row = newRowId();
    const filled = Object.entries(cells).filter(([, text]) => text !== "");
    return [[RANK, ranks[i] ?? ""] as const, ...filled].map(
      ([column, to]): CellChange => ({ table, row, column, from: "", to }),
    );
  });
}

/** Cells that change so that rows say what is wanted. */
export function putRows(tables: CellTables, { rows, gone = [] }: PutRows): readonly CellChange[] {
  const changes: CellChange[] = [];
  const wanted = new Map<string, Cells[]>();
  for (const { table, key, cells } of rows) {
    const row = rowWith(tables, table, key);
    if (row !== null) changes.push(...setCells(tables, table, row, cells));
    else wanted.set(table, [...(wanted.get(table) ?? []), { ...key, ...cells }]);
  }
  for (const [table, own] of wanted) changes.push(...made(tables, table, own));
  for (const { table, key } of gone) {
    const row = rowWith(tables, table, key);
    if (row === null) continue;
    for (const [column, from] of tables.get(table)?.get(row) ?? [])
      changes.push({ table, row, column, from, to: "" });
  }
  return changes;
}
