export { type Billed, NO_PARTS, PartsSolver } from "./parts-solver.ts";
