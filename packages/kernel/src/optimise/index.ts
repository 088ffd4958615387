export { type Assignment, assign } from "./assign.ts";
export {
  type Balance,
  type BalanceEffort,
  type BalanceFault,
  type BalanceProblem,
  balanceFaults,
  fewestStations,
  leastTakt,
  type NoBalance,
} from "./balance/index.ts";
export { type Cap, CappedChoice, type CappedSet } from "./capped-set.ts";
export { type AllowedColour, type Colouring, type ColouringProblem, colourGraph } from "./colour.ts";
export {
  type CutFault,
  type CutKind,
  type CutPart,
  type CutPiece,
  type CuttingEffort,
  type CuttingPlan,
  type CuttingProblem,
  type CuttingRules,
  cutFaults,
  type FenceSetting,
  fenceSettings,
  fewestSheets,
  mostValue,
  type NoCuttingPlan,
  type SheetPlan,
  type SheetTrim,
  type StockSheet,
  type ValueEffort,
  type ValuePlan,
  type ValueProblem,
} from "./guillotine/index.ts";
export { bestLots, type LotPlan, type LotProblem, MOST_STOCK_LEVELS, type PriceBreak } from "./lots/index.ts";
export { type Order, type OrderEffort, shortestPathOrder, shortestTourOrder } from "./order.ts";
export {
  assignQuadratic,
  type QuadraticAssignment,
  type QuadraticEffort,
  type QuadraticProblem,
} from "./quadratic/index.ts";
