import type { CuttingProblem } from "@pinwright/kernel";
import { WHOLE_SHEET } from "./demand.ts";
import { type Cutting, cutFew } from "./few.ts";
import { cutMany } from "./many.ts";
import { distancesOf, type PatternUse, wholeSheets } from "./pattern.ts";

/** Up to so many pieces are also placed one by one; more are only cut from patterns that repeat. */
const FEW_PIECES = 48;

/**
 * A plan with the fewest whole sheets, of those the one with the fewest settings of the fence, then with the fewest sheets
 * in all, then with the fewest patterns.
 */
export function cutSheets(problem: CuttingProblem): Cutting {
  const pieces = problem.pieces.reduce((sum, { count }) => sum + count, 0);
  // Strips that repeat need two stages.
  const repeated = problem.stages === null || problem.stages >= 2 ? cutMany(problem) : null;
  if (pieces > FEW_PIECES && repeated !== null) return repeated;
  const single = cutFew(problem, repeated?.found === true ? repeated.fewestWhole : 0);
  if (!single.found) return repeated?.found === true ? repeated : single;
  if (repeated?.found !== true) return single;
  const fewestWhole = Math.max(single.fewestWhole, repeated.fewestWhole);
  const uses = better(problem, repeated.uses, single.uses) ? repeated.uses : single.uses;
  return { found: true, uses, fewestWhole, steps: single.steps };
}

/** Whether the first is better, or as good. */
function better(problem: CuttingProblem, a: readonly PatternUse[], b: readonly PatternUse[]): boolean {
  const rank = (uses: readonly PatternUse[]): readonly number[] => [
    wholeSheets(uses, problem, WHOLE_SHEET),
    distancesOf(uses).size,
    uses.reduce((sum, { copies }) => sum + copies, 0),
    uses.length,
  ];
  const [first, second] = [rank(a), rank(b)];
  const differs = first.findIndex((n, i) => n !== second[i]);
  return differs < 0 || (first[differs] ?? 0) < (second[differs] ?? 0);
}
