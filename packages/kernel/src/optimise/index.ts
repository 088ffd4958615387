export { type Assignment, assign } from "./assign.ts";
export { type Cap, CappedChoice, type CappedSet } from "./capped-set.ts";
export { type AllowedColour, type Colouring, type ColouringProblem, colourGraph } from "./colour.ts";
export { type Order, type OrderEffort, shortestPathOrder, shortestTourOrder } from "./order.ts";
