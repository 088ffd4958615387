import type { BoxMm } from "./box.ts";

/**
 * Boxes sorted into square cells, to find those near a box without looking at all. Best when most boxes are
 * about as large as a cell. Answers come in the order in which the boxes were added, so results do not depend
 * on the cells.
 */
export class GridIndex<T> {
  readonly #cellMm: number;
  readonly #entries: { readonly box: BoxMm; readonly value: T }[] = [];
  readonly #cells = new Map<number, Map<number, number[]>>();

  /** `cellMm` is the side of a cell; a RangeError is thrown unless it is finite and positive. */
  constructor(cellMm: number) {
    if (!(cellMm > 0 && Number.isFinite(cellMm))) {
      throw new RangeError(`GridIndex: cellMm is ${cellMm}; give a finite length above 0`);
    }
    this.#cellMm = cellMm;
  }

  get size(): number {
    return this.#entries.length;
  }

  add(box: BoxMm, value: T): void {
    const index = this.#entries.push({ box, value }) - 1;
    for (const [column, row] of this.#cellsOf(box)) {
      let rows = this.#cells.get(column);
      if (rows === undefined) {
        rows = new Map();
        this.#cells.set(column, rows);
      }
      const cell = rows.get(row);
      if (cell === undefined) rows.set(row, [index]);
      else cell.push(index);
    }
  }

  /** Values whose boxes meet `box`, touching edges included, each once, in the order of adding. */
  near(box: BoxMm): T[] {
    const seen = new Set<number>();
    for (const [column, row] of this.#cellsOf(box)) {
      for (const index of this.#cells.get(column)?.get(row) ?? []) seen.add(index);
    }
    const found: T[] = [];
    for (const index of [...seen].sort((a, b) => a - b)) {
      const entry = this.#entries[index];
      if (entry !== undefined && touches(entry.box, box)) found.push(entry.value);
    }
    return found;
  }

  *#cellsOf(box: BoxMm): Generator<readonly [column: number, row: number]> {
    const lastColumn = Math.floor(box.maxXMm / this.#cellMm);
    const lastRow = Math.floor(box.maxYMm / this.#cellMm);
    for (let column = Math.floor(box.minXMm / this.#cellMm); column <= lastColumn; column++) {
      for (let row = Math.floor(box.minYMm / this.#cellMm); row <= lastRow; row++) yield [column, row];
    }
  }
}

const touches = (a: BoxMm, b: BoxMm): boolean =>
  a.minXMm <= b.maxXMm && b.minXMm <= a.maxXMm && a.minYMm <= b.maxYMm && b.minYMm <= a.maxYMm;
