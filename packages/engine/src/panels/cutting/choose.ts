import type { CutKind, CuttingProblem } from "@pinwright/kernel";
import { cutConsistently, lengthsOf } from "./consistent.ts";
import { WHOLE_SHEET } from "./demand.ts";
import { type Cutting, cutFew } from "./few.ts";
import { cutMany } from "./many.ts";
import { distancesOf, type PatternUse, wholeSheets } from "./pattern.ts";

/** Up to so many pieces are also placed one by one; more are only cut from patterns that repeat. */
const FEW_PIECES = 48;
/** Sheets that are all parted the same way first need the fence set less often, when they need not be more. */
const FIRST_CUTS: readonly (CutKind | "either")[] = ["either", "cross", "rip"];

/** One sheet more is taken when it lets what mates be cut at one setting and is no more than this share of all. */
const MATES_SHARE = 0.05;

/**
 * A plan with the fewest whole sheets, of those the one with the fewest settings of the fence, then with what `further` says
 * is least, then with the fewest sheets in all, then with the fewest patterns. Where no such plan was found that cuts what
 * mates at one setting, one sheet more may be taken for it.
 * @param further what is to be small beside, the first of it 0 if that can be: settings that mate and are set again
 * @param orderOf distances in the order in which a plan's fence is set, in µm
 */
export function cutSheets(
  problem: CuttingProblem,
  further: (uses: readonly PatternUse[]) => readonly number[],
  orderOf: (uses: readonly PatternUse[]) => readonly number[],
): Cutting {
  const pieces = problem.pieces.reduce((sum, { count }) => sum + count, 0);
  const found: (Cutting & { readonly found: true })[] = [];
  let failed: Cutting = { found: false, tooLarge: [], unplaced: [] };
  let bound = 0;
  const take = (cutting: Cutting): void => {
    if (!cutting.found) {
      failed = cutting;
      return;
    }
    bound = Math.max(bound, cutting.fewestWhole);
    found.push(cutting);
  };
  for (const firstCut of problem.stages === null ? (["either"] as const) : FIRST_CUTS) {
    const own = { ...problem, firstCut };
    // Strips that repeat need two stages.
    if (problem.stages === null || problem.stages >= 2) take(cutMany(own));
    if (pieces <= FEW_PIECES || found.length === 0) take(cutFew(own, bound));
  }
  const least = Math.min(...found.map(({ uses }) => wholeSheets(uses, problem, WHOLE_SHEET)));
  const plain = found.filter(({ uses }) => wholeSheets(uses, problem, WHOLE_SHEET) === least);
  const needsOrder = plain.length > 0 && plain.every(({ uses }) => (further(uses)[0] ?? 0) > 0);
  if (needsOrder && (problem.stages === null || problem.stages >= 2)) {
    const seeds = seedsOf(
      problem,
      plain.map((own) => own.uses),
      orderOf,
    );
    const uses = cutConsistently(problem, least, seeds);
    if (uses !== null) found.push({ found: true, uses, fewestWhole: bound, steps: 0 });
    const more =
      uses === null && Math.floor(least * MATES_SHARE) >= 1
        ? cutConsistently(problem, least + 1, seeds)
        : null;
    if (more !== null && (further(more)[0] ?? 0) === 0)
      return {
        found: true,
        uses: more,
        fewestWhole: Math.min(bound, least),
        forMates: wholeSheets(more, problem, WHOLE_SHEET) - least,
        steps: 0,
      };
  }
  const best = found
    .filter(({ uses }) => wholeSheets(uses, problem, WHOLE_SHEET) === least)
    .map((cutting) => ({ cutting, rank: rankOf(cutting.uses, further) }))
    .reduce<{ cutting: Cutting & { readonly found: true }; rank: readonly number[] } | null>(
      (kept, next) => (kept === null || isLess(next.rank, kept.rank) ? next : kept),
      null,
    );
  return best === null ? failed : { ...best.cutting, fewestWhole: Math.min(bound, least) };
}

/** Orders of all lengths to begin with: those of the plans, by their first and by their last use, and from long to short. */
function seedsOf(
  problem: CuttingProblem,
  plans: readonly (readonly PatternUse[])[],
  orderOf: (uses: readonly PatternUse[]) => readonly number[],
): readonly (readonly number[])[] {
  const all = lengthsOf(problem);
  const complete = (order: readonly number[]): readonly number[] => {
    const known = order.filter((key) => all.includes(key));
    return [...known, ...all.filter((key) => !known.includes(key))];
  };
  return [
    ...plans.flatMap((uses) => {
      const order = orderOf(uses);
      return [complete([...new Set(order)]), complete([...new Set([...order].reverse())].reverse())];
    }),
    all,
  ];
}

const rankOf = (
  uses: readonly PatternUse[],
  further: (uses: readonly PatternUse[]) => readonly number[],
): readonly number[] => [
  distancesOf(uses).size,
  ...further(uses),
  uses.reduce((sum, { copies }) => sum + copies, 0),
  uses.length,
];

function isLess(a: readonly number[], b: readonly number[]): boolean {
  const differs = a.findIndex((n, i) => n !== b[i]);
  return differs >= 0 && (a[differs] ?? 0) < (b[differs] ?? 0);
}
