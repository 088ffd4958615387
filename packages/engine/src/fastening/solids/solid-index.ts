import { type BoxMm, boxesOverlap } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";

/** About as wide as most mechanisms are. */
const CELL_MM = 50;
/** More columns than any panel of 5 m has cells on either side of its origin, so that a cell has one number. */
const COLUMNS = 4096;

const columnOf = (mm: number): number => Math.floor(mm / CELL_MM);

/** Solids by where they are, to find those near a place without looking at all. */
export class SolidIndex {
  readonly #panels = new Map<string, Map<number, Solid[]>>();

  constructor(solids: Iterable<readonly Solid[]>) {
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

  #add(solid: Solid): void {
    let cells = this.#panels.get(solid.panelId);
    if (cells === undefined) {
      cells = new Map();
      this.#panels.set(solid.panelId, cells);
    }
    const { box } = solid;
    const lastColumn = columnOf(box.maxXMm);
    const lastRow = columnOf(box.maxYMm);
    for (let column = columnOf(box.minXMm); column <= lastColumn; column++)
      for (let row = columnOf(box.minYMm); row <= lastRow; row++) {
        const key = column * COLUMNS + row;
        const cell = cells.get(key);
        if (cell === undefined) cells.set(key, [solid]);
        else cell.push(solid);
      }
  }
}
