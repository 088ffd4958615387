import { type CuttingEffort, type CuttingProblem, fewestSheets } from "@pinwright/kernel";
import { WHOLE_SHEET } from "./demand.ts";
import { distancesOf, type PatternUse, together, wholeSheets } from "./pattern.ts";

/** All pieces cut, or what could not be. */
export type Cutting =
  | {
      readonly found: true;
      readonly uses: readonly PatternUse[];
      /** Whole sheets that no plan can do without. */
      readonly fewestWhole: number;
      /** Whole sheets more than were found to be enough, so that what mates is cut at one setting. */
      readonly forMates?: number;
      readonly steps: number;
    }
  | {
      readonly found: false;
      readonly tooLarge: readonly number[];
      readonly unplaced: readonly number[];
    };

/** Steps of the search for few sheets: first a short one, then, where it may save a sheet, a long one. */
const SHORT = { steps: 20_000, settingSteps: 0 } as const;
const LONG = { steps: 120_000, settingSteps: 0 } as const;
const SETTING_STEPS = 50_000;

/**
 * Rules under which every setting of the fence is a size of a panel: the last stage only trims. They need the fewest
 * settings, so they come first.
 */
const trimmedOnly = (problem: CuttingProblem): CuttingProblem =>
  problem.stages === null || problem.stages < 2
    ? problem
    : { ...problem, stages: problem.stages - 1, lastTrim: true };

/** Offcuts that a plan may use at most. */
const offcutsOf = ({ sheets }: CuttingProblem): number =>
  sheets.reduce((sum, { cost, count }) => sum + (cost < WHOLE_SHEET ? (count ?? 1) : 0), 0);

/** What one search found. */
interface Tried {
  readonly uses: readonly PatternUse[] | null;
  readonly whole: number;
  readonly bound: number;
  readonly steps: number;
  readonly tooLarge: readonly number[];
  readonly unplaced: readonly number[];
}

function attempt(problem: CuttingProblem, rules: CuttingProblem, effort: CuttingEffort): Tried {
  const plan = fewestSheets(rules, effort);
  if (!plan.found) return { ...plan, uses: null, whole: Number.POSITIVE_INFINITY, bound: 0 };
  const uses = together(plan.plans.map((own) => ({ ...own, copies: 1 })));
  return {
    uses,
    whole: wholeSheets(uses, problem, WHOLE_SHEET),
    bound: wholeBound(problem, plan.lowerBound),
    steps: plan.steps,
    tooLarge: [],
    unplaced: [],
  };
}

/**
 * A plan for a few dozen pieces: fewest whole sheets, then fewest fence settings. Plans whose last stage only trims are
 * tried first; others, and long searches, only where they may save a sheet.
 * @param known whole sheets that are known to be needed
 */
export function cutFew(problem: CuttingProblem, known = 0): Cutting {
  const trimmed = trimmedOnly(problem);
  const tries = [
    [trimmed, SHORT],
    [trimmed, LONG],
    [problem, { ...LONG, settingSteps: SETTING_STEPS }],
  ] as const;
  let best: Tried | null = null;
  let bound = known;
  let steps = 0;
  for (const [rules, effort] of tries) {
    const next = attempt(problem, rules, effort);
    if (next.tooLarge.length > 0) return { found: false, tooLarge: next.tooLarge, unplaced: [] };
    steps += next.steps;
    bound = Math.max(bound, next.bound);
    if (
      best === null ||
      next.whole < best.whole ||
      (next.whole === best.whole && settings(next) < settings(best))
    )
      best = next;
    if (best.whole <= bound) break;
  }
  if (best?.uses == null) return { found: false, tooLarge: [], unplaced: best?.unplaced ?? [] };
  return { found: true, uses: best.uses, fewestWhole: Math.min(bound, best.whole), steps };
}

const settings = ({ uses }: Tried): number =>
  uses === null ? Number.POSITIVE_INFINITY : distancesOf(uses).size;

/** Whole sheets in any plan that costs at least so much. */
const wholeBound = (problem: CuttingProblem, leastCost: number): number =>
  Math.max(0, Math.ceil((leastCost - offcutsOf(problem)) / WHOLE_SHEET - 1e-9));
