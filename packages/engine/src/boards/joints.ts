import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { groupRows, type Machine } from "../model/index.ts";

export type Placement = BookRow<"placements">;

/** Parts on each type of board, in code-point order of reference. */
export const placementsByType = (machine: Machine): ReadonlyMap<string, readonly Placement[]> =>
  groupRows(
    machine.book.tables.placements.toSorted((a, b) => compareText(a.reference, b.reference)),
    (row) => row.board_type,
  );

/** Parts on one type of board, in code-point order of reference. */
export const placementsOf = (machine: Machine, typeId: string): readonly Placement[] =>
  machine.book.tables.placements
    .filter((row) => row.board_type === typeId)
    .toSorted((a, b) => compareText(a.reference, b.reference));

export const jointsOf = (rows: readonly Placement[]): number =>
  rows.reduce((sum, row) => sum + row.joints, 0);
