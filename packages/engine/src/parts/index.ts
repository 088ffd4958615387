export { allLevels, type BillRow, coloursOf, oneLevel, type UsedIn, whereUsed } from "./bill/levels.ts";
export { derivedOf, MACHINE_NODE, unnamedOf } from "./bill/nodes.ts";
export { type CallOuts, callOuts, type LongLead, leadOf, type SingleSource } from "./checks/call-outs.ts";
export { breakEven } from "./choose/break-even.ts";
export {
  type EconomicQuantity,
  type EconomicQuestion,
  economicQuantity,
  type YearlyCost,
  yearlyCost,
} from "./choose/economic-quantity.ts";
export { type Change, type MakeOrBuy, makeOrBuy, type WayCurve } from "./choose/make-or-buy.ts";
export { explode, takesContents } from "./cost/explode.ts";
export { ownMinutes } from "./cost/own-minutes.ts";
export { type CostQuestion, type CostRollUp, type NodeCost, rollUp } from "./cost/roll-up.ts";
export { type Billed, NO_PARTS, PartsSolver } from "./parts-solver.ts";
export { buyAt, type Offer, type PriceBreak, type Purchase } from "./prices/offer.ts";
export { ownCurrency, PriceBook, priceBook, type Tool, type Way } from "./prices/price-book.ts";
export {
  costOfWay,
  type Priced,
  priceOf,
  type Sourced,
  sourceOf,
  type WayCost,
  workCost,
} from "./prices/source.ts";
export { addTotals } from "./prices/totals.ts";
