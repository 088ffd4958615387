import { type RingMm, ringSides } from "@pinwright/kernel";

/**
 * An area cut into trapezoids with level upper and lower sides, by a level cut through each of its corners as far as
 * the area goes (trapezoidal decomposition; M. de Berg et al., Computational Geometry, chapter 6). Numbers of one
 * trapezoid stand together; see `CELL`.
 */
export interface Cells {
  readonly count: number;
  readonly numbers: Float64Array;
  /** Trapezoids that share a part of a cut, two by two: the lower one, the upper one. */
  readonly below: Int32Array;
  readonly above: Int32Array;
  /** The part of the cut: its y and the x of its ends, three numbers each. */
  readonly cuts: Float64Array;
}

/** Numbers of a trapezoid: y of its lower and upper side, and the x of their ends. */
export const CELL = { low: 0, high: 1, lowLeft: 2, lowRight: 3, highLeft: 4, highRight: 5, size: 6 } as const;

/** Cuts shorter than this are where two areas touch, not where one leads to the other, mm. */
const TOUCH_MM = 1e-4;

interface Side {
  readonly x0: number;
  readonly y0: number;
  readonly y1: number;
  /** Change of x for each mm of y. */
  readonly lean: number;
}

const xAt = (side: Side, y: number): number => side.x0 + (y - side.y0) * side.lean;

interface Open {
  readonly left: Side;
  readonly right: Side;
  readonly index: number;
}

/** Trapezoids of an area with straight sides (even-odd; sides do not cross), the lower ones first. */
export function cellsOf(rings: readonly RingMm[]): Cells {
  const sides = sidesOf(rings);
  const levels = [...new Set(sides.flatMap((side) => [side.y0, side.y1]))].sort((a, b) => a - b);
  const maker = new CellMaker();
  let next = 0;
  let active: Side[] = [];
  let open: readonly Open[] = [];
  levels.forEach((y, i) => {
    const upper = levels[i + 1] ?? y;
    const before = active.length;
    active = active.filter((side) => side.y1 > y);
    let changed = active.length !== before;
    for (let side = sides[next]; side !== undefined && side.y0 <= y; side = sides[++next]) {
      active.push(side);
      changed = true;
    }
    if (!changed) return;
    const middle = (y + upper) / 2;
    active.sort((a, b) => xAt(a, middle) - xAt(b, middle));
    open = maker.step(y, open, active);
  });
  return maker.cells();
}

function sidesOf(rings: readonly RingMm[]): readonly Side[] {
  const sides: Side[] = [];
  for (const ring of rings) {
    for (const { a, b } of ringSides(ring)) {
      if (a.yMm === b.yMm) continue;
      const [low, high] = a.yMm < b.yMm ? [a, b] : [b, a];
      const lean = (high.xMm - low.xMm) / (high.yMm - low.yMm);
      sides.push({ x0: low.xMm, y0: low.yMm, y1: high.yMm, lean });
    }
  }
  return sides.sort((a, b) => a.y0 - b.y0 || a.x0 - b.x0);
}

class CellMaker {
  readonly #numbers: number[] = [];
  readonly #below: number[] = [];
  readonly #above: number[] = [];
  readonly #cuts: number[] = [];

  /** At a level: closes what does not go on, opens what is new, and joins both where they meet. */
  step(y: number, open: readonly Open[], active: readonly Side[]): readonly Open[] {
    const known = new Map(open.map((o) => [o.left, o]));
    const kept = new Set<Open>();
    const fresh: Open[] = [];
    const now: Open[] = [];
    for (let i = 0; i + 1 < active.length; i += 2) {
      const [left, right] = [active[i], active[i + 1]];
      if (left === undefined || right === undefined) continue;
      const same = known.get(left);
      if (same !== undefined && same.right === right) {
        kept.add(same);
        now.push(same);
        continue;
      }
      const opened = { left, right, index: this.#numbers.length / CELL.size };
      this.#numbers.push(y, y, xAt(left, y), xAt(right, y), 0, 0);
      fresh.push(opened);
      now.push(opened);
    }
    for (const o of open) if (!kept.has(o)) this.#close(o, y, fresh);
    return now;
  }

  #close({ left, right, index }: Open, y: number, fresh: readonly Open[]): void {
    const [from, to] = [xAt(left, y), xAt(right, y)];
    const at = index * CELL.size;
    this.#numbers[at + CELL.high] = y;
    this.#numbers[at + CELL.highLeft] = from;
    this.#numbers[at + CELL.highRight] = to;
    for (const above of fresh) {
      const lo = Math.max(from, xAt(above.left, y));
      const hi = Math.min(to, xAt(above.right, y));
      if (hi - lo <= TOUCH_MM) continue;
      this.#below.push(index);
      this.#above.push(above.index);
      this.#cuts.push(y, lo, hi);
    }
  }

  cells(): Cells {
    return {
      count: this.#numbers.length / CELL.size,
      numbers: Float64Array.from(this.#numbers),
      below: Int32Array.from(this.#below),
      above: Int32Array.from(this.#above),
      cuts: Float64Array.from(this.#cuts),
    };
  }
}
