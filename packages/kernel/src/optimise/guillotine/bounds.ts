import { dualFeasibleFunctions } from "./dual-feasible.ts";
import type { SearchProblem } from "./layout.ts";

/** Sums of values of functions are rounded; a bound this little over a whole number is that number. */
const ROUNDING = 1e-6;

type Piece = SearchProblem["pieces"][number];
type Sheet = SearchProblem["sheets"][number];

/**
 * No set of sheets for all pieces costs less, however they are cut: by area, and by dual feasible functions of widths
 * and heights on the smallest sheet that would hold any other.
 */
export const costBound = ({ pieces, sheets }: Pick<SearchProblem, "pieces" | "sheets">): number => {
  const wanted = pieces.filter(({ count }) => count > 0);
  if (wanted.length === 0 || sheets.length === 0) return 0;
  const number = Math.max(1, numberBound(wanted, sheets));
  const byNumber = number * Math.min(...sheets.map(({ cost }) => cost));
  return upToCosts(Math.max(byNumber, areaBound(wanted, sheets)), sheets);
};

/** The area that is wanted, from the sheets whose area is cheapest. */
const areaBound = (pieces: readonly Piece[], sheets: readonly Sheet[]): number => {
  let area = pieces.reduce((sum, { w, h, count }) => sum + w * h * count, 0);
  let cost = 0;
  const cheapest = [...sheets].sort((a, b) => a.cost / (a.w * a.h) - b.cost / (b.w * b.h));
  for (const sheet of cheapest) {
    const whole = sheet.w * sheet.h;
    const taken = Math.min(area, whole * sheet.count);
    cost += (taken / whole) * sheet.cost;
    area -= taken;
  }
  return cost;
};

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** The least whole number of the costs' common divisor, when they are whole. */
export const costStep = (sheets: readonly { readonly cost: number }[]): number => {
  if (!sheets.every(({ cost }) => Number.isSafeInteger(cost))) return 0;
  return sheets.reduce((d, { cost }) => gcd(cost, d), 0);
};

/** Most sums of costs that are tried one by one. */
const MOST_SUMS = 100_000;

/** The least sum of sheets' costs that is no less; of whole costs only. */
const upToCosts = (bound: number, sheets: readonly Sheet[]): number => {
  const step = costStep(sheets);
  if (step === 0) return bound * (1 - ROUNDING);
  const least = Math.ceil(bound / step - ROUNDING);
  const costs = sheets.map(({ cost }) => cost / step);
  const dearest = Math.max(...costs);
  if (least + dearest > MOST_SUMS) return least * step;
  const reached = new Uint8Array(least + dearest + 1);
  reached[0] = 1;
  for (let sum = 1; sum < reached.length; sum++) {
    if (costs.some((cost) => reached[sum - cost] === 1)) reached[sum] = 1;
  }
  const next = reached.indexOf(1, least);
  return (next < 0 ? least : next) * step;
};

const numberBound = (pieces: readonly Piece[], sheets: readonly Sheet[]): number => {
  const width = Math.max(...sheets.map(({ w }) => w));
  const height = Math.max(...sheets.map(({ h }) => h));
  // Functions of the widths on the sheet's width; a turned piece lies there with its height.
  const n = pieces.length;
  const lengths = [...pieces.map(({ w }) => w), ...pieces.map(({ h }) => h)];
  const across = dualFeasibleFunctions(lengths, width);
  const along = dualFeasibleFunctions(lengths, height);
  let best = 0;
  for (const f of across) {
    for (const g of along) {
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const piece = pieces[i];
        if (piece !== undefined) sum += piece.count * share(piece, i, n, f, g, width, height);
      }
      if (sum > best) best = sum;
    }
  }
  return Math.ceil(best - ROUNDING);
};

/** The least share of a sheet that a piece takes in the ways it may lie. */
const share = (
  { w, h, mayTurn }: Piece,
  i: number,
  n: number,
  f: readonly number[],
  g: readonly number[],
  width: number,
  height: number,
): number => {
  const straight = w <= width && h <= height ? (f[i] ?? 0) * (g[n + i] ?? 0) : Number.POSITIVE_INFINITY;
  const turned =
    mayTurn && h <= width && w <= height ? (f[n + i] ?? 0) * (g[i] ?? 0) : Number.POSITIVE_INFINITY;
  const least = Math.min(straight, turned);
  return least === Number.POSITIVE_INFINITY ? 0 : least;
};
