import { type CellChange, type CellTables, plainDecimal, RANK } from "@pinwright/book";
import { newRowId, rankAtEnd, rowOfKey } from "./rows.ts";

/** Tables whose rows are drawn and can be copied or deleted there. */
type DrawnTable =
  | "devices"
  | "boards"
  | "mechanisms"
  | "inlines"
  | "fasteners"
  | "waypoints"
  | "cutouts"
  | "lanes"
  | "crossings";

/** New rows at the end of their tables; a later row may refer to the id of an earlier one. */
export interface AddRows {
  readonly kind: "add";
  readonly rows: readonly {
    readonly table: DrawnTable;
    readonly cells: Readonly<Record<string, string | number>>;
  }[];
}

/** Rows again, under new ids and at other places. What belongs to one thing alone is left out of a copy. */
export interface CopyRows {
  readonly kind: "copy";
  readonly rows: readonly { readonly table: DrawnTable; readonly id: string; readonly newId: string }[];
  readonly dxMm: number;
  readonly dyMm: number;
  readonly panelId: string;
  readonly side: "top" | "under";
}

/** Rows to be deleted, and with them whatever cannot be without them. */
export interface RemoveRows {
  readonly kind: "remove";
  readonly rows: readonly { readonly table: DrawnTable; readonly id: string }[];
}

/** Cells of one row, by its key. */
export interface SetRow {
  readonly kind: "row";
  readonly table: string;
  readonly id: string;
  readonly cells: Readonly<Record<string, string>>;
}

/** Numbers that must be unlike for each: a copy has to get its own. */
const OWN_COLUMNS: ReadonlySet<string> = new Set(["number", "address", "terminated"]);

interface NewRow {
  readonly table: string;
  readonly cells: ReadonlyMap<string, string>;
}

/** Changes that make rows at the end of their tables, in the order given. */
function added(tables: CellTables, rows: readonly NewRow[]): readonly CellChange[] {
  return [...new Set(rows.map((row) => row.table))].flatMap((table) => {
    const own = rows.filter((row) => row.table === table);
    const ranks = rankAtEnd(tables, table, own.length);
    return own.flatMap(({ cells }, i) => {
      const row = newRowId();
      const filled = [...cells].filter(([column, text]) => column !== RANK && text !== "");
      return [[RANK, ranks[i] ?? ""] as const, ...filled].map(
        ([column, to]): CellChange => ({ table, row, column, from: "", to }),
      );
    });
  });
}

const textOf = (value: string | number): string => (typeof value === "number" ? plainDecimal(value) : value);

export const addRows = (tables: CellTables, { rows }: AddRows): readonly CellChange[] =>
  added(
    tables,
    rows.map(({ table, cells }) => ({
      table,
      cells: new Map(Object.entries(cells).map(([column, value]) => [column, textOf(value)])),
    })),
  );

export function copyRows(tables: CellTables, edit: CopyRows): readonly CellChange[] {
  const newIds = new Map(edit.rows.map(({ id, newId }) => [id, newId]));
  const rows = edit.rows.flatMap(({ table, id, newId }): NewRow[] => {
    const row = rowOfKey(tables, table, id);
    const cells = row === null ? undefined : tables.get(table)?.get(row);
    if (cells === undefined) return [];
    const copy = new Map([...cells].filter(([column]) => !OWN_COLUMNS.has(column)));
    copy.set("id", newId);
    if (table === "lanes") {
      for (const end of ["from", "to"]) copy.set(end, newIds.get(copy.get(end) ?? "") ?? copy.get(end) ?? "");
      return [{ table, cells: copy }];
    }
    copy.set("panel", edit.panelId);
    copy.set("side", edit.side);
    for (const [column, by] of [
      ["x_mm", edit.dxMm],
      ["y_mm", edit.dyMm],
    ] as const)
      copy.set(column, plainDecimal(Math.round((Number(copy.get(column) ?? 0) + by) * 100) / 100));
    const holds = copy.get("holds");
    if (holds !== undefined) copy.set("holds", newIds.get(holds) ?? holds);
    return [{ table, cells: copy }];
  });
  return added(tables, rows);
}

/** Tables whose rows name a waypoint at either end. */
const WAYS = ["lanes", "crossings"] as const;

function* removed(tables: CellTables, { rows }: RemoveRows): Generator<readonly [string, string]> {
  const gone = new Map(rows.map(({ table, id }) => [`${table} ${id}`, id]));
  const isGone = (table: string, id: string | undefined): boolean => gone.has(`${table} ${id ?? ""}`);
  for (const { table, id } of rows) {
    const row = rowOfKey(tables, table, id);
    if (row !== null) yield [table, row];
  }
  for (const table of WAYS)
    for (const [row, cells] of tables.get(table) ?? [])
      if (isGone("waypoints", cells.get("from")) || isGone("waypoints", cells.get("to")))
        if (!isGone(table, cells.get("id"))) yield [table, row];
  const items = new Set(rows.flatMap(({ table, id }) => (ITEM_TABLES.has(table) ? [id] : [])));
  for (const [row, cells] of tables.get("ends") ?? []) {
    const item = (cells.get("point") ?? "").split(/[:/]/u)[0] ?? "";
    if (items.has(item)) yield ["ends", row];
  }
  for (const [row, cells] of tables.get("fasteners") ?? [])
    if (items.has(cells.get("holds") ?? "") && !isGone("fasteners", cells.get("id")))
      yield ["fasteners", row];
}

const ITEM_TABLES: ReadonlySet<string> = new Set(["devices", "boards", "mechanisms", "inlines"]);

/**
 * A waypoint takes its lanes and crossings along; an item takes the ends at its points along, so that no net leads
 * to nothing, and the fasteners that hold it.
 */
export function removeRows(tables: CellTables, edit: RemoveRows): readonly CellChange[] {
  return [...removed(tables, edit)].flatMap(([table, row]) =>
    [...(tables.get(table)?.get(row) ?? [])].map(
      ([column, from]): CellChange => ({ table, row, column, from, to: "" }),
    ),
  );
}

export function setRow(tables: CellTables, { table, id, cells }: SetRow): readonly CellChange[] {
  const row = rowOfKey(tables, table, id);
  if (row === null) return [];
  return Object.entries(cells).flatMap(([column, to]) => {
    const from = tables.get(table)?.get(row)?.get(column) ?? "";
    return from === to ? [] : [{ table, row, column, from, to }];
  });
}
