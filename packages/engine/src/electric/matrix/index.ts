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
export { type SwitchMatrix, switchMatrices } from "./find.ts";
export { ghostsOf, missingDiodes } from "./ghosts.ts";
export { type MatrixProposal, matrixProblem, proposeMatrix, withProposal } from "./propose.ts";
