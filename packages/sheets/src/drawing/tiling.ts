import { box } from "../compose/draw.ts";
import type { Box } from "../compose/mark.ts";
import { type Cuttable, through } from "./window.ts";

export interface Tile {
  /** `B3`: column letter, row number counted from the top. */
  readonly name: string;
  readonly column: number;
  readonly row: number;
  readonly window: Box;
  readonly printed: boolean;
}

export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  readonly overlapMm: number;
  readonly tiles: readonly Tile[];
}

/** `A` … `Z`, `AA` … for columns counted from 0. */
function columnName(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : columnName(Math.floor(column / 26) - 1) + last;
}

const countOf = (extent: number, window: number, overlap: number): number =>
  extent <= window ? 1 : Math.ceil((extent - overlap) / (window - overlap));

/** What no neighbour shows better: a tile up to the middle lines of its seams. */
function core(
  window: Box,
  column: number,
  row: number,
  columns: number,
  rows: number,
  overlapMm: number,
): Box {
  const half = overlapMm / 2;
  const left = column === 0 ? 0 : half;
  const right = column === columns - 1 ? 0 : half;
  const top = row === 0 ? 0 : half;
  const bottom = row === rows - 1 ? 0 : half;
  return box(
    window.xMm + left,
    window.yMm + top,
    window.widthMm - left - right,
    window.heightMm - top - bottom,
  );
}

/**
 * Cuts a board into overlapping windows. A tile on which nothing but the board's edge would be printed is left
 * out: the branches of a harness are connected, so the printed tiles are as well.
 */
export function tileBoard(
  board: { readonly widthMm: number; readonly heightMm: number },
  window: { readonly widthMm: number; readonly heightMm: number },
  overlapMm: number,
  marks: readonly Cuttable[],
): Tiling {
  const columns = countOf(board.widthMm, window.widthMm, overlapMm);
  const rows = countOf(board.heightMm, window.heightMm, overlapMm);
  const drawn = marks.filter((m) => m.leaf.layer !== "BORDER");
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = box(
        column * (window.widthMm - overlapMm),
        row * (window.heightMm - overlapMm),
        window.widthMm,
        window.heightMm,
      );
      tiles.push({
        name: `${columnName(column)}${row + 1}`,
        column,
        row,
        window: at,
        printed: through(drawn, core(at, column, row, columns, rows, overlapMm)).length > 0,
      });
    }
  }
  return { columns, rows, overlapMm, tiles };
}
