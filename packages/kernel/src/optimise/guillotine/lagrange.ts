import { type Box, piecesIn } from "./boxes.ts";
import type { ValueTable } from "./value-table.ts";

/** Prices of copies, and what they prove. */
export interface Prices {
  readonly ofPiece: readonly number[];
  /** No cutting with limited copies is worth more. */
  readonly bound: number;
  /** Best cutting met on the way that keeps to the copies, with its value; null when there was none. */
  readonly kept: { readonly root: Box; readonly value: number } | null;
}

/** How often the bound may stay as it is before smaller changes of price are tried. */
const PATIENCE = 4;
/** Smallest factor of a change of price. */
const FINEST = 0.01;

/**
 * Lagrangean bound of cutting with limited copies: a copy costs a price, all copies allowed are credited, and the limits
 * are dropped. Prices by the subgradient method (M. Held, P. Wolfe, H. P. Crowder, Mathematical Programming 6 (1974)
 * 62–88), at most so many tables.
 * @param known value of a known cutting
 */
export const priceCopies = (
  table: ValueTable,
  values: readonly number[],
  copies: readonly number[],
  known: number,
  rounds: number,
): Prices => {
  let prices = values.map(() => 0);
  let best: Prices = { ofPiece: prices, bound: Number.POSITIVE_INFINITY, kept: null };
  let kept: Prices["kept"] = null;
  let factor = 1;
  let idle = 0;
  for (let round = 0; round < rounds && factor > FINEST; round++) {
    const credit = prices.reduce((sum, price, i) => sum + price * (copies[i] ?? 0), 0);
    const bound = table.fill(values.map((value, i) => value - (prices[i] ?? 0))) + credit;
    const root = table.boxes();
    const used = values.map(() => 0);
    for (const piece of root === null ? [] : piecesIn(root)) used[piece] = (used[piece] ?? 0) + 1;
    if (root !== null && used.every((n, i) => n <= (copies[i] ?? 0))) {
      const value = used.reduce((sum, n, i) => sum + n * (values[i] ?? 0), 0);
      if (value > (kept?.value ?? known)) kept = { root, value };
    }
    idle++;
    if (bound < best.bound) {
      idle = bound < best.bound * (1 - 1e-5) ? 0 : idle;
      best = { ofPiece: prices, bound, kept };
    }
    if (idle >= PATIENCE) {
      factor /= 2;
      idle = 0;
    }
    const over = used.map((n, i) => n - (copies[i] ?? 0));
    const slope = over.map((d, i) => (d < 0 && (prices[i] ?? 0) === 0 ? 0 : d));
    const steep = slope.reduce((sum, d) => sum + d * d, 0);
    const gap = bound - Math.max(known, kept?.value ?? 0);
    if (steep === 0 || gap <= 0) break;
    prices = prices.map((price, i) => Math.max(0, price + (factor * gap * (slope[i] ?? 0)) / steep));
  }
  return { ...best, kept };
};
