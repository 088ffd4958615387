export { dayNumber, dayText } from "./days.ts";
export type { MachineVariant, PlanInput, RunMix, StageKind, StageMinutes } from "./input.ts";
export { openRuns, optionsKey, runMixes } from "./mixes.ts";
export { planRuns } from "./plan-runs.ts";
export { variantOf } from "./variant.ts";
