import { type BoxMm, boxesOverlap } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";

/** About as wide as most mechanisms are. */
const CELL_MM = 50;
/** More columns than any panel of 5 m has cells on either side of its origin, so that a cell has one number. */
const COLUMNS = 4096;

/** A square of a panel with the solids that reach into it, in the order in which they were given. */
export interface SolidCell {
  readonly panelId: string;
  readonly column: number;
  readonly row: number;
  readonly solids: readonly Solid[];
}

const columnOf = (mm: number): number => Math.floor(mm / CELL_MM);

/**
 * Solids by where they are, to find those near a place without looking at all. Cells hold whatever comes within
 * `marginMm` of them.
 */
export class SolidIndex {
  readonly #panels = new Map<string, Map<number, Solid[]>>();
  readonly #marginMm: number;

  /** @param marginMm by how much the box of each solid is grown when it is put into cells */
  constructor(solids: Iterable<readonly Solid[]>, marginMm = 0) {
    this.#marginMm = marginMm;
    for (const list of solids) for (const solid of list) this.#add(solid);
  }

  /** Solids of a panel whose boxes overlap a box and whose heights overlap (lowMm, highMm), in a fixed order. */
  near(
    panelId: string,
    box: BoxMm,
    lowMm = Number.NEGATIVE_INFINITY,
    highMm = Number.POSITIVE_INFINITY,
  ): readonly Solid[] {
    const cells = this.#panels.get(panelId);
    if (cells === undefined) return [];
    const found = new Set<Solid>();
    const lastColumn = columnOf(box.maxXMm);
    const lastRow = columnOf(box.maxYMm);
    for (let column = columnOf(box.minXMm); column <= lastColumn; column++)
      for (let row = columnOf(box.minYMm); row <= lastRow; row++)
        for (const solid of cells.get(column * COLUMNS + row) ?? [])
          if (solid.lowMm < highMm && lowMm < solid.highMm && boxesOverlap(solid.box, box)) found.add(solid);
    return [...found];
  }

  /** Every cell that anything reaches into. */
  *cells(): Generator<SolidCell> {
    for (const [panelId, cells] of this.#panels)
      for (const [key, solids] of cells) {
        const column = Math.floor((key + COLUMNS / 2) / COLUMNS);
        yield { panelId, column, row: key - column * COLUMNS, solids };
      }
  }

  /** The cell in which a point lies. */
  static cellOf(xMm: number, yMm: number): { readonly column: number; readonly row: number } {
    return { column: columnOf(xMm), row: columnOf(yMm) };
  }

  #add(solid: Solid): void {
    let cells = this.#panels.get(solid.panelId);
    if (cells === undefined) {
      cells = new Map();
      this.#panels.set(solid.panelId, cells);
    }
    const { box } = solid;
    const lastColumn = columnOf(box.maxXMm + this.#marginMm);
    const lastRow = columnOf(box.maxYMm + this.#marginMm);
    for (let column = columnOf(box.minXMm - this.#marginMm); column <= lastColumn; column++)
      for (let row = columnOf(box.minYMm - this.#marginMm); row <= lastRow; row++) {
        const key = column * COLUMNS + row;
        const cell = cells.get(key);
        if (cell === undefined) cells.set(key, [solid]);
        else cell.push(solid);
      }
  }
}
