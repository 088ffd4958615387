import { seededRandom } from "../../random.ts";
import { costBound, costStep } from "./bounds.ts";
import type { Direction } from "./boxes.ts";
import { plansOf } from "./cutting-tree.ts";
import type { Layout, SearchProblem } from "./layout.ts";
import { type FenceSetting, fenceSettings, type SheetPlan } from "./plan.ts";
import { type CutKind, type CuttingProblem, type Size, type Units, unitsOf } from "./problem.ts";
import { Cutter } from "./search.ts";

/** How long is searched, in counted steps, not in seconds. */
export interface CuttingEffort {
  /** Places for pieces looked at. */
  readonly steps: number;
  /** Further places looked at to need fewer settings of the fence with the same sheets. */
  readonly settingSteps: number;
}

/** All pieces cut from sheets. */
export interface CuttingPlan {
  readonly found: true;
  readonly plans: readonly SheetPlan[];
  /** Sum of the sheets' costs. */
  readonly cost: number;
  /** No plan costs less. */
  readonly lowerBound: number;
  /** The different settings of the fence that are needed. */
  readonly settings: readonly FenceSetting[];
  readonly steps: number;
}

/** Pieces, by their place in the problem, that are larger than any sheet or that found no place on those available. */
export interface NoCuttingPlan {
  readonly found: false;
  readonly tooLarge: readonly number[];
  readonly unplaced: readonly number[];
  readonly steps: number;
}

const EFFORT: CuttingEffort = { steps: 20_000_000, settingSteps: 0 };
const SEED = 1;
/** Costs that differ by less than this share are one. */
const ROUNDING = 1e-9;

const DIRECTIONS: Readonly<Record<CutKind, Direction>> = { cross: 0, rip: 1 };

/**
 * Cuts all pieces from as few sheets as can be found, or from the cheapest when sheets differ in cost, as a table saw
 * does it: edge to edge, with kerf and trim, in a limited number of stages. Ruin and recreate, and a bound by area and
 * dual feasible functions; a plan whose cost equals the bound is optimal. The same problem gives the same plan.
 *
 * When the steps for settings are not 0, plans of the same cost are then searched for one with fewer fence settings.
 * @throws RangeError as `unitsOf` does.
 */
export const fewestSheets = (
  problem: CuttingProblem,
  effort: CuttingEffort = EFFORT,
): CuttingPlan | NoCuttingPlan => {
  const units = unitsOf(problem);
  const search = searchProblem(problem, units);
  const tooLarge = search.pieces.flatMap((piece, i) =>
    piece.count > 0 && !search.sheets.some((sheet) => sheet.count > 0 && fits(piece, sheet)) ? [i] : [],
  );
  if (tooLarge.length > 0) return { found: false, tooLarge, unplaced: [], steps: 0 };
  const lowerBound = costBound(search);
  const cutter = new Cutter(search, seededRandom(SEED));
  const layout = cheapest(cutter, lowerBound, costStep(search.sheets), effort.steps);
  if (layout.left.length > 0) {
    const unplaced = [...new Set(layout.left)].sort((a, b) => a - b);
    return { found: false, tooLarge: [], unplaced, steps: cutter.steps };
  }
  const settled = cutter.fewerSettings(layout, effort.settingSteps);
  const plans = plansOf(settled, units);
  return {
    found: true,
    plans,
    cost: settled.cost,
    lowerBound: Math.min(lowerBound, settled.cost),
    settings: fenceSettings(plans),
    steps: cutter.steps,
  };
};

const cheapest = (cutter: Cutter, lowerBound: number, step: number, steps: number): Layout => {
  let best = cutter.start();
  if (best.left.length > 0) best = cutter.search(Number.POSITIVE_INFINITY, steps);
  if (best.left.length > 0) return best;
  while (best.cost > lowerBound * (1 + ROUNDING) && cutter.steps < steps) {
    const limit = step > 0 ? best.cost - step : best.cost * (1 - ROUNDING);
    const next = cutter.search(limit, steps - cutter.steps);
    if (next.left.length > 0) break;
    best = next;
  }
  return best;
};

const fits = (piece: Size & { readonly mayTurn: boolean }, { w, h }: Size): boolean =>
  (piece.w <= w && piece.h <= h) || (piece.mayTurn && piece.h <= w && piece.w <= h);

const searchProblem = (problem: CuttingProblem, units: Units): SearchProblem => ({
  pieces: problem.pieces.map(({ count, mayTurn }, i) => ({ ...sizeOf(units.pieces, i), count, mayTurn })),
  sheets: problem.sheets.map(({ count, cost }, i) => ({
    ...sizeOf(units.sheets, i),
    count: count ?? Number.POSITIVE_INFINITY,
    cost,
  })),
  depth: { stages: problem.stages ?? Number.POSITIVE_INFINITY, lastTrim: problem.lastTrim },
  first: problem.stages === null || problem.firstCut === "either" ? null : DIRECTIONS[problem.firstCut],
});

const sizeOf = (sizes: readonly Size[], i: number): Size => sizes[i] ?? { w: 0, h: 0 };
