/** One row of the length tolerance table: up to this length, plus this, minus nothing. */
const STEPS: readonly { readonly upToMm: number; readonly plusMm: number }[] = [
  { upToMm: 300, plusMm: 25 },
  { upToMm: 1500, plusMm: 50 },
  { upToMm: 3000, plusMm: 100 },
  { upToMm: 7500, plusMm: 150 },
];

/**
 * Allowed excess of a finished wire's length; nothing may be missing.
 * Source: IPC/WHMA-A-620B, final draft of 2012, table 11-1.
 * @param lengthMm nominal length, mm
 * @returns mm; above 7.5 m 5 % of the length
 */
export function lengthTolerancePlusMm(lengthMm: number): number {
  return STEPS.find((step) => lengthMm <= step.upToMm)?.plusMm ?? lengthMm * 0.05;
}
