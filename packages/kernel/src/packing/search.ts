import { seededRandom } from "../random.ts";
import type { Descent } from "./descent.ts";
import type { Seed } from "./seeds.ts";

/** Counted limits of a search: nothing in it depends on time. */
export interface SearchLimits {
  /** Arrangements to start from. */
  readonly seeds: readonly Seed[];
  /** How many of the best starts are improved by hops. */
  readonly survivors: number;
  /** Hops of each: one circle goes to a gap, or two of unlike size change places. */
  readonly hops: number;
  readonly randomSeed: number;
}

interface Found {
  readonly energy: number;
  readonly state: Float64Array;
}

/** Stiffness of the soft circles, for a packing whose radii squared sum to 1. */
const SOFT = 10;

/**
 * Best arrangements found for radii (largest first, Σr² = 1): monotonic basin hopping over soft circles, in which a
 * step costs some forty evaluations. The result is ordered best first and still has small overlaps.
 */
export const searchArrangements = (
  descent: Descent,
  radii: Float64Array,
  limits: SearchLimits,
): Float64Array[] => {
  const found: Found[] = [];
  for (const seed of limits.seeds) {
    seed(radii, descent.state);
    const energy = descent.soften(SOFT, 40, 1e-5);
    found.push({ energy, state: descent.state.slice() });
  }
  found.sort((a, b) => a.energy - b.energy);
  const random = seededRandom(limits.randomSeed);
  const improved = found.slice(0, limits.survivors).map((start) => {
    let best = start;
    for (let hop = 0; hop < limits.hops; hop++) {
      descent.state.set(best.state);
      disturb(radii, descent.state, random);
      const energy = descent.soften(SOFT, 40, 1e-5);
      if (energy < best.energy - 1e-7) best = { energy, state: descent.state.slice() };
    }
    return best;
  });
  return improved.sort((a, b) => a.energy - b.energy).map((f) => f.state);
};

/** How often a hop exchanges two circles, when they are not all of one size. */
const EXCHANGES = 0.75;

/** Moves one circle into the widest of some random gaps, or exchanges two circles of unlike size. */
const disturb = (radii: Float64Array, state: Float64Array, random: () => number): void => {
  const n = radii.length;
  const pick = (): number => Math.min(n - 1, Math.floor(random() * n));
  const i = pick();
  if ((radii[0] ?? 0) > 1.0001 * (radii[n - 1] ?? 0) && random() < EXCHANGES) {
    for (let tries = 0; tries < 20; tries++) {
      const j = pick();
      const ratio = (radii[Math.min(i, j)] ?? 0) / (radii[Math.max(i, j)] ?? 1);
      // Like sizes exchange with most success; any pair will do when none is found.
      if (ratio < 1.0001 || (ratio > 1.3 && tries < 15)) continue;
      swap(state, 2 * i, 2 * j);
      swap(state, 2 * i + 1, 2 * j + 1);
      return;
    }
  }
  const container = state[2 * n] ?? 0;
  let widest = Number.NEGATIVE_INFINITY;
  let bestX = 0;
  let bestY = 0;
  for (let k = 0; k < 2 * n; k++) {
    const angle = 2 * Math.PI * random();
    const q = Math.sqrt(random()) * container;
    const x = q * Math.cos(angle);
    const y = q * Math.sin(angle);
    let clearance = container - q;
    for (let j = 0; j < n && clearance > widest; j++) {
      if (j === i) continue;
      const dx = (state[2 * j] ?? 0) - x;
      const dy = (state[2 * j + 1] ?? 0) - y;
      clearance = Math.min(clearance, Math.sqrt(dx * dx + dy * dy) - (radii[j] ?? 0));
    }
    if (clearance > widest) {
      widest = clearance;
      bestX = x;
      bestY = y;
    }
  }
  state[2 * i] = bestX;
  state[2 * i + 1] = bestY;
};

const swap = (a: Float64Array, i: number, j: number): void => {
  const keep = a[i] ?? 0;
  a[i] = a[j] ?? 0;
  a[j] = keep;
};
