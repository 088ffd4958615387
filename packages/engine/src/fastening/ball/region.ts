import { type BoxMm, boxHolds, type PointMm, UnionFind } from "@pinwright/kernel";
import { CELL, type Cells } from "./cells.ts";

/** Where the x and y of each corner of a trapezoid stand among its numbers. */
export const CORNERS = [
  [CELL.lowLeft, CELL.low],
  [CELL.lowRight, CELL.low],
  [CELL.highLeft, CELL.high],
  [CELL.highRight, CELL.high],
] as const;

/** Two bands are cut from one area, each rounded by itself: what overlaps by less than this is such a rounding, mm. */
const ROUNDING_MM = 0.005;

/** Where the middle of a ball may be: trapezoids, and which lead to which. */
export class Region {
  readonly count: number;
  /** The numbers of every trapezoid, `CELL.size` each. */
  readonly numbers: Float64Array;
  /** Joints of trapezoids: one, the other, and the part of a level cut that they share. */
  readonly one: readonly number[];
  readonly other: readonly number[];
  /** Three numbers a joint: y, and x of the two ends. */
  readonly cuts: readonly number[];
  readonly #parts: UnionFind;

  /** @param bands areas that lie on one another, lowest first; each begins at its level of `levels` */
  constructor(bands: readonly Cells[], levels: readonly number[]) {
    this.count = bands.reduce((sum, band) => sum + band.count, 0);
    this.numbers = new Float64Array(this.count * CELL.size);
    const joints = new Joints();
    let first = 0;
    let before: Band | null = null;
    for (const [k, cells] of bands.entries()) {
      this.numbers.set(cells.numbers, first * CELL.size);
      const { below, above, cuts } = cells;
      for (let i = 0; i < below.length; i++)
        joints.add(first + (below[i] ?? 0), first + (above[i] ?? 0), [
          cuts[3 * i] ?? 0,
          cuts[3 * i + 1] ?? 0,
          cuts[3 * i + 2] ?? 0,
        ]);
      const band = { cells, first };
      if (before !== null) joinBands(before, band, levels[k] ?? 0, joints);
      before = band;
      first += cells.count;
    }
    this.one = joints.one;
    this.other = joints.other;
    this.cuts = joints.cuts;
    this.#parts = new UnionFind(this.count);
    for (let i = 0; i < this.one.length; i++) this.#parts.join(this.one[i] ?? 0, this.other[i] ?? 0);
  }

  /** Name of the connected part that a trapezoid belongs to. */
  partOf(cell: number): number {
    return this.#parts.find(cell);
  }

  /** Area of a trapezoid, mm². */
  areaMm2(cell: number): number {
    const of = (place: number): number => this.numbers[cell * CELL.size + place] ?? 0;
    const widths = of(CELL.lowRight) - of(CELL.lowLeft) + of(CELL.highRight) - of(CELL.highLeft);
    return (widths / 2) * (of(CELL.high) - of(CELL.low));
  }

  /** The trapezoid that a point lies in, sides included; −1: none. */
  cellAt({ xMm, yMm }: PointMm): number {
    const { numbers } = this;
    for (let at = 0; at < numbers.length; at += CELL.size) {
      const low = numbers[at + CELL.low] ?? 0;
      const high = numbers[at + CELL.high] ?? 0;
      if (yMm < low || yMm > high) continue;
      const f = high === low ? 0 : (yMm - low) / (high - low);
      const left = (numbers[at + CELL.lowLeft] ?? 0) * (1 - f) + (numbers[at + CELL.highLeft] ?? 0) * f;
      if (xMm < left) continue;
      const right = (numbers[at + CELL.lowRight] ?? 0) * (1 - f) + (numbers[at + CELL.highRight] ?? 0) * f;
      if (xMm <= right) return at / CELL.size;
    }
    return -1;
  }

  /** The first corner, of the trapezoids that are wanted, that lies in a box and is `suitable`. */
  corner(
    box: BoxMm,
    isWanted: (cell: number) => boolean,
    isSuitable: (corner: PointMm) => boolean,
  ): PointMm | null {
    const { numbers } = this;
    for (let cell = 0, at = 0; cell < this.count; cell++, at += CELL.size) {
      if ((numbers[at + CELL.high] ?? 0) < box.minYMm || (numbers[at + CELL.low] ?? 0) > box.maxYMm) continue;
      if (!isWanted(cell)) continue;
      for (const [x, y] of CORNERS) {
        const corner = { xMm: numbers[at + x] ?? 0, yMm: numbers[at + y] ?? 0 };
        if (boxHolds(box, corner) && isSuitable(corner)) return corner;
      }
    }
    return null;
  }
}

class Joints {
  readonly one: number[] = [];
  readonly other: number[] = [];
  readonly cuts: number[] = [];

  add(one: number, other: number, cut: readonly [y: number, from: number, to: number]): void {
    this.one.push(one);
    this.other.push(other);
    this.cuts.push(...cut);
  }
}

interface Band {
  readonly cells: Cells;
  /** Number of its first trapezoid. */
  readonly first: number;
}

function joinBands(lower: Band, upper: Band, level: number, joints: Joints): void {
  const [under, over] = [lower.cells.numbers, upper.cells.numbers];
  const tops: number[] = [];
  for (let i = 0; i < lower.cells.count; i++) if (under[i * CELL.size + CELL.high] === level) tops.push(i);
  for (let j = 0; j < upper.cells.count; j++) {
    const at = j * CELL.size;
    if (over[at + CELL.low] !== level) continue;
    for (const i of tops) {
      const top = i * CELL.size;
      const from = Math.max(under[top + CELL.highLeft] ?? 0, over[at + CELL.lowLeft] ?? 0);
      const to = Math.min(under[top + CELL.highRight] ?? 0, over[at + CELL.lowRight] ?? 0);
      if (to - from > ROUNDING_MM) joints.add(lower.first + i, upper.first + j, [level, from, to]);
    }
  }
}
