import type { BoxMm } from "@pinwright/kernel";

/** About as wide as most mechanisms are. */
const CELL_MM = 50;
/** More than any panel of 5 m has rows of cells on either side of its origin, so that a cell has one number. */
const ROWS = 4096;

/** Something in a panel's frame. */
export interface Placed {
  readonly panelId: string;
  readonly box: BoxMm;
}

/** A square of a panel with what reaches into it, in the order in which it was added. */
export interface Cell<T> {
  readonly key: string;
  readonly column: number;
  readonly row: number;
  readonly members: readonly T[];
  /** So many of the first are held against each other and the rest; the rest only against these. */
  readonly active: number;
}

const columnOf = (mm: number): number => Math.floor(mm / CELL_MM);

/**
 * What lies on panels, in square cells: two things whose grown boxes overlap meet in exactly one cell that counts, so
 * that every pair is looked at once, and again only when something in that cell is another.
 */
export class Cells<T extends Placed> {
  readonly #panels = new Map<string, Map<number, { readonly members: T[]; active: number }>>();
  readonly #marginMm: number;

  /** @param marginMm by how much each box is grown: half of the largest distance that matters */
  constructor(marginMm: number) {
    this.#marginMm = marginMm;
  }

  /** @param active whether it is held against others of its kind; all that are come first */
  add(member: T, active = true): void {
    let cells = this.#panels.get(member.panelId);
    if (cells === undefined) {
      cells = new Map();
      this.#panels.set(member.panelId, cells);
    }
    const { box } = member;
    const lastColumn = columnOf(box.maxXMm + this.#marginMm);
    const lastRow = columnOf(box.maxYMm + this.#marginMm);
    for (let column = columnOf(box.minXMm - this.#marginMm); column <= lastColumn; column++)
      for (let row = columnOf(box.minYMm - this.#marginMm); row <= lastRow; row++) {
        const key = column * ROWS + row;
        const cell = cells.get(key);
        if (cell === undefined) cells.set(key, { members: [member], active: active ? 1 : 0 });
        else {
          cell.members.push(member);
          if (active) cell.active++;
        }
      }
  }

  /** Cells in which any two things may meet. */
  *cells(): Generator<Cell<T>> {
    for (const [panelId, cells] of this.#panels)
      for (const [key, { members, active }] of cells) {
        if (members.length < 2 || active === 0) continue;
        const column = Math.floor((key + ROWS / 2) / ROWS);
        yield { key: `${panelId} ${key}`, column, row: key - column * ROWS, members, active };
      }
  }

  /** Every pair of a cell whose grown boxes overlap and that counts in this cell. */
  pairs({ column, row, members, active }: Cell<T>, visit: (a: T, b: T) => void): void {
    const margin = this.#marginMm;
    const twice = 2 * margin;
    for (let i = 0; i < active; i++) {
      const a = members[i];
      if (a === undefined) return;
      const { minXMm, minYMm, maxXMm, maxYMm } = a.box;
      for (let j = i + 1; j < members.length; j++) {
        const b = members[j];
        if (b === undefined) return;
        const left = Math.max(minXMm, b.box.minXMm);
        if (left >= Math.min(maxXMm, b.box.maxXMm) + twice) continue;
        const low = Math.max(minYMm, b.box.minYMm);
        if (low >= Math.min(maxYMm, b.box.maxYMm) + twice) continue;
        if (columnOf(left - margin) === column && columnOf(low - margin) === row) visit(a, b);
      }
    }
  }
}
