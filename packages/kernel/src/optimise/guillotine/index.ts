export { type CutFault, cutFaults } from "./check.ts";
export { type CuttingEffort, type CuttingPlan, fewestSheets, type NoCuttingPlan } from "./fewest.ts";
export { type CutPart, type FenceSetting, fenceSettings, type SheetPlan } from "./plan.ts";
export type { CutKind, CutPiece, CuttingProblem, CuttingRules, SheetTrim, StockSheet } from "./problem.ts";
