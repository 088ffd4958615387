export { checkMatrices } from "./check-ghosts.ts";
export { type Crossing, type MatrixLine, type SwitchMatrix, switchMatrices } from "./find.ts";
export {
  ghostSets,
  ghostsOf,
  type MatrixGrid,
  type MissingDiode,
  missingDiodes,
  type Position,
  readsClosed,
} from "./ghosts.ts";
