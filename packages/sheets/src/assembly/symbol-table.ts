import type { ScrewSymbol } from "@pinwright/engine";
import type { Block } from "../compose/flow.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { symbolMark } from "./symbol-mark.ts";

/** A row of a table whose first column shows a symbol; null: none. */
export interface SymbolRow {
  readonly symbol: ScrewSymbol | null;
  readonly row: TableRow;
}

/** Room above the first line of a cell, and at its left: as tables set them. */
const ABOVE_MM = 1.5;
const LEFT_MM = 1.2;

/**
 * A table whose first column is drawn: the symbol of each row. Its cells are those of the other columns.
 * @param header of the first column
 */
export function symbolTable(
  header: string,
  columns: readonly TableColumn[],
  rows: readonly SymbolRow[],
  widthMm: number,
  continued: string,
  symbolMm: number,
): Block[] {
  // The row is made as high as its symbol by the lettering of the first column, which has none.
  const first: TableColumn = { header, minMm: symbolMm, heightMm: symbolMm };
  const capital = Math.max(symbolMm, ...columns.map((c) => c.heightMm ?? 0));
  const blocks = table(
    [first, ...columns],
    rows.map(({ row }) => (row.kind === "group" ? row : { ...row, cells: ["", ...row.cells] })),
    widthMm,
    continued,
  );
  return blocks.map((block, i) => {
    const symbol = rows[i - 1]?.symbol ?? null;
    if (symbol === null) return block;
    const middle = { xMm: LEFT_MM + symbolMm / 2, yMm: ABOVE_MM + capital - symbolMm / 2 };
    return { ...block, marks: [...block.marks, symbolMark(symbol, middle, symbolMm)] };
  });
}
