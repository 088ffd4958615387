import { COPPER_OHM_MM2_PER_M_20C } from "@pinwright/kernel";

/** How a coil is wound, square stacking: each layer's turns lie on those of the layer below. */
export interface Bobbin {
  readonly turns: number;
  /** Bare conductor. */
  readonly wireMm: number;
  readonly overEnamelMm: number;
  /** Diameter that the first layer is wound on. */
  readonly boreMm: number;
  /** Length of a layer. */
  readonly windowMm: number;
}

export interface Winding {
  readonly turnsPerLayer: number;
  readonly layers: number;
  /** Height of the winding over the bore's radius. */
  readonly buildMm: number;
  readonly outerMm: number;
  readonly meanTurnMm: number;
  readonly wireM: number;
  readonly ohm20C: number;
  /** Copper over the winding's cross-section. */
  readonly fill: number;
}

/** An enamelled wire is laid as wide as it is; a millionth keeps a window of whole wires whole. */
const SLACK = 1e-6;

/**
 * Winding of a coil: turns per layer = ⌊window ÷ wire over enamel⌋, layers = ⌈turns ÷ turns per layer⌉, build = layers
 * × wire, mean turn = π(bore + build), resistance = length × resistance of the conductor a metre.
 * Source: winding practice; resistivity of IEC 60028:1925.
 * @throws RangeError when not one turn fits into a layer.
 */
export function windingOf({ turns, wireMm, overEnamelMm, boreMm, windowMm }: Bobbin): Winding {
  const turnsPerLayer = Math.floor(windowMm / overEnamelMm + SLACK);
  if (turnsPerLayer < 1)
    throw new RangeError(`a layer is ${windowMm} mm long, expected at least one wire of ${overEnamelMm} mm`);
  const layers = Math.ceil(turns / turnsPerLayer);
  const buildMm = layers * overEnamelMm;
  const meanTurnMm = Math.PI * (boreMm + buildMm);
  const wireM = (turns * meanTurnMm) / 1000;
  const areaMm2 = (Math.PI * wireMm ** 2) / 4;
  return {
    turnsPerLayer,
    layers,
    buildMm,
    outerMm: boreMm + 2 * buildMm,
    meanTurnMm,
    wireM,
    ohm20C: (wireM * COPPER_OHM_MM2_PER_M_20C) / areaMm2,
    fill: (turns * areaMm2) / (windowMm * buildMm),
  };
}

/** Permeability of vacuum, H/m; 4π × 10⁻⁷ to ten digits. */
const MU0 = 4e-7 * Math.PI;

/** Flux density at which iron saturates, T: 1.6 to 2.0 in textbooks; the lower counts. */
const SATURATION_T = 1.6;

/**
 * Ideal pull of a plunger over an air gap, N: μ0 N²I²A ÷ (2g²), never more than saturated iron can pull,
 * B²A ÷ (2μ0). Iron without reluctance, no fringing, no leakage: an indication only.
 * Source: published formula; ceiling from textbooks.
 */
export function gapForceN(ampereTurns: number, poleMm2: number, gapMm: number): number {
  const poleM2 = poleMm2 * 1e-6;
  const ideal = (MU0 * ampereTurns ** 2 * poleM2) / (2 * (gapMm / 1000) ** 2);
  return Math.min(ideal, (SATURATION_T ** 2 * poleM2) / (2 * MU0));
}

/**
 * Rise of a winding over the air by its change of resistance, K: (R2 ÷ R1)(k + t1) − (k + ta).
 * @param k 235 for copper by IEC 60034-1, 234.5 by IEC 60335-1 and UL, 225 for aluminium
 * Source: IEC 60034-1 as a resistance meter's manual explains it.
 */
export const riseByResistanceK = (
  cold: { readonly ohm: number; readonly celsius: number },
  hotOhm: number,
  airC: number,
  k: number,
): number => (hotOhm / cold.ohm) * (k + cold.celsius) - (k + airC);
