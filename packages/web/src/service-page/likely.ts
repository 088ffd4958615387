import type { FaultWords } from "@pinwright/words/service";

/** How likely something is, in words. */
export function likelyWords({ likely }: FaultWords["faults"], probability: number): string {
  if (probability >= 0.9) return likely.sure;
  if (probability >= 0.6) return likely.very;
  if (probability >= 0.3) return likely.likely;
  return probability >= 0.1 ? likely.possible : likely.faint;
}

/** Whole percents: odds are no better known. */
export function percentText(probability: number): string {
  const percent = Math.round(100 * probability);
  return percent < 1 ? "<\u00a01\u00a0%" : percent > 99 ? ">\u00a099\u00a0%" : `${percent}\u00a0%`;
}
