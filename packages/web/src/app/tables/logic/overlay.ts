import { type CellChange, RANK } from "@pinwright/book";
import type { TableRow } from "./arrange.ts";

/**
 * The rows of a table with changes on top that were made here and have not come back from the worker yet, so
 * that typing never waits. A change counts as long as its cell still says what it said before.
 */
export function withOverlay(rows: readonly TableRow[], changes: readonly CellChange[]): readonly TableRow[] {
  if (changes.length === 0) return rows;
  const byId = new Map(rows.map((row) => [row.id, row]));
  const touched = new Map<string, Record<string, string>>();
  let moved = false;
  for (const { row, column, from, to } of changes) {
    const cells = touched.get(row) ?? { ...byId.get(row)?.cells };
    if ((cells[column] ?? "") !== from) continue;
    if (to === "") delete cells[column];
    else cells[column] = to;
    touched.set(row, cells);
    moved ||= column === RANK;
  }
  if (touched.size === 0) return rows;
  if (!moved)
    return rows.map((row) => {
      const cells = touched.get(row.id);
      return cells === undefined ? row : { id: row.id, cells };
    });
  for (const [id, cells] of touched) byId.set(id, { id, cells });
  const rank = (row: TableRow): string => row.cells[RANK] ?? "";
  return [...byId.values()]
    .filter((row) => rank(row) !== "" || !touched.has(row.id))
    .sort((a, b) =>
      rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : a.id < b.id ? -1 : a.id > b.id ? 1 : 0,
    );
}

/** The changes that still wait: those whose cell says what it said before they were made. */
export function stillWaiting(
  rows: ReadonlyMap<string, TableRow["cells"]>,
  changes: readonly CellChange[],
): readonly CellChange[] {
  const waiting = changes.filter(({ row, column, from }) => (rows.get(row)?.[column] ?? "") === from);
  return waiting.length === changes.length ? changes : waiting;
}
