import type { MappedFault, MappedRows } from "@pinwright/book";
import type { CellFault } from "../../../worker/views/table-faults.ts";
import type { TableRow } from "../../tables/logic/arrange.ts";
import type { GridEdit } from "../../tables/logic/changes.ts";

/** What a person mended in rows before they are taken in. */
export interface Mended {
  /** Texts of cells by row and column. */
  readonly cells: ReadonlyMap<string, Readonly<Record<string, string>>>;
  /** Rows that are not taken. */
  readonly left: ReadonlySet<string>;
}

export const NOTHING_MENDED: Mended = { cells: new Map(), left: new Set() };

/** Rows as they would be taken in; the id of a row is its index in the sheet. */
export const previewRows = ({ rows }: MappedRows, { cells, left }: Mended): readonly TableRow[] =>
  rows.flatMap((row) => {
    const id = String(row.index);
    return left.has(id) ? [] : [{ id, cells: filled({ ...row.cells, ...cells.get(id) }) }];
  });

const filled = (cells: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(cells).filter(([, text]) => text !== ""));

/** Mending with one more edit; rows that it adds are not taken, because they are in no file. */
export function mendedBy(mended: Mended, edit: Pick<GridEdit, "cells">): Mended {
  const cells = new Map(mended.cells);
  for (const { row, column, to } of edit.cells) cells.set(row, { ...cells.get(row), [column]: to });
  return { ...mended, cells };
}

export const without = (mended: Mended, ids: readonly string[]): Mended => ({
  ...mended,
  left: new Set([...mended.left, ...ids]),
});

/**
 * What is wrong by row: what the trial found, and what could not be converted while reading, as long as nobody
 * mended that cell.
 */
export function previewFaults(
  rows: readonly TableRow[],
  trial: readonly { readonly index: number; readonly fault: CellFault }[],
  reading: readonly MappedFault[],
  mended: Mended,
): ReadonlyMap<string, readonly CellFault[]> {
  const byRow = new Map<string, CellFault[]>();
  const add = (id: string, fault: CellFault): void => {
    const list = byRow.get(id) ?? [];
    if (!list.some((one) => one.column === fault.column && fault.column !== null)) list.push(fault);
    byRow.set(id, list);
  };
  const shown = new Set(rows.map((row) => row.id));
  for (const { index, column, code, value, expected, nearest } of reading) {
    const id = String(index);
    if (!shown.has(id) || mended.cells.get(id)?.[column] !== undefined) continue;
    add(id, { column, code, value, expected, nearest });
  }
  for (const { index, fault } of trial) {
    const id = rows[index]?.id;
    if (id !== undefined) add(id, fault);
  }
  return byRow;
}
