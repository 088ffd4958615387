import type { BookRow } from "@pinwright/book";
import { copperFactor } from "./wire-resistance.ts";

/** Hottest that a winding may become, °C, by its insulation class. Source: IEC 60085, from memory. */
const CLASS_C: Readonly<Record<BookRow<"windings">["class"], number>> = {
  A: 105,
  E: 120,
  B: 130,
  F: 155,
  H: 180,
};

export const insulationClassC = (name: BookRow<"windings">["class"]): number => CLASS_C[name];

/** Air that the heat a coil can give off is told for, °C: the ambient of IEC 60034-1. */
const RATED_AIR_C = 40;

/** A winding as a body that warms and cools: what it can give off, and how slowly it follows. */
export interface WarmCoil {
  readonly ohm20C: number;
  /** Class limit. */
  readonly limitC: number;
  /** Rise over the air for each watt. */
  readonly kelvinPerWatt: number;
  readonly timeConstantS: number;
}

/** Rise for each watt from the heat that it can give off all the time in air of 40 °C: (limit − 40) ÷ heat. */
export const kelvinPerWatt = (limitC: number, heatW: number): number => (limitC - RATED_AIR_C) / heatW;

/** Heat of a winding at a steady voltage, W, at a temperature. */
export const coilHeatW = (volts: number, ohm20C: number, celsius: number): number =>
  volts ** 2 / (ohm20C * copperFactor(celsius));

/**
 * Share of the time, 0 to 1, for which a winding may carry its full voltage when each on-time is short beside its time
 * constant: what it gives off at its limit over what it takes in there.
 * Source: duty cycle practice of VDE 0580: at a duty D, √(1 ÷ D) times the voltage makes the same heat.
 */
export function allowedDuty(
  coil: Pick<WarmCoil, "ohm20C" | "limitC" | "kelvinPerWatt">,
  volts: number,
  airC: number,
): number {
  const givesOffW = Math.max(0, coil.limitC - airC) / coil.kelvinPerWatt;
  return Math.min(1, givesOffW / coilHeatW(volts, coil.ohm20C, coil.limitC));
}

/** Intervals of Simpson's rule; the integrand is smooth, and 200 give more than six digits. */
const INTERVALS = 200;

/**
 * Seconds until a winding that is left on a steady voltage reaches its limit; endless when it never does. It takes in
 * V² ÷ R(T), less as it warms, and gives off (T − air) ÷ rise per watt: t = τ ∫ dT ÷ (heat(T) × rise per watt − (T −
 * air)), by Simpson's rule. 0 when it is too hot already.
 */
export function stuckOnS(coil: WarmCoil, volts: number, airC: number, startC: number): number {
  if (startC >= coil.limitC) return 0;
  const driveK = (celsius: number): number =>
    coilHeatW(volts, coil.ohm20C, celsius) * coil.kelvinPerWatt - (celsius - airC);
  // The drive falls as it warms, so that it is least at the limit.
  if (driveK(coil.limitC) <= 0) return Number.POSITIVE_INFINITY;
  const step = (coil.limitC - startC) / INTERVALS;
  let sum = 0;
  for (let i = 0; i <= INTERVALS; i++) {
    const weight = i === 0 || i === INTERVALS ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight / driveK(startC + i * step);
  }
  return coil.timeConstantS * (step / 3) * sum;
}
