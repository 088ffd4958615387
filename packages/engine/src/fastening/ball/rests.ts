import type { PointMm } from "@pinwright/kernel";
import { CELL } from "./cells.ts";
import { CORNERS, type Region } from "./region.ts";

/** A place where a ball stays. */
export interface Rest {
  /** Where the middle of the ball is; on level ground one end of where it may be, `to` the other. */
  readonly at: PointMm;
  readonly to: PointMm;
  /** How far up the slope it would have to climb, measured along the panel; infinite: there is no way out. */
  readonly depthMm: number;
}

/** Heights within this are one, mm. */
const LEVEL_MM = 1e-6;

/**
 * Where balls come to rest in a region when they roll straight down, `turnDeg` from −y towards +x. The region's parts
 * below a rising level grow and join: where two join, the one whose lowest place is higher is as deep as the level has
 * risen from there (persistence of the sublevel sets; H. Edelsbrunner, J. Harer, Computational Topology, chapter VII).
 * In a trapezoid a slope has its lowest place at a corner, and two that share a cut join at the lower end of it, so
 * that this is exact. Where a ball is taken away (`isTaken`) it does not stay: such a place is deeper than any other.
 * Only trapezoids that are reached count, and rests deeper than `leastMm` are told.
 */
export function restsOf(
  region: Region,
  turnDeg: number,
  leastMm: number,
  isReached: (cell: number) => boolean,
  isTaken: (at: PointMm, to: PointMm) => boolean,
): readonly Rest[] {
  const slope = new Slope(region, turnDeg);
  const count = region.one.length;
  const levels = new Float64Array(count);
  for (let i = 0; i < count; i++) levels[i] = slope.cut(i);
  const order = new Int32Array(count);
  for (let i = 0; i < count; i++) order[i] = i;
  order.sort((a, b) => (levels[a] ?? 0) - (levels[b] ?? 0) || a - b);
  const root = new Int32Array(region.count);
  for (let i = 0; i < root.length; i++) root[i] = i;
  const find = (cell: number): number => {
    let top = cell;
    while (root[top] !== top) {
      root[top] = root[root[top] ?? top] ?? top;
      top = root[top] ?? top;
    }
    return top;
  };
  const taken = new Map<number, boolean>();
  const takes = (cell: number): boolean => {
    const known = taken.get(cell);
    if (known !== undefined) return known;
    const { at, to } = slope.lowest(cell);
    const fresh = isTaken(at, to);
    taken.set(cell, fresh);
    return fresh;
  };
  const rests: Rest[] = [];
  for (const joint of order) {
    const a = find(region.one[joint] ?? 0);
    const b = find(region.other[joint] ?? 0);
    if (a === b) continue;
    const level = levels[joint] ?? 0;
    // A basin is named by the trapezoid that holds its lowest place.
    const [low, high] = slope.height(a) <= slope.height(b) ? [a, b] : [b, a];
    const isPlace = level - slope.height(high) > LEVEL_MM && isReached(a);
    const highTakes = isPlace && takes(high) && !takes(low);
    const [deep, shallow] = highTakes ? [high, low] : [low, high];
    const depthMm = level - slope.height(shallow);
    if (isPlace && depthMm > leastMm && !takes(shallow)) rests.push({ ...slope.lowest(shallow), depthMm });
    root[shallow] = deep;
  }
  for (let cell = 0; cell < region.count; cell++)
    if (root[cell] === cell && isReached(cell) && !takes(cell))
      rests.push({ ...slope.lowest(cell), depthMm: Number.POSITIVE_INFINITY });
  return rests;
}

/** Heights of a region on a slope. */
class Slope {
  readonly #region: Region;
  readonly #x: number;
  readonly #y: number;
  readonly #heights: Float64Array;

  constructor(region: Region, turnDeg: number) {
    const rad = (turnDeg * Math.PI) / 180;
    this.#region = region;
    this.#x = -Math.sin(rad);
    this.#y = Math.cos(rad);
    this.#heights = new Float64Array(region.count);
    for (let cell = 0; cell < region.count; cell++) {
      const at = cell * CELL.size;
      this.#heights[cell] = Math.min(
        this.#of(at, CELL.lowLeft, CELL.low),
        this.#of(at, CELL.lowRight, CELL.low),
        this.#of(at, CELL.highLeft, CELL.high),
        this.#of(at, CELL.highRight, CELL.high),
      );
    }
  }

  #of(at: number, x: number, y: number): number {
    const { numbers } = this.#region;
    return (numbers[at + x] ?? 0) * this.#x + (numbers[at + y] ?? 0) * this.#y;
  }

  /** Height of the lowest place of a trapezoid. */
  height(cell: number): number {
    return this.#heights[cell] ?? 0;
  }

  /** Height of the lower end of a joint's cut. */
  cut(joint: number): number {
    const { cuts } = this.#region;
    const y = (cuts[3 * joint] ?? 0) * this.#y;
    return y + Math.min((cuts[3 * joint + 1] ?? 0) * this.#x, (cuts[3 * joint + 2] ?? 0) * this.#x);
  }

  /** The lowest corner of a trapezoid, and the last of those as low. */
  lowest(cell: number): { readonly at: PointMm; readonly to: PointMm } {
    const { numbers } = this.#region;
    const at = cell * CELL.size;
    const low = CORNERS.filter(([x, y]) => this.#of(at, x, y) <= this.height(cell) + LEVEL_MM).map(
      ([x, y]) => ({ xMm: numbers[at + x] ?? 0, yMm: numbers[at + y] ?? 0 }),
    );
    const first = low[0] ?? { xMm: 0, yMm: 0 };
    return { at: first, to: low.at(-1) ?? first };
  }
}
