import type { CuttingProblem } from "@pinwright/kernel";
import { type Covered, covered, type Pattern, wholeBound, wholesOf, withCounts } from "./covered.ts";
import { WHOLE_SHEET } from "./demand.ts";
import { type Cutting, cutFew } from "./few.ts";
import { distancesOf, type PatternUse, together, wholeSheets } from "./pattern.ts";
import { bestStrips, partOfStrips } from "./strips.ts";
import { insideOf, unitsOf } from "./units.ts";

/** More pieces than this are not left over for the search by pieces. */
const MOST_LEFT = 400;

/**
 * A plan for a run, out of a few patterns that are cut many times over. Offcuts from stock are filled first. Patterns and
 * how often each is cut come from the covering problem with patterns made as they are wanted; what its rounding leaves is
 * cut by the search for few pieces. The bound holds for any guillotine plan: the prices of the covering problem over the
 * most value that one sheet can give.
 */
export function cutMany(problem: CuttingProblem): Cutting {
  const offcuts = fillOffcuts(problem);
  const left = { ...problem, pieces: withCounts(problem, offcuts.left) };
  const units = unitsOf(problem, wholesOf(problem));
  const tooLarge = problem.pieces.flatMap(({ count }, piece) =>
    count > 0 && offcuts.left[piece] !== 0 && !units.ways.some((way) => way.piece === piece) ? [piece] : [],
  );
  if (tooLarge.length > 0) return { found: false, tooLarge, unplaced: [] };
  const strips = covered(left, units, false);
  const bound = wholeBound(problem, strips.prices);
  const plain = rounded(left, strips);
  const plainUses = plain === null ? null : [...offcuts.uses, ...plain];
  const count = (uses: readonly PatternUse[] | null): number =>
    uses === null ? Number.POSITIVE_INFINITY : wholeSheets(uses, problem, WHOLE_SHEET);
  let best = plainUses;
  let fewestWhole = bound;
  if (count(best) > bound) {
    const any = covered(left, units, true);
    fewestWhole = Math.max(bound, wholeBound(problem, any.prices));
    const free = rounded(left, any);
    const freeUses = free === null ? null : [...offcuts.uses, ...free];
    if (count(freeUses) < count(best)) best = freeUses;
  }
  if (best === null) return { found: false, tooLarge: [], unplaced: unplacedIn(problem) };
  const uses = together(best);
  return withinStock(uses, problem)
    ? { found: true, uses, fewestWhole: Math.min(fewestWhole, count(uses)), steps: 0 }
    : { found: false, tooLarge: [], unplaced: unplacedIn(problem) };
}

const unplacedIn = ({ pieces }: CuttingProblem): readonly number[] =>
  pieces.flatMap(({ count }, i) => (count > 0 ? [i] : []));

const withinStock = (uses: readonly PatternUse[], { sheets }: CuttingProblem): boolean =>
  sheets.every(({ count }, sheet) => {
    const used = uses.reduce((sum, use) => sum + (use.sheet === sheet ? use.copies : 0), 0);
    return count === null || used <= count;
  });

/**
 * Each offcut filled with what is worth most of what is wanted.
 * @param worth of each piece; absent: its area
 */
export function fillOffcuts(
  problem: CuttingProblem,
  order: readonly number[] | null = null,
  worth: readonly number[] = problem.pieces.map(({ widthMm, heightMm }) => widthMm * heightMm),
): { uses: readonly PatternUse[]; left: readonly number[] } {
  const left = problem.pieces.map(({ count }) => count);
  const uses: PatternUse[] = [];
  problem.sheets.forEach(({ cost, count }, sheet) => {
    if (cost >= WHOLE_SHEET) return;
    const units = unitsOf(problem, [sheet], order);
    for (let n = 0; n < (count ?? 1); ) {
      const values = worth.map((value, i) => ((left[i] ?? 0) > 0 ? value : 0));
      const best = bestStrips(
        units.ways.filter((way) => (values[way.piece] ?? 0) > 0),
        values,
        units,
      );
      if (best === null || best.counts.some((c, i) => c > (left[i] ?? 0))) return;
      const most = Math.min(
        (count ?? 1) - n,
        ...best.counts.flatMap((c, i) => (c > 0 ? [Math.floor((left[i] ?? 0) / c)] : [])),
      );
      const part = partOfStrips(best, problem.pieces, insideOf(problem, sheet), problem.kerfMm);
      uses.push({ sheet, part, copies: most });
      best.counts.forEach((c, i) => {
        left[i] = (left[i] ?? 0) - c * most;
      });
      n += most;
    }
  });
  return { uses, left };
}

/** Whole numbers of every pattern, and what is left by the search for few pieces; null when that finds none. */
function rounded(problem: CuttingProblem, { patterns }: Covered): readonly PatternUse[] | null {
  const plans = [false, true].flatMap((up) => {
    const uses = roundedOnce(problem, patterns, up);
    return uses === null ? [] : [uses];
  });
  const size = (uses: readonly PatternUse[]): readonly [number, number, number] => [
    wholeSheets(uses, problem, WHOLE_SHEET),
    distancesOf(uses).size,
    together(uses).length,
  ];
  return plans.reduce<readonly PatternUse[] | null>((best, uses) => {
    if (best === null) return uses;
    const [a, b] = [size(best), size(uses)];
    const i = a.findIndex((n, k) => n !== b[k]);
    return i >= 0 && (b[i] ?? 0) < (a[i] ?? 0) ? uses : best;
  }, null);
}

function roundedOnce(
  problem: CuttingProblem,
  patterns: Covered["patterns"],
  up: boolean,
): readonly PatternUse[] | null {
  const left = problem.pieces.map(({ count }) => count);
  const uses: PatternUse[] = [];
  const use = ({ sheet, part, counts }: Pattern, most: number): void => {
    const copies = Math.min(
      most,
      ...counts.flatMap((n, i) => (n > 0 ? [Math.floor((left[i] ?? 0) / n)] : [])),
    );
    if (copies <= 0) return;
    uses.push({ sheet, part, copies });
    counts.forEach((n, i) => {
      left[i] = (left[i] ?? 0) - n * copies;
    });
  };
  for (const { pattern, amount } of patterns) use(pattern, Math.floor(amount + 1e-9));
  const byRest = [...patterns].sort((a, b) => (b.amount % 1) - (a.amount % 1));
  if (up) for (const { pattern, amount } of byRest) if (amount % 1 > 0.5) use(pattern, 1);
  const pieces = left.reduce((sum, n) => sum + n, 0);
  if (pieces === 0) return uses;
  if (pieces > MOST_LEFT) return null;
  const rest = cutFew({
    ...problem,
    pieces: withCounts(problem, left),
    sheets: problem.sheets.map((sheet) => (sheet.cost < WHOLE_SHEET ? { ...sheet, count: 0 } : sheet)),
  });
  return rest.found ? [...uses, ...rest.uses] : null;
}
