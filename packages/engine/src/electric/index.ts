export { type Usage, usageOf } from "./network/usage.ts";
export { contactOhm } from "./physics/contact-resistance.ts";
export { copperFactor, gaugeOhmPerM, strandedOhmPerM, wireOhm } from "./physics/wire-resistance.ts";
export { CORNERS, spreadOf } from "./solve/corners.ts";
export { type ElectricNetwork, electricNetwork, solveElectric } from "./solve/solve-electric.ts";
