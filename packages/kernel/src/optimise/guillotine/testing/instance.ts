import { readFileSync } from "node:fs";
import type { ValueProblem } from "../most-value.ts";
import type { CuttingProblem } from "../problem.ts";

/** A benchmark instance: one sheet size and pieces, of limited number or not, with a value where it is given. */
export interface Instance {
  readonly width: number;
  readonly height: number;
  /** `copies` null: no limit. */
  readonly pieces: readonly {
    readonly width: number;
    readonly height: number;
    readonly copies: number | null;
    readonly value: number;
  }[];
}

/**
 * Reads `width height` of the sheet, the number of rows, then a row each: `width height`, once each, or
 * `width height copies value`, copies −1 for no limit.
 */
export const readInstance = (url: URL): Instance => {
  const [sheet = [], , ...rows] = readFileSync(url, "utf8")
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number));
  const [width = 0, height = 0] = sheet;
  const pieces = rows.map(([w = 0, h = 0, copies = 1, value = w * h]) => ({
    width: w,
    height: h,
    copies: copies < 0 ? null : copies,
    value,
  }));
  return { width, height, pieces };
};

/** The saw of the benchmarks: no kerf; three stages, rips first, with a last trim, or any number of stages. */
export const sheetProblem = (instance: Instance, stages: 3 | null, mayTurn: boolean): CuttingProblem => ({
  pieces: instance.pieces.map(({ width, height, copies }) => ({
    widthMm: width,
    heightMm: height,
    count: copies ?? 0,
    mayTurn,
  })),
  sheets: [
    {
      widthMm: instance.width,
      heightMm: instance.height,
      trim: { leftMm: 0, rightMm: 0, bottomMm: 0, topMm: 0 },
      count: null,
      cost: 1,
    },
  ],
  kerfMm: 0,
  stages,
  firstCut: "rip",
  lastTrim: true,
});

/** The same saw, one sheet and what each piece is worth. */
export const valueProblem = (instance: Instance, mayTurn: boolean): ValueProblem => ({
  pieces: instance.pieces.map(({ width, height, copies, value }) => ({
    widthMm: width,
    heightMm: height,
    count: copies,
    mayTurn,
    value,
  })),
  sheet: {
    widthMm: instance.width,
    heightMm: instance.height,
    trim: { leftMm: 0, rightMm: 0, bottomMm: 0, topMm: 0 },
  },
  kerfMm: 0,
});
