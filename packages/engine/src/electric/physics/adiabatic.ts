import type { BookRow } from "@pinwright/book";

type Insulation = BookRow<"wire_types">["insulation"];

/** Final temperature of a short circuit of at most 5 s, °C. Source: IEC 60364-4-43 table 43A, from memory. */
const FINAL_C: Readonly<Record<Insulation, number>> = { pvc: 160, xlpe: 250, rubber: 200 };

/** β of copper and √(Qc(β + 20) ÷ ρ20) in A√s/mm². Source: IEC 60364-5-54 annex A, from memory. */
const COPPER = { betaC: 234.5, factor: 226 } as const;

/** Hottest that a short circuit may make a conductor, °C, by its insulation. */
export const shortCircuitC = (insulation: Insulation): number => FINAL_C[insulation];

/**
 * k of a copper conductor that is as warm as `startC` when the short circuit begins, in A√s/mm²:
 * k = 226 √ln(1 + (θf − θi) ÷ (234.5 + θi)). For 70 °C and PVC it is 115, for 90 °C and cross-linked polyethylene 143.
 * Source: IEC 60364-5-54 annex A, from memory. 0 when it is hotter than that already.
 */
export function adiabaticK(insulation: Insulation, startC: number): number {
  const rise = Math.max(0, FINAL_C[insulation] - startC);
  return COPPER.factor * Math.sqrt(Math.log(1 + rise / (COPPER.betaC + startC)));
}

/** I²t that a conductor takes before a short circuit harms its insulation: k²S², in A²s. No heat leaves it. */
export const adiabaticA2s = (k: number, areaMm2: number): number => (k * areaMm2) ** 2;

/** What a wire can stand: its lasting limit and its adiabatic one. */
export interface WireStrength {
  readonly limitA: number;
  readonly adiabaticA2s: number;
  readonly insulationC: number;
  readonly shortC: number;
  readonly airC: number;
}

/**
 * Seconds for which a wire that is as hot as its insulation allows can carry a current, before the insulation is as
 * hot as a short circuit may make it. With a heat flow that its lasting limit tells and a heat capacity that k²S²
 * tells, it warms exponentially; at high currents the time tends to k²S² ÷ I². Endless where it gets no hotter.
 */
export function harmS(wire: WireStrength, amps: number): number {
  const riseK = (wire.insulationC - wire.airC) * (amps / wire.limitA) ** 2;
  const [fromStart, fromEnd] = [wire.airC + riseK - wire.insulationC, wire.airC + riseK - wire.shortC];
  if (!(wire.limitA > 0)) return 0;
  if (fromEnd <= 0) return Number.POSITIVE_INFINITY;
  const capacityS = (riseK / (wire.shortC - wire.insulationC)) * (wire.adiabaticA2s / amps ** 2);
  return capacityS * Math.log(fromStart / fromEnd);
}
