import type { BookRow } from "@pinwright/book";
import { cavityGrid, type Landing } from "../model/index.ts";

/** A holder on the board: across its wires, and along them. */
export interface HolderSize {
  readonly widthMm: number;
  readonly depthMm: number;
}

/** Wall of a housing and of the block that holds it, on each side. Common practice, no source. */
const WALL_MM = 3;
/** Least extent of a holder that a hand can grip and a screw can hold down. Common practice, no source. */
const LEAST_MM = 14;
/** Room of one bare terminal in its clip. Common practice, no source. */
const TERMINAL_PITCH_MM = 9;

/**
 * Size of the holder of a landing: its cavities by pitch and rows with a wall all round, or a row of clips for
 * bare terminals. `family` is the one of its points; without it only the least size is known.
 */
export function holderSize(
  landing: Pick<Landing, "connector" | "pointIds">,
  family: BookRow<"connector_families"> | undefined,
): HolderSize {
  if (landing.connector === null || family === undefined) {
    return { widthMm: Math.max(LEAST_MM, landing.pointIds.length * TERMINAL_PITCH_MM), depthMm: LEAST_MM };
  }
  const grid = cavityGrid(landing.connector, family);
  return {
    widthMm: Math.max(LEAST_MM, grid.columns * grid.pitchMm + 2 * WALL_MM),
    depthMm: Math.max(LEAST_MM, grid.rows * grid.rowPitchMm + 2 * WALL_MM),
  };
}
