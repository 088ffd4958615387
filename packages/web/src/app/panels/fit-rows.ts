import type { ViewEntry } from "../../worker/protocol.ts";

export type Fit = ViewEntry<"panelFits">;
export type FitVerdict = "good" | "likely" | "bad" | "open";

/** Lengths that differ by less are one: a thousandth of a millimetre. */
const SAME_MM = 1e-3;

const within = (fit: Fit, min: number, max: number): boolean =>
  (fit.minMm === null || min >= fit.minMm - SAME_MM) && (fit.maxMm === null || max <= fit.maxMm + SAME_MM);

/** Whether a fit comes out: surely, likely, or not even likely. */
export function verdictOf(fit: Fit): FitVerdict {
  if (fit.minMm === null && fit.maxMm === null) return "open";
  if (within(fit, fit.worstMinMm, fit.worstMaxMm)) return "good";
  return within(fit, fit.rssMinMm, fit.rssMaxMm) ? "likely" : "bad";
}

/** What a term adds to the worst case, in mm: both its tolerances, as often as it counts. */
export const spreadOf = ({ times, minusMm, plusMm }: Fit["terms"][number]): number =>
  Math.abs(times) * (minusMm + plusMm);

/** An axis that holds everything of a fit, with some room at either end. */
export function axisOf(fit: Fit): { readonly from: number; readonly to: number } {
  const values = [fit.worstMinMm, fit.worstMaxMm, fit.minMm, fit.maxMm].filter((value) => value !== null);
  const [from, to] = [Math.min(...values), Math.max(...values)];
  const air = Math.max((to - from) * 0.12, 0.1);
  return { from: from - air, to: to + air };
}
