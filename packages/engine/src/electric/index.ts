export {
  type AssignEffort,
  type Assigned,
  type AssignLine,
  type AssignProblem,
  type AssignSite,
  assignBoundMm,
  assignedMm,
  ghostsOf,
  isPossible,
  type MatrixProposal,
  missingDiodes,
  proposeMatrix,
  type SwitchMatrix,
  searchAssignment,
  switchMatrices,
  usualAssignSteps,
  withProposal,
} from "./matrix/index.ts";
export { checkMatrixAndProgram, matrixAndProgramInputs } from "./matrix-and-program.ts";
export { type ElectricNetwork, electricNetwork } from "./network/network.ts";
export type { NetworkWire } from "./network/parts.ts";
export { type Usage, usageOf } from "./network/usage.ts";
export { contactOhm } from "./physics/contact-resistance.ts";
export { copperFactor, gaugeOhmPerM, strandedOhmPerM, wireOhm } from "./physics/wire-resistance.ts";
export { type ProgramPoint, programMap, programMapText, type Traced, traces } from "./program/index.ts";
export { ElectricRater } from "./rating/electric-rater.ts";
export { NO_RATINGS, rateElectric } from "./rating/rate-electric.ts";
export {
  type FuseChart,
  type FusePulse,
  fuseChart,
  type LadderNode,
  type LadderPart,
  type LadderSubject,
  type LoadLadder,
  loadLadders,
  loadsBehindFuses,
} from "./show/index.ts";
export { growTypes } from "./sizing/needs.ts";
export { CORNERS, spreadOf } from "./solve/corners.ts";
export { NO_ELECTRIC } from "./solve/electric-solution.ts";
export { type Ladder, type LadderRung, ladderOf } from "./solve/ladder.ts";
export {
  ElectricSolver,
  type ElectricWires,
  lengthsOf,
  solveElectric,
} from "./solve/solve-electric.ts";
export type { WorkedOhm } from "./solve/worked.ts";
export { type WorkedCurrent, type WorkedUnit, workedCurrent } from "./solve/worked-current.ts";
export { type WorkedLoad, type WorkedStep, workedLoad } from "./solve/worked-load.ts";
