import { type Range, sizeOf } from "./selection.ts";
import type { Block } from "./tsv.ts";

/** A text that goes to a cell on the screen; rows beyond the last one are new. */
export interface Put {
  readonly row: number;
  readonly col: number;
  readonly text: string;
}

export interface Pasted {
  readonly puts: readonly Put[];
  /** The cells that were filled, to be selected. */
  readonly range: Range;
  /** Columns of the block for which there was no column. */
  readonly lostColumns: number;
}

/**
 * Where the cells of a block go: from the upper left cell of the selection on. A selection that is a whole
 * number of blocks in both directions is filled with them; one cell so fills any selection. Rows go on below the
 * last one; columns beyond the last one are lost.
 */
export function pasteBlock(block: Block, range: Range, cols: number): Pasted {
  const height = block.length;
  const width = block.reduce((most, row) => Math.max(most, row.length), 0);
  const size = sizeOf(range);
  const fits = height > 0 && width > 0 && size.rows % height === 0 && size.cols % width === 0;
  const rows = fits ? size.rows : height;
  const wanted = fits ? size.cols : width;
  const kept = Math.min(wanted, cols - range.left);
  const puts: Put[] = [];
  for (let row = 0; row < rows; row++)
    for (let col = 0; col < kept; col++)
      puts.push({
        row: range.top + row,
        col: range.left + col,
        text: block[row % height]?.[col % width] ?? "",
      });
  return {
    puts,
    range: {
      top: range.top,
      left: range.left,
      bottom: range.top + Math.max(rows, 1) - 1,
      right: range.left + Math.max(kept, 1) - 1,
    },
    lostColumns: wanted - kept,
  };
}
