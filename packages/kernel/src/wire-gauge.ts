/** A solid round conductor of a gauge number, of annealed copper. */
export interface WireGauge {
  readonly diameterMm: number;
  readonly areaMm2: number;
  /** Direct-current resistance at 20 °C. */
  readonly ohmPerKm20C: number;
}

/** Resistivity of annealed copper at 20 °C, 1/58 Ω·mm²/m (100 % IACS). Source: IEC 60028:1925. */
export const COPPER_OHM_MM2_PER_M_20C = 1 / 58;

const MM_PER_INCH = 25.4;

/**
 * American wire gauge `n`; 0 is 1/0, −1 is 2/0, −2 is 3/0, −3 is 4/0.
 *
 * d(n) = 0.005 in × 92^((36−n)/39), area = π d²/4, resistance = 1000/(58 × area).
 * Source: ASTM B258 (diameters), IEC 60028:1925 (resistivity). The range −3 to 56 of B258 is from memory.
 * A stranded conductor of the same number has a larger diameter and about the same area.
 * @throws RangeError when `n` is not a whole number from −3 to 56.
 */
export const awg = (n: number): WireGauge => {
  if (!Number.isInteger(n) || n < -3 || n > 56) {
    throw new RangeError(`gauge number is ${n}, expected a whole number from -3 (4/0) to 56`);
  }
  const diameterMm = 0.005 * MM_PER_INCH * 92 ** ((36 - n) / 39);
  const areaMm2 = (Math.PI * diameterMm ** 2) / 4;
  return { diameterMm, areaMm2, ohmPerKm20C: (1000 * COPPER_OHM_MM2_PER_M_20C) / areaMm2 };
};
