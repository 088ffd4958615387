import type { Wire } from "../model/index.ts";

/** Factor of the rule of thumb for a bundle's diameter, 1.2 √Σd²: common practice, no source. */
const BUNDLE_RULE = 1.2;

/** Diameter (mm) of wires laid as one bundle, by the rule of thumb and the shop's laid factor. */
export const bundleRuleMm = (wires: readonly Wire[], laidFactor: number): number =>
  BUNDLE_RULE * laidFactor * Math.sqrt(wires.reduce((sum, w) => sum + w.wireType.od_mm ** 2, 0));

/** Largest Σd² (mm²) whose bundle by that rule has no more than a diameter (mm). */
export const squareWithin = (diameterMm: number, laidFactor: number): number =>
  (diameterMm / (BUNDLE_RULE * laidFactor)) ** 2;
