export { breakLoops, type Ordered } from "./loops.ts";
export { OrderSolver } from "./order-solver.ts";
export { type Sequence, type SequenceNode, sequenceSteps } from "./sequence.ts";
export { isThreaded } from "./weights.ts";
