import type { CellFault } from "../../../worker/views/table-faults.ts";
import type { TableRow } from "./arrange.ts";
import type { EditColumn } from "./grid-edit.ts";
import type { Spot } from "./selection.ts";

type Faults = ReadonlyMap<string, readonly CellFault[]>;

/** Ids of the rows whose cell in a column says the same and is wrong in the same way. */
export const faultsAlike = (
  rows: readonly TableRow[],
  faults: Faults,
  column: string,
  text: string,
  fault: Pick<CellFault, "code" | "nearest">,
): readonly string[] =>
  rows.flatMap(({ id, cells }) =>
    (cells[column] ?? "") === text &&
    faults
      .get(id)
      ?.some((one) => one.column === column && one.code === fault.code && one.nearest === fault.nearest)
      ? [id]
      : [],
  );

/** The next faulty cell after a cell, row by row and round the end; null when no shown row is faulty. */
export function nextFault(
  rows: readonly TableRow[],
  columns: readonly EditColumn[],
  faults: Faults,
  after: Spot,
): Spot | null {
  const places: Spot[] = [];
  for (const [row, { id }] of rows.entries()) {
    const found = faults.get(id);
    if (found === undefined) continue;
    const named = new Set(found.map((fault) => fault.column));
    const before = places.length;
    for (const [col, { name }] of columns.entries()) if (named.has(name)) places.push({ row, col });
    if (places.length === before) places.push({ row, col: 0 });
  }
  const isAfter = (spot: Spot): boolean =>
    spot.row > after.row || (spot.row === after.row && spot.col > after.col);
  return places.find(isAfter) ?? places[0] ?? null;
}
