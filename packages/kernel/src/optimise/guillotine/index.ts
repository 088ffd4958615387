export { type CutFault, cutFaults } from "./check.ts";
export { type CuttingEffort, type CuttingPlan, fewestSheets, type NoCuttingPlan } from "./fewest.ts";
export { mostValue, type ValueEffort, type ValuePlan, type ValueProblem } from "./most-value.ts";
export { type CutPart, type FenceSetting, fenceSettings, type SheetPlan } from "./plan.ts";
export type { CutKind, CutPiece, CuttingProblem, CuttingRules, SheetTrim, StockSheet } from "./problem.ts";
