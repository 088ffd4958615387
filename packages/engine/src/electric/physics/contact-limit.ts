import type { BookRow } from "@pinwright/book";
import { type CurvePoint, linear } from "./interpolate.ts";

/** A fifth less for each doubling. Source: a connector maker's rule of thumb: 3 A alone, 7.68 A over four pairs. */
const PER_DOUBLING = 0.8;

/** Share of a single contact's limit by the share of contacts that are loaded. Source: one maker's published set. */
const STEEP: readonly CurvePoint[] = [
  [0, 1],
  [0.26, 0.618],
  [0.5, 0.428],
  [0.76, 0.344],
  [1, 0.297],
];

/**
 * Share of its limit that each loaded contact of a housing keeps.
 * @param shared what the family loses: `none`; `mild`: a fifth for each doubling of loaded contacts; `steep`: by the
 * share of the housing that is loaded, as one maker publishes it. Whichever the family's maker gives is right.
 */
export function contactShare(
  shared: BookRow<"connector_families">["shared"],
  loaded: number,
  ways: number,
): number {
  if (shared === "none" || loaded <= 1) return 1;
  return shared === "mild"
    ? PER_DOUBLING ** Math.log2(loaded)
    : linear(STEEP, loaded / Math.max(loaded, ways));
}

/**
 * Contacts that would warm a housing as much as its own do, if each carried the largest current: Σ I² ÷ I²max, at
 * least 1. A neighbour with half the current warms a quarter as much. Common practice, no source.
 */
export function loadedContacts(amps: readonly number[]): number {
  const most = Math.max(0, ...amps);
  return most === 0 ? 1 : amps.reduce((sum, a) => sum + (a / most) ** 2, 0);
}
