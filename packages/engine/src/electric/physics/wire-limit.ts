import { awg } from "@pinwright/kernel";
import { BUNDLE_CURVES } from "./bundle-curves.ts";
import { type CurvePoint, linear, logLog } from "./interpolate.ts";

/**
 * Current limit of one wire by itself in air, AWG 30 to 10.
 * Source: the chassis column of "Handbook of Electronic Tables and Formulas", from memory.
 */
const CHASSIS_A: readonly (readonly [gauge: number, amps: number])[] = [
  [30, 0.86],
  [28, 1.4],
  [26, 2.2],
  [24, 3.5],
  [22, 7],
  [20, 11],
  [18, 16],
  [16, 22],
  [14, 32],
  [12, 41],
  [10, 55],
];
const CHASSIS: readonly CurvePoint[] = CHASSIS_A.map(([gauge, amps]) => [awg(gauge).areaMm2, amps]);

/**
 * What the limits of single wires are taken to hold for: insulation of 80 °C in air of 30 °C. The table gives no
 * conditions; these are common practice, no source.
 */
const SINGLE_WIRE = { insulationC: 80, airC: 30 } as const;

/** Limit of one wire by itself, in A, by its conductor area: between gauges on logarithmic axes. */
export const singleWireA = (areaMm2: number): number => logLog(CHASSIS, areaMm2);

/**
 * Share of a single wire's limit that it keeps when its insulation or the air is another: √((Tw − Ta) ÷ (80 − 30)),
 * because heat goes with the current's square and leaves with the difference of temperatures. 0 in air that is as hot
 * as the insulation may become.
 * Source: the form of the ambient correction of the US National Electrical Code, 310.15(B), from memory.
 */
export function ambientShare(insulationC: number, airC: number): number {
  const { insulationC: ratedC, airC: ratedAirC } = SINGLE_WIRE;
  return Math.sqrt(Math.max(0, insulationC - airC) / (ratedC - ratedAirC));
}

/** Wires beyond which the curves stop: they go on as the power of the number that their last half follows. */
const MOST_READ = 19;
const HALF_READ = 10;

/**
 * Share of its limit that each wire of a bundle keeps.
 * @param wires how many lie in the bundle
 * @param loading current of all of them over what all together may carry, 0 to 1; below 0.2 it counts as 0.2
 * Source: MIL-W-5088L, curves read at 20, 40, 60, 80 and 100 % for 1 to 19 wires, ± 0.01 (`bundle-curves.ts`). From 20
 * wires on the 10- and 19-wire values are continued; at 35 wires and 20 % that gives 0.52, which is the factor of the
 * worked example in FAA AC 43.13-1B paragraph 11-69.
 */
export function bundleShare(wires: number, loading: number): number {
  if (wires <= 1) return 1;
  if (wires <= MOST_READ) return readShare(Math.floor(wires), loading);
  const [half, most] = [readShare(HALF_READ, loading), readShare(MOST_READ, loading)];
  const slope = Math.log(most / half) / Math.log(MOST_READ / HALF_READ);
  return most * (wires / MOST_READ) ** slope;
}

function readShare(wires: number, loading: number): number {
  const shares = BUNDLE_CURVES[wires - 1] ?? [];
  const points = shares.map((share, i): CurvePoint => [(i + 1) / shares.length, share]);
  return linear(points, loading);
}
