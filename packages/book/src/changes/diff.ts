import { ALL_TABLES } from "../schema/tables/index.ts";
import {
  type CellRows,
  type Cells,
  type CellTables,
  MACHINE_TABLE,
  NO_CELLS,
  NO_ROWS,
  OUTLINE_TABLE,
  RANK,
  rowOrder,
} from "./cell-tables.ts";
import type { CellChange } from "./change.ts";
import { longestIncreasing } from "./longest-increasing.ts";
import { ranksFor } from "./ranks.ts";

/** Tables whose row ids mean something, so that rows are the same exactly when their ids are. */
const NAMED_ROWS: ReadonlySet<string> = new Set([MACHINE_TABLE, OUTLINE_TABLE]);

/** The changes that make one state of a book from another whose rows have the same ids. */
export function diffTables(before: CellTables, after: CellTables): readonly CellChange[] {
  const changes: CellChange[] = [];
  for (const table of new Set([...before.keys(), ...after.keys()])) {
    const [old, now] = [before.get(table) ?? NO_ROWS, after.get(table) ?? NO_ROWS];
    if (old === now) continue;
    for (const row of new Set([...old.keys(), ...now.keys()])) {
      const [was, is] = [old.get(row) ?? NO_CELLS, now.get(row) ?? NO_CELLS];
      if (was === is) continue;
      for (const [column, from] of was) {
        const to = is.get(column) ?? "";
        if (from !== to) changes.push({ table, row, column, from, to });
      }
      for (const [column, to] of is) {
        if (!was.has(column) && to !== "") changes.push({ table, row, column, from: "", to });
      }
    }
  }
  return changes;
}

/**
 * A state of a book that came from elsewhere, with the row ids and ranks of the present one wherever a row is the
 * same: one with the same key, else one with the same cells. Content and order are those of `after`; ranks differ
 * from the present ones only where the order does. `newRowId` makes ids for the rows that are new.
 */
export function matchRows(before: CellTables, after: CellTables, newRowId: () => string): CellTables {
  return new Map(
    [...after].map(([table, rows]) => {
      const old = before.get(table) ?? NO_ROWS;
      return [table, NAMED_ROWS.has(table) ? rows : matched(table, old, rows, newRowId)];
    }),
  );
}

function matched(table: string, old: CellRows, rows: CellRows, newRowId: () => string): CellRows {
  const order = rowOrder(rows);
  const oldOrder = rowOrder(old);
  const same = sameRows(table, old, oldOrder, rows, order);
  const places = new Map(oldOrder.map((id, i) => [id, i]));
  const matches = order.map((id) => same.get(id) ?? null);
  const positions = matches.map((id) => (id === null ? null : (places.get(id) ?? null)));
  const staying = longestIncreasing(positions);
  const ranks = ranksFor(
    matches.map((id, i) => (id !== null && staying.has(i) ? (old.get(id)?.get(RANK) ?? null) : null)),
  );
  return new Map(
    order.map((id, i) => {
      const cells = new Map(rows.get(id) ?? NO_CELLS).set(RANK, ranks[i] ?? "");
      const match = matches[i] ?? null;
      return [match ?? newRowId(), cells] as const;
    }),
  );
}

/** The key of a row as one text, or null when a part of it is blank. */
function keyOf(table: string, cells: Cells): string | null {
  const parts = (ALL_TABLES[table]?.key ?? []).map((column) => cells.get(column)?.trim() ?? "");
  return parts.length === 0 || parts.every((part) => part === "") ? null : parts.join("\u0000");
}

const contentOf = (cells: Cells): string =>
  JSON.stringify(
    [...cells].filter(([column]) => column !== RANK).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)),
  );

/** For each row of `rows` the old row that it is: of those with its key the one with its cells, else the next. */
function sameRows(
  table: string,
  old: CellRows,
  oldOrder: readonly string[],
  rows: CellRows,
  order: readonly string[],
): ReadonlyMap<string, string> {
  const same = new Map<string, string>();
  const taken = new Set<string>();
  const match = (nameOf: (cells: Cells) => string | null) => {
    const waiting = new Map<string, string[]>();
    for (const id of oldOrder) {
      const name = taken.has(id) ? null : nameOf(old.get(id) ?? NO_CELLS);
      if (name === null) continue;
      const ids = waiting.get(name);
      if (ids === undefined) waiting.set(name, [id]);
      else ids.push(id);
    }
    for (const ids of waiting.values()) ids.reverse();
    for (const id of order) {
      const name = same.has(id) ? null : nameOf(rows.get(id) ?? NO_CELLS);
      const found = name === null ? undefined : waiting.get(name)?.pop();
      if (found === undefined) continue;
      same.set(id, found);
      taken.add(found);
    }
  };
  match(contentOf);
  match((cells) => keyOf(table, cells));
  return same;
}

/**
 * What an import makes of a book: the tables and drawings that could not be read stay as they are, and so does
 * what the book has of them.
 */
export function keepUnread(
  present: CellTables,
  imported: CellTables,
  unreadable: ReadonlySet<string>,
): CellTables {
  const result = new Map(imported);
  const outlines = new Map(imported.get(OUTLINE_TABLE) ?? NO_ROWS);
  for (const name of unreadable) {
    const [rows, drawing] = [present.get(name), present.get(OUTLINE_TABLE)?.get(name)];
    if (rows !== undefined) result.set(name, rows);
    else result.delete(name);
    if (drawing !== undefined) outlines.set(name, drawing);
  }
  if (outlines.size > 0) result.set(OUTLINE_TABLE, outlines);
  return result;
}
