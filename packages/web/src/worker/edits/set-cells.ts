import { type CellChange, type CellTables, cellOf } from "@pinwright/book";

/** Cells that get other texts. */
export interface SetCells {
  readonly kind: "cells";
  readonly cells: readonly {
    readonly table: string;
    readonly row: string;
    readonly column: string;
    readonly to: string;
  }[];
}

export const setCells = (tables: CellTables, { cells }: SetCells): readonly CellChange[] =>
  cells.flatMap(({ table, row, column, to }) => {
    const from = cellOf(tables, table, row, column);
    return from === to ? [] : [{ table, row, column, from, to }];
  });
