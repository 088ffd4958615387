export { stuffingBenches, usefulBenches } from "./benches.ts";
export { BoardsSolver, NO_BOARDS, type Registered } from "./boards-solver.ts";
export { fixingHoles } from "./holes.ts";
export { type Placement, placementsOf } from "./joints.ts";
export { attrition, boardKit, packFor } from "./kit.ts";
export { type BoardMinutes, boardMinutes } from "./minutes.ts";
export {
  boardsInMachine,
  kindCrossing,
  sessionOf,
  solderChoice,
  solderCurve,
  solderShifts,
} from "./solder/choice.ts";
export { stuffingPlan } from "./stuffing/stuffing-plan.ts";
export { boardTests, testMinutes } from "./tests.ts";
