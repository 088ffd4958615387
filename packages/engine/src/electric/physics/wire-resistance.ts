import type { BookRow } from "@pinwright/book";
import { awg, COPPER_OHM_MM2_PER_M_20C } from "@pinwright/kernel";

/** Temperature at which the line of copper's resistance would reach zero, below 0 °C. Source: FAA AC 43.13-1B. */
const COPPER_ZERO_C = 234.5;

/**
 * Resistance of copper at a temperature over that at 20 °C: (234.5 + T) ÷ 254.5.
 * Source: FAA AC 43.13-1B, page 11-22 (both figures); it is the coefficient 0.00393 /K of annealed copper at 20 °C.
 */
export const copperFactor = (celsius: number): number => (COPPER_ZERO_C + celsius) / (COPPER_ZERO_C + 20);

/**
 * Ω a metre of a stranded copper conductor: 1/58 Ω·mm²/m ÷ area, longer by the lay of its strands, at a temperature.
 * Source: IEC 60028:1925 (resistivity). The lay is a setting of the shop.
 * @throws RangeError when the area is not a positive finite number.
 */
export function strandedOhmPerM(areaMm2: number, strandLay: number, celsius = 20): number {
  if (!(areaMm2 > 0 && Number.isFinite(areaMm2)))
    throw new RangeError(`conductor area is ${areaMm2} mm², expected a positive number`);
  return ((COPPER_OHM_MM2_PER_M_20C * strandLay) / areaMm2) * copperFactor(celsius);
}

/** Ω a metre of a solid round conductor of a gauge number, at a temperature. Source: ASTM B258, IEC 60028:1925. */
export const gaugeOhmPerM = (gauge: number, celsius = 20): number =>
  (awg(gauge).ohmPerKm20C / 1000) * copperFactor(celsius);

/** Ω of a length of wire: by its conductor area, which stands for its gauge too. */
export function wireOhm(
  wireType: Pick<BookRow<"wire_types">, "area_mm2">,
  lengthMm: number,
  strandLay: number,
  celsius = 20,
): number {
  return (strandedOhmPerM(wireType.area_mm2, strandLay, celsius) * lengthMm) / 1000;
}
