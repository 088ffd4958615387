export { countFasteners, fastenerBill } from "./kits/count.ts";
export type { FastenerCount, KitPart, StationKit } from "./kits/kit.ts";
export { partsOfStep, stationKits } from "./kits/station-kits.ts";
export {
  learningExponent,
  runHours,
  unitMinutes,
  unitTheoryFactor,
  unitTheoryTotal,
  wrightAverage,
  wrightTotal,
  wrightUnit,
} from "./stations/learning.ts";
export { bookPlaces, MECHANISM_SKILL, type WorkPlace } from "./stations/places.ts";
export { planStations, USUAL_QUESTION } from "./stations/plan.ts";
export { learntLoads, stationScenarios, USUAL_UNITS } from "./stations/scenarios.ts";
export { NO_STEPS, StepsSolver } from "./steps-solver.ts";
