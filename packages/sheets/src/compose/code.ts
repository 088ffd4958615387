import { type DrawingContext, qrcode } from "bwip-js/generic";
import { box } from "./draw.ts";
import type { Box } from "./mark.ts";

/** Dark squares of a QR code, row by row from the top: runs of `[x, length]` in modules. */
export interface CodeSquares {
  readonly modules: number;
  readonly rows: readonly (readonly (readonly [number, number])[])[];
}

/**
 * QR code (ISO/IEC 18004, error correction M) of a text. The encoder gives outlines of dark areas; each vertical
 * edge turns over all modules to its right, which fills them by the even-odd rule.
 */
export const codeSquares = (text: string): CodeSquares => {
  let modules = 0;
  let dark: boolean[][] = [];
  const fillOutline = (points: readonly (readonly [number, number])[]): void => {
    points.forEach(([x, y], i) => {
      const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
      if (nextX !== x) return;
      for (let row = Math.min(y, nextY); row < Math.max(y, nextY); row++) {
        const cells = dark[row];
        if (cells !== undefined) for (let col = x; col < modules; col++) cells[col] = !cells[col];
      }
    });
  };
  const context: DrawingContext<CodeSquares> = {
    scale: () => [1, 1],
    measure: () => ({ width: 0, ascent: 0, descent: 0 }),
    init: (width) => {
      modules = width;
      dark = Array.from({ length: width }, () => Array.from({ length: width }, () => false));
    },
    line: () => undefined,
    polygon: fillOutline,
    hexagon: () => undefined,
    ellipse: () => undefined,
    fill: () => undefined,
    text: () => undefined,
    end: () => ({ modules, rows: dark.map(runsOf) }),
  };
  // A variable, because the encoder's types leave `eclevel` out.
  const options = { bcid: "qrcode", text, eclevel: "M", scale: 1 };
  return qrcode<CodeSquares>(options, context);
};

const runsOf = (cells: readonly boolean[]): [number, number][] => {
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
};

/** The squares of a code as boxes on the page. */
export const codeBoxes = (squares: CodeSquares, at: { xMm: number; yMm: number }, sizeMm: number): Box[] => {
  const moduleMm = sizeMm / squares.modules;
  return squares.rows.flatMap((runs, row) =>
    runs.map(([x, length]) =>
      box(at.xMm + x * moduleMm, at.yMm + row * moduleMm, length * moduleMm, moduleMm),
    ),
  );
};
