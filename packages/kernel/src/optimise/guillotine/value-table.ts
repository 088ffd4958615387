import { Box } from "./boxes.ts";
import type { Size } from "./problem.ts";

/** A way in which a piece may lie, and what it is worth. */
export interface Lying extends Size {
  readonly piece: number;
  readonly turned: boolean;
}

/** Sums of lengths up to a total, each length so often as there are copies, and the total itself; ascending. */
export const normalPoints = (lengths: readonly (readonly [number, number])[], total: number): number[] => {
  const reach = new Uint8Array(total + 1);
  reach[0] = 1;
  for (const [length, copies] of lengths) {
    if (length > total) continue;
    // Copies left over at a sum reached first with this length.
    const spent = new Uint16Array(total + 1);
    for (let x = length; x <= total; x++) {
      const before = spent[x - length] ?? 0;
      if (reach[x] === 0 && reach[x - length] === 1 && before < copies) {
        reach[x] = 1;
        spent[x] = before + 1;
      }
    }
  }
  reach[total] = 1;
  const points: number[] = [];
  for (let x = 1; x <= total; x++) if (reach[x] === 1) points.push(x);
  return points;
};

/** For each length, the place of the greatest point that is no longer; −1 when there is none. */
const placesOf = (points: readonly number[], total: number): Int32Array => {
  const places = new Int32Array(total + 1).fill(-1);
  let k = -1;
  for (let x = 0; x <= total; x++) {
    if (points[k + 1] === x) k++;
    places[x] = k;
  }
  return places;
};

const CUT_X = 1;
const CUT_Y = 2;
const PIECE = 3;
const LESS_X = 4;
const LESS_Y = 5;

/**
 * Most value that can be cut, with any number of copies and of stages, from each rectangle whose lengths are normal
 * points: exact dynamic programme (P. C. Gilmore, R. E. Gomory, Operations Research 13 (1965) 94–120; points as
 * J. C. Herz, IBM Journal of Research and Development 16 (1972) 462–469).
 */
export class ValueTable {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly placeX: Int32Array;
  readonly placeY: Int32Array;
  /** Rows of equal y, and columns of equal x, of the same values. */
  readonly rows: Float64Array;
  private readonly columns: Float64Array;
  private readonly kind: Uint8Array;
  private readonly which: Int32Array;
  private readonly ways: readonly Lying[];
  /** Sums looked at. */
  steps = 0;

  constructor(ways: readonly Lying[], copies: readonly number[], sheet: Size) {
    const limited = (length: (way: Lying) => number): (readonly [number, number])[] =>
      ways.map((way) => [length(way), copies[way.piece] ?? 0] as const);
    this.ways = ways;
    this.xs = normalPoints(
      limited(({ w }) => w),
      sheet.w,
    );
    this.ys = normalPoints(
      limited(({ h }) => h),
      sheet.h,
    );
    this.placeX = placesOf(this.xs, sheet.w);
    this.placeY = placesOf(this.ys, sheet.h);
    const size = this.xs.length * this.ys.length;
    this.rows = new Float64Array(size);
    this.columns = new Float64Array(size);
    this.kind = new Uint8Array(size);
    this.which = new Int32Array(size);
  }

  /** Sums that one filling looks at, about. */
  get effort(): number {
    const { length: nx } = this.xs;
    const { length: ny } = this.ys;
    return (nx * ny * (nx + ny)) / 4;
  }

  /** Most value of the whole sheet when pieces are worth so much. */
  fill(values: readonly number[]): number {
    const { xs, ys, rows, columns, kind, which, placeX, placeY } = this;
    const nx = xs.length;
    const ny = ys.length;
    rows.fill(0);
    kind.fill(0);
    this.ways.forEach(({ w, h, piece }, way) => {
      const i = placeX[w] ?? -1;
      const j = placeY[h] ?? -1;
      const at = j * nx + i;
      const value = values[piece] ?? 0;
      if (i < 0 || j < 0 || w > (xs[nx - 1] ?? 0) || h > (ys[ny - 1] ?? 0)) return;
      if (value <= (rows[at] ?? 0)) return;
      rows[at] = value;
      kind[at] = PIECE;
      which[at] = way;
    });
    for (let j = 0; j < ny; j++) {
      const y = ys[j] ?? 0;
      const row = j * nx;
      for (let i = 0; i < nx; i++) {
        const x = xs[i] ?? 0;
        const column = i * ny;
        const at = row + i;
        let best = rows[at] ?? 0;
        let how = kind[at] ?? 0;
        let by = which[at] ?? 0;
        if (i > 0 && (rows[at - 1] ?? 0) > best) {
          best = rows[at - 1] ?? 0;
          how = LESS_X;
        }
        if (j > 0 && (rows[at - nx] ?? 0) > best) {
          best = rows[at - nx] ?? 0;
          how = LESS_Y;
        }
        for (let k = 0; 2 * (xs[k] ?? x) <= x; k++) {
          const value = (rows[row + k] ?? 0) + (rows[row + (placeX[x - (xs[k] ?? 0)] ?? 0)] ?? 0);
          this.steps++;
          if (value > best) {
            best = value;
            how = CUT_X;
            by = k;
          }
        }
        for (let k = 0; 2 * (ys[k] ?? y) <= y; k++) {
          const value = (columns[column + k] ?? 0) + (columns[column + (placeY[y - (ys[k] ?? 0)] ?? 0)] ?? 0);
          this.steps++;
          if (value > best) {
            best = value;
            how = CUT_Y;
            by = k;
          }
        }
        rows[at] = best;
        columns[column + j] = best;
        kind[at] = how;
        which[at] = by;
      }
    }
    return rows[nx * ny - 1] ?? 0;
  }

  /** The boxes of the best cutting of the sheet as last filled; null: nothing is worth cutting. */
  boxes(): Box | null {
    return this.boxesOf(this.xs.length - 1, this.ys.length - 1);
  }

  private boxesOf(i: number, j: number): Box | null {
    if (i < 0 || j < 0) return null;
    const at = j * this.xs.length + i;
    const by = this.which[at] ?? 0;
    switch (this.kind[at]) {
      case PIECE: {
        const way = this.ways[by];
        return way === undefined ? null : new Box(0, way.piece, way.turned, way.w, way.h);
      }
      case LESS_X:
        return this.boxesOf(i - 1, j);
      case LESS_Y:
        return this.boxesOf(i, j - 1);
      case CUT_X:
        return pair(0, this.boxesOf(by, j), this.boxesOf(this.after(this.xs, this.placeX, i, by), j));
      case CUT_Y:
        return pair(1, this.boxesOf(i, by), this.boxesOf(i, this.after(this.ys, this.placeY, j, by)));
      default:
        return null;
    }
  }

  private after(points: readonly number[], places: Int32Array, whole: number, first: number): number {
    return places[(points[whole] ?? 0) - (points[first] ?? 0)] ?? -1;
  }
}

const pair = (direction: 0 | 1, first: Box | null, second: Box | null): Box | null => {
  if (first === null || second === null) return first ?? second;
  const box = new Box(direction);
  box.add(first);
  box.add(second);
  return box;
};
