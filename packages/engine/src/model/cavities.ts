import type { BookRow } from "@pinwright/book";
import type { PanelPoint } from "./machine.ts";

/** Extent of a housing over its cavities, without its walls. */
export interface CavityGrid {
  readonly columns: number;
  readonly rows: number;
  readonly pitchMm: number;
  readonly rowPitchMm: number;
}

/** Pitch that is drawn for a family that gives none, such as a ring or a tab. */
const DRAWN_PITCH_MM = 6;

/** Columns and rows of a connector's cavities. */
export function cavityGrid(
  connector: Pick<BookRow<"connectors">, "ways" | "rows">,
  family: Pick<BookRow<"connector_families">, "pitch_mm" | "row_pitch_mm">,
): CavityGrid {
  const pitchMm = family.pitch_mm ?? DRAWN_PITCH_MM;
  return {
    columns: Math.ceil(connector.ways / connector.rows),
    rows: connector.rows,
    pitchMm,
    rowPitchMm: family.row_pitch_mm ?? pitchMm,
  };
}

/**
 * Place of a cavity relative to cavity 1, x towards cavity 2, seen from the mating side of the header.
 * Rows are numbered one after the other, each from the same end.
 * @param pin cavity number, from 1
 */
export function cavityAt(grid: CavityGrid, pin: number): PanelPoint {
  const index = pin - 1;
  return {
    xMm: (index % grid.columns) * grid.pitchMm,
    yMm: Math.floor(index / grid.columns) * grid.rowPitchMm,
  };
}

/** Middle of all cavities relative to cavity 1. */
export function gridMiddle(grid: CavityGrid): PanelPoint {
  return { xMm: ((grid.columns - 1) * grid.pitchMm) / 2, yMm: ((grid.rows - 1) * grid.rowPitchMm) / 2 };
}
