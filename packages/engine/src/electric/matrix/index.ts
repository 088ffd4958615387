export { assignBoundMm } from "./assign/bound.ts";
export {
  type Assigned,
  type AssignLine,
  type AssignProblem,
  type AssignSite,
  assignedMm,
  isPossible,
} from "./assign/problem.ts";
export { type AssignEffort, searchAssignment, usualAssignSteps } from "./assign/search.ts";
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
export {
  type MatrixMove,
  type MatrixProposal,
  matrixProblem,
  type NetChange,
  proposeMatrix,
  withProposal,
} from "./propose.ts";
