import { lnGamma, normalBelow } from "./special.ts";

/** Constants of control charts for samples of one size, as ISO 7870-2 and ASTM E2587 tabulate them. */
export interface ControlConstants {
  /** Mean of the range of a sample, in standard deviations. */
  readonly d2: number;
  /** Standard deviation of that range, in the same. */
  readonly d3: number;
  /** Mean of the sample standard deviation, in standard deviations. */
  readonly c4: number;
  /** Limits of means about the grand mean, in mean ranges and in mean deviations. */
  readonly A2: number;
  readonly A3: number;
  /** Limits of ranges, in mean ranges. */
  readonly D3: number;
  readonly D4: number;
  /** Limits of deviations, in mean deviations. */
  readonly B3: number;
  readonly B4: number;
}

const STEPS = 800;
const REACH = 8.5;

/** Mean and mean square of the range of n normal readings: L. H. C. Tippett, Biometrika 17, 1925. */
function rangeMoments(n: number): { readonly mean: number; readonly square: number } {
  const h = (2 * REACH) / STEPS;
  const at = Array.from({ length: STEPS + 1 }, (_, i) => -REACH + i * h);
  const below = at.map(normalBelow);
  const weight = (i: number): number => (i === 0 || i === STEPS ? 0.5 : 1);
  let mean = 0;
  for (let i = 0; i <= STEPS; i++) {
    const p = below[i] ?? 0;
    mean += weight(i) * (1 - p ** n - (1 - p) ** n) * h;
  }
  // E[R²] = 2 ∫∫ over x < y of (1 − F(y)ⁿ − (1 − F(x))ⁿ + (F(y) − F(x))ⁿ).
  let square = 0;
  for (let i = 0; i <= STEPS; i++) {
    const px = below[i] ?? 0;
    for (let j = i; j <= STEPS; j++) {
      const py = below[j] ?? 0;
      const part = 1 - py ** n - (1 - px) ** n + (py - px) ** n;
      square += 2 * part * h * h * (i === j ? 0.5 : 1);
    }
  }
  return { mean, square };
}

const known = new Map<number, ControlConstants>();

/**
 * Constants for samples of n readings, computed from the normal distribution instead of copied from a rounded table.
 * @throws RangeError unless n is a whole number from 2 to 100
 */
export function controlConstants(n: number): ControlConstants {
  if (!Number.isInteger(n) || n < 2 || n > 100)
    throw new RangeError(`samples of ${n} readings, expected a whole number from 2 to 100`);
  const before = known.get(n);
  if (before !== undefined) return before;
  const { mean: d2, square } = rangeMoments(n);
  const d3 = Math.sqrt(Math.max(0, square - d2 * d2));
  const c4 = Math.sqrt(2 / (n - 1)) * Math.exp(lnGamma(n / 2) - lnGamma((n - 1) / 2));
  const spread = (3 * Math.sqrt(1 - c4 * c4)) / c4;
  const constants: ControlConstants = {
    d2,
    d3,
    c4,
    A2: 3 / (d2 * Math.sqrt(n)),
    A3: 3 / (c4 * Math.sqrt(n)),
    D3: Math.max(0, 1 - (3 * d3) / d2),
    D4: 1 + (3 * d3) / d2,
    B3: Math.max(0, 1 - spread),
    B4: 1 + spread,
  };
  known.set(n, constants);
  return constants;
}
