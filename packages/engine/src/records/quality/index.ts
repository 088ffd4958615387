export { type ParetoBar, type ParetoBy, pareto } from "./pareto.ts";
export { defectsPerUnit, firstPassYield, passedFirst, rolledYield, type Yield } from "./yield.ts";
