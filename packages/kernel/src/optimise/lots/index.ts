export { bestLots, type LotPlan, type LotProblem, MOST_STOCK_LEVELS, type PriceBreak } from "./lots.ts";
