import { encode } from "uqr";
import { box } from "./draw.ts";
import type { Box } from "./mark.ts";

/** Dark squares of a QR code, row by row from the top: runs of `[x, length]` in modules. */
export interface CodeSquares {
  readonly modules: number;
  readonly rows: readonly (readonly (readonly [number, number])[])[];
}

/** QR code (ISO/IEC 18004, error correction M or better) of a text, without its quiet zone. */
export function codeSquares(text: string): CodeSquares {
  // One mask for all: readers read any, and trying all eight for the evenest takes most of the time.
  const { data, size } = encode(text, { ecc: "M", border: 0, maskPattern: 2 });
  return { modules: size, rows: data.map(runsOf) };
}

function runsOf(cells: readonly boolean[]): [number, number][] {
  const runs: [number, number][] = [];
  let start = -1;
  for (let i = 0; i <= cells.length; i++) {
    const on = cells[i] === true;
    if (on && start < 0) start = i;
    if (!on && start >= 0) {
      runs.push([start, i - start]);
      start = -1;
    }
  }
  return runs;
}

/** The squares of a code as boxes on the page. */
export function codeBoxes(squares: CodeSquares, at: { xMm: number; yMm: number }, sizeMm: number): Box[] {
  const moduleMm = sizeMm / squares.modules;
  return squares.rows.flatMap((runs, row) =>
    runs.map(([x, length]) =>
      box(at.xMm + x * moduleMm, at.yMm + row * moduleMm, length * moduleMm, moduleMm),
    ),
  );
}
