/** A column of a covering problem: how much of every row one of it covers. */
export type Column = readonly number[];

/** Fractional answer of a covering problem. */
export interface Covering {
  /** Columns in use and how much of each. */
  readonly used: readonly { readonly column: number; readonly amount: number }[];
  /** What one more of each row would cost. */
  readonly prices: readonly number[];
  readonly total: number;
}

/** Most columns that are asked for. */
const MOST_COLUMNS = 400;
const EPSILON = 1e-9;

/**
 * Least number of columns, in fractions, that covers every demand, with columns made as they are wanted (P. C. Gilmore,
 * R. E. Gomory, Operations Research 9 (1961) 849–859): revised simplex with a dense inverse of the basis; the demands may
 * be covered more than once. Ties go to the earlier row, so the same problem gives the same answer.
 * @param columns one column for each row that covers that row alone, in the order of the rows; new ones are added to it
 * @param price a column worth more than 1 at given prices, or null when there is none
 */
export function cover(
  demands: readonly number[],
  columns: Column[],
  price: (prices: readonly number[]) => Column | null,
): Covering {
  const m = demands.length;
  // Negative columns are surplus: −1 − row.
  const basis = demands.map((_, i) => i);
  const inverse = demands.map((_, i) => demands.map((_, j) => (i === j ? 1 / (columns[i]?.[i] ?? 1) : 0)));
  const amounts = demands.map((demand, i) => demand / (columns[i]?.[i] ?? 1));
  for (let step = 0; step < MOST_COLUMNS; step++) {
    const prices = pricesOf(basis, inverse, m);
    const surplus = prices.findIndex((p) => p < -EPSILON);
    let entering: number;
    let column: Column;
    if (surplus >= 0) {
      entering = -1 - surplus;
      column = demands.map((_, i) => (i === surplus ? -1 : 0));
    } else {
      const fresh = price(prices);
      if (fresh === null) break;
      entering = columns.length;
      column = fresh;
      columns.push(fresh);
    }
    if (!pivot(basis, inverse, amounts, column, entering)) break;
  }
  const prices = pricesOf(basis, inverse, m).map((p) => Math.max(0, p));
  const used = basis.flatMap((column, i) => {
    const amount = amounts[i] ?? 0;
    return column >= 0 && amount > EPSILON ? [{ column, amount }] : [];
  });
  return { used, prices, total: used.reduce((sum, { amount }) => sum + amount, 0) };
}

function pricesOf(basis: readonly number[], inverse: readonly (readonly number[])[], m: number): number[] {
  const prices = new Array<number>(m).fill(0);
  basis.forEach((column, i) => {
    // A surplus costs nothing, every pattern one sheet.
    if (column < 0) return;
    for (let j = 0; j < m; j++) prices[j] = (prices[j] ?? 0) + (inverse[i]?.[j] ?? 0);
  });
  return prices;
}

/** Brings a column into the basis; false when nothing limits it, which no covering allows. */
function pivot(
  basis: number[],
  inverse: number[][],
  amounts: number[],
  column: Column,
  entering: number,
): boolean {
  const change = inverse.map((row) => row.reduce((sum, value, j) => sum + value * (column[j] ?? 0), 0));
  let leaving = -1;
  let least = Number.POSITIVE_INFINITY;
  change.forEach((by, i) => {
    if (by <= EPSILON) return;
    const ratio = (amounts[i] ?? 0) / by;
    if (ratio < least - EPSILON) {
      least = ratio;
      leaving = i;
    }
  });
  const row = inverse[leaving];
  if (row === undefined) return false;
  const by = change[leaving] ?? 1;
  const scaled = row.map((value) => value / by);
  inverse.forEach((other, i) => {
    const factor = change[i] ?? 0;
    inverse[i] = i === leaving ? scaled : other.map((value, j) => value - factor * (scaled[j] ?? 0));
    amounts[i] = i === leaving ? least : Math.max(0, (amounts[i] ?? 0) - factor * least);
  });
  basis[leaving] = entering;
  return true;
}
