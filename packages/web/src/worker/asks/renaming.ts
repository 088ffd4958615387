import { type CellChange, renameRow } from "@pinwright/book";
import { newRowId } from "../edits/rows.ts";
import type { Model } from "../model.ts";

/** A row of the book that gets another id. */
export interface RenamingParam {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** What a renaming would change everywhere, and how many cells that name the row follow it. */
export interface Renaming {
  readonly changes: readonly CellChange[];
  readonly followers: number;
}

/** The changes of a renaming; null where the table has no names that others use, or the new one cannot be had. */
export function renaming({ tables }: Model, { table, from, to }: RenamingParam): Renaming | null {
  const renamed = renameRow(tables, table, from, to, newRowId);
  if (!renamed.ok) return null;
  const { changes } = renamed;
  const own = (change: CellChange): boolean => change.table === table && change.column === "id";
  const followers = changes.filter((change) => change.table !== "renames" && !own(change)).length;
  return { changes, followers };
}
