import { Box } from "./boxes.ts";
import { valueBeside } from "./joins.ts";
import type { Lying, ValueTable } from "./value-table.ts";

/** What the search from small blocks to large ones is given. */
export interface BlockProblem {
  /** Filled with values less prices. */
  readonly table: ValueTable;
  readonly ways: readonly Lying[];
  readonly values: readonly number[];
  readonly prices: readonly number[];
  readonly copies: readonly number[];
  /** Value of a known cutting: only more is looked for. */
  readonly known: number;
}

/** What was found; `root` null: nothing worth more than the known cutting. */
export interface BlockResult {
  readonly root: Box | null;
  readonly value: number;
  readonly bound: number;
  readonly steps: number;
}

/** Rounding in sums of prices. */
const ROUNDING = 1e-6;
/** Most blocks kept in memory. */
const MOST_BLOCKS = 400_000;

interface Block {
  readonly w: number;
  readonly h: number;
  /** Value, and value less prices. */
  readonly value: number;
  readonly net: number;
  /** No cutting with this block is worth more. */
  readonly bound: number;
  /** Types of its pieces, ascending, and how many of each. */
  readonly types: readonly number[];
  readonly counts: readonly number[];
  readonly way: Lying | null;
  readonly first: Block | null;
  readonly second: Block | null;
  readonly direction: 0 | 1;
}

/**
 * Most value from one sheet with limited copies, exact when the steps suffice: blocks of pieces are put beside and upon
 * each other, the most promising first (K. V. Viswanathan, A. Bagchi, Operations Research 41 (1993) 768–776, after
 * P. Y. Wang, Operations Research 31 (1983) 573–586); what fits around a block is bounded with copies at their prices.
 */
export const joinBlocks = (problem: BlockProblem, steps: number): BlockResult =>
  new BlockSearch(problem).run(steps);

class BlockSearch {
  private readonly problem: BlockProblem;
  private readonly beside: Float64Array;
  private readonly credit: number;
  private readonly width: number;
  private readonly height: number;
  /** Least gain over the known value that counts: 1 when all values are whole. */
  private readonly gain: number;
  private readonly open: Block[] = [];
  private readonly closed: Block[] = [];
  private readonly sizes = new Map<string, { readonly w: number; readonly h: number }[]>();
  private best: Block | null = null;
  private value: number;
  private kept = 0;
  private steps = 0;

  constructor(problem: BlockProblem) {
    this.problem = problem;
    const { table, prices, copies, values } = problem;
    this.beside = valueBeside(table);
    this.credit = prices.reduce((sum, price, i) => sum + price * (copies[i] ?? 0), 0);
    this.width = table.xs.at(-1) ?? 0;
    this.height = table.ys.at(-1) ?? 0;
    this.gain = values.every((value) => Number.isInteger(value)) ? 1 : 0;
    this.value = problem.known;
  }

  run(limit: number): BlockResult {
    for (const way of this.problem.ways) this.single(way);
    let bound = this.value;
    for (;;) {
      const block = this.pop();
      if (block === undefined || !this.promising(block.bound)) break;
      if (this.steps >= limit || this.kept >= MOST_BLOCKS) {
        bound = this.gain === 1 ? Math.floor(block.bound + ROUNDING) : block.bound;
        break;
      }
      this.closed.push(block);
      this.joinAll(block);
    }
    const root = this.best === null ? null : boxOf(this.best);
    return { root, value: this.value, bound: Math.max(bound, this.value), steps: this.steps };
  }

  private promising(bound: number): boolean {
    return bound >= this.value + this.gain - ROUNDING * (this.gain === 1 ? 1 : -1);
  }

  private around(w: number, h: number): number {
    const { table } = this.problem;
    const i = table.placeX[w] ?? -1;
    const j = table.placeY[h] ?? -1;
    return this.credit + (this.beside[j * table.xs.length + i] ?? 0);
  }

  private single(way: Lying): void {
    const { w, h, piece } = way;
    const { copies, values, prices } = this.problem;
    if (w > this.width || h > this.height || (copies[piece] ?? 0) < 1) return;
    const value = values[piece] ?? 0;
    const net = value - (prices[piece] ?? 0);
    const bound = net + this.around(w, h);
    if (!this.promising(bound)) return;
    const types = [piece];
    const counts = [1];
    this.keep({ w, h, value, net, bound, types, counts, way, first: null, second: null, direction: 0 });
  }

  private joinAll(block: Block): void {
    const { width, height } = this;
    const free = this.problem.copies.slice();
    block.types.forEach((type, k) => {
      free[type] = (free[type] ?? 0) - (block.counts[k] ?? 0);
    });
    this.steps += 2 * this.closed.length;
    for (const other of this.closed) {
      if (block.w + other.w <= width) {
        this.join(block, other, 0, block.w + other.w, Math.max(block.h, other.h), free);
      }
      if (block.h + other.h <= height) {
        this.join(block, other, 1, Math.max(block.w, other.w), block.h + other.h, free);
      }
    }
  }

  private join(a: Block, b: Block, direction: 0 | 1, w: number, h: number, free: readonly number[]): void {
    const net = a.net + b.net;
    const bound = net + this.around(w, h);
    if (!this.promising(bound)) return;
    for (let k = 0; k < b.types.length; k++) {
      if ((b.counts[k] ?? 0) > (free[b.types[k] ?? 0] ?? 0)) return;
    }
    const [types, counts] = merge(a, b);
    const value = a.value + b.value;
    this.keep({ w, h, value, net, bound, types, counts, way: null, first: a, second: b, direction });
  }

  /** Unless a block of the same pieces is already as small. */
  private keep(block: Block): void {
    const key = `${block.types.join()};${block.counts.join()}`;
    const sizes = this.sizes.get(key);
    if (sizes === undefined) this.sizes.set(key, [block]);
    else if (sizes.some(({ w, h }) => w <= block.w && h <= block.h)) return;
    else sizes.push(block);
    if (block.value > this.value) {
      this.value = block.value;
      this.best = block;
    }
    this.kept++;
    this.push(block);
  }

  private push(block: Block): void {
    const { open } = this;
    let i = open.length;
    open.push(block);
    while (i > 0) {
      const up = (i - 1) >> 1;
      const parent = open[up];
      if (parent === undefined || !before(block, parent)) break;
      open[i] = parent;
      i = up;
    }
    open[i] = block;
  }

  private pop(): Block | undefined {
    const { open } = this;
    const top = open[0];
    const last = open.pop();
    if (last === undefined || open.length === 0) return top;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      const left = open[down];
      if (left === undefined) break;
      const right = open[down + 1];
      if (right !== undefined && before(right, left)) down++;
      const child = open[down];
      if (child === undefined || !before(child, last)) break;
      open[i] = child;
      i = down;
    }
    open[i] = last;
    return top;
  }
}

const before = (a: Block, b: Block): boolean =>
  a.bound > b.bound || (a.bound === b.bound && a.value > b.value);

const merge = (a: Block, b: Block): [number[], number[]] => {
  const types: number[] = [];
  const counts: number[] = [];
  let i = 0;
  let j = 0;
  while (i < a.types.length || j < b.types.length) {
    const s = a.types[i] ?? Number.POSITIVE_INFINITY;
    const t = b.types[j] ?? Number.POSITIVE_INFINITY;
    types.push(Math.min(s, t));
    counts.push((s <= t ? (a.counts[i] ?? 0) : 0) + (t <= s ? (b.counts[j] ?? 0) : 0));
    if (s <= t) i++;
    if (t <= s) j++;
  }
  return [types, counts];
};

const boxOf = ({ way, first, second, direction }: Block): Box => {
  if (way !== null) return new Box(0, way.piece, way.turned, way.w, way.h);
  const box = new Box(direction);
  for (const part of [first, second]) if (part !== null) box.add(boxOf(part));
  return box;
};
