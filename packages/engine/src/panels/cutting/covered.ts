import { type CutPart, type CuttingProblem, cutFaults, mostValue, type SheetPlan } from "@pinwright/kernel";
import { WHOLE_SHEET } from "./demand.ts";
import { type Column, cover } from "./master.ts";
import { countsOf } from "./pattern.ts";
import { bestStrips, partOfStrips, type StripPattern } from "./strips.ts";
import { insideOf, type Units } from "./units.ts";

/** A pattern is worth taking up when its value is more than that of a sheet by this. */
const GAIN = 1e-7;
/** Tables of values are left out when one would take more sums. */
const VALUE_EFFORT = { placeSteps: 20_000, tableSteps: 4_000_000, joinSteps: 0 } as const;
/** Patterns of any three stages that are looked for beside strips. */
const MOST_FREE_PATTERNS = 12;

/** A pattern that a run may use. */
export interface Pattern {
  readonly sheet: number;
  readonly part: CutPart;
  readonly counts: readonly number[];
}

/** The same pieces, other numbers of them. */
export const withCounts = ({ pieces }: CuttingProblem, counts: readonly number[]): CuttingProblem["pieces"] =>
  pieces.map((piece, i) => ({ ...piece, count: counts[i] ?? 0 }));

/** Sheets of the problem that are no offcuts. */
export const wholesOf = ({ sheets }: CuttingProblem): readonly number[] =>
  sheets.flatMap(({ cost }, sheet) => (cost >= WHOLE_SHEET ? [sheet] : []));

export interface Covered {
  readonly patterns: readonly { readonly pattern: Pattern; readonly amount: number }[];
  readonly prices: readonly number[];
  /** All patterns that were looked at on the way. */
  readonly seen: readonly Pattern[];
}

/**
 * The covering problem of what is wanted, over strips and, if asked, over any patterns that the rules allow.
 */
export function covered(problem: CuttingProblem, units: Units, free: boolean): Covered {
  const wanted = problem.pieces.flatMap(({ count }, i) => (count > 0 ? [i] : []));
  const patterns: Pattern[] = wanted.flatMap((i) => {
    const values = problem.pieces.map((_, j) => (i === j ? 1 : 0));
    const best = patternOf(problem, units, values);
    return best === null ? [] : [best];
  });
  let freeLeft = free ? MOST_FREE_PATTERNS : 0;
  const columnOf = ({ counts }: Pattern): Column => wanted.map((i) => counts[i] ?? 0);
  const columns = patterns.map(columnOf);
  const spread = (prices: readonly number[]): readonly number[] => {
    const values = problem.pieces.map(() => 0);
    wanted.forEach((i, k) => {
      values[i] = Math.max(0, prices[k] ?? 0);
    });
    return values;
  };
  const found = cover(
    wanted.map((i) => problem.pieces[i]?.count ?? 0),
    columns,
    (prices) => {
      const values = spread(prices);
      const worth = ({ counts }: Pattern): number =>
        counts.reduce((sum, n, i) => sum + n * (values[i] ?? 0), 0);
      let best = patternOf(problem, units, values);
      if ((best === null || worth(best) <= 1 + GAIN) && freeLeft > 0) {
        freeLeft--;
        best = freePattern(problem, units, values);
      }
      if (best === null || worth(best) <= 1 + GAIN) return null;
      patterns.push(best);
      return columnOf(best);
    },
  );
  return {
    patterns: found.used.flatMap(({ column, amount }) => {
      const pattern = patterns[column];
      return pattern === undefined ? [] : [{ pattern, amount }];
    }),
    prices: spread(found.prices),
    seen: patterns,
  };
}

/** The pattern of strips that is worth most; null: there is none. */
export function patternOf(problem: CuttingProblem, units: Units, values: readonly number[]): Pattern | null {
  const ways = units.ways.filter((way) => (values[way.piece] ?? 0) > 0);
  const best = bestStrips(ways, values, units);
  if (best === null) return null;
  return { sheet: best.sheet, part: patternPart(problem, best), counts: best.counts };
}

/** The cuts of a pattern of strips. */
export const patternPart = (problem: CuttingProblem, pattern: StripPattern): CutPart =>
  partOfStrips(pattern, problem.pieces, insideOf(problem, pattern.sheet), problem.kerfMm);

/** The most value from one sheet in any stages, if it comes out within those that are allowed. */
function freePattern(problem: CuttingProblem, units: Units, values: readonly number[]): Pattern | null {
  let best: (Pattern & { readonly value: number }) | null = null;
  for (const { sheet } of units.sheets) {
    const found = sheetValue(problem, sheet, values);
    if (found === null || (best !== null && found.value <= best.value)) continue;
    const counts = countsOf(found.part, problem.pieces.length);
    if (allowed(problem, { sheet, part: found.part }, counts))
      best = { sheet, part: found.part, counts, value: found.value };
  }
  return best;
}

function sheetValue(
  problem: CuttingProblem,
  sheet: number,
  values: readonly number[],
): { readonly part: CutPart; readonly value: number; readonly upperBound: number } | null {
  const stock = problem.sheets[sheet];
  if (stock === undefined) return null;
  return mostValue(
    {
      pieces: problem.pieces.map(({ widthMm, heightMm, mayTurn }, i) => ({
        widthMm,
        heightMm,
        mayTurn,
        count: (values[i] ?? 0) > 0 ? null : 0,
        value: values[i] ?? 0,
      })),
      sheet: { widthMm: stock.widthMm, heightMm: stock.heightMm, trim: stock.trim },
      kerfMm: problem.kerfMm,
    },
    VALUE_EFFORT,
  );
}

function allowed(problem: CuttingProblem, plan: SheetPlan, counts: readonly number[]): boolean {
  return cutFaults([plan], { ...problem, pieces: withCounts(problem, counts) }).length === 0;
}

/** Whole sheets that no plan can do without: by area, and by prices over the most value that one sheet can give. */
export function wholeBound(problem: CuttingProblem, prices: readonly number[]): number {
  const wholes = wholesOf(problem);
  const areas = problem.pieces.map(({ widthMm, heightMm }) => widthMm * heightMm);
  const area = (sheet: number): number => {
    const { widthMm, heightMm } = insideOf(problem, sheet);
    return widthMm * heightMm;
  };
  const most = (sheet: number): number =>
    sheetValue(problem, sheet, prices)?.upperBound ?? Number.POSITIVE_INFINITY;
  return Math.max(bound(problem, areas, wholes, area), bound(problem, prices, wholes, most), 0);
}

function bound(
  problem: CuttingProblem,
  values: readonly number[],
  wholes: readonly number[],
  mostOf: (sheet: number) => number,
): number {
  let wanted = problem.pieces.reduce((sum, { count }, i) => sum + count * (values[i] ?? 0), 0);
  problem.sheets.forEach(({ cost, count }, sheet) => {
    if (cost < WHOLE_SHEET) wanted -= (count ?? 1) * mostOf(sheet);
  });
  const most = Math.max(...wholes.map(mostOf));
  return most > 0 ? Math.ceil(wanted / most - 1e-6) : 0;
}
