export {
  type Capability,
  capability,
  type Estimate,
  movingRangeDegrees,
  type SpecificationLimits,
  type Spread,
} from "./capability.ts";
export {
  type ControlLimits,
  type IndividualsChart,
  individualsChart,
  movingRanges,
  type SamplesChart,
  samplesChart,
} from "./control-chart.ts";
export { type ControlConstants, controlConstants } from "./control-constants.ts";
export { type ControlRule, controlSignals, type RuleSignal } from "./control-rules.ts";
export { LEAST_FOR_NORMALITY, type Normality, normality } from "./normality.ts";
export { proportion } from "./proportion.ts";
export { chiSquaredQuantile, gammaBelow, lnGamma, normalBelow, normalQuantile } from "./special.ts";
export { exactSum, lagOneCorrelation, type Summary, summaryOf } from "./summary.ts";
