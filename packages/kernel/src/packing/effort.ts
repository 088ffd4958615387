import type { PackingEffort } from "./packing.ts";
import type { SearchLimits } from "./search.ts";
import { hexagonal, rings, type Seed, scattered, sunflower } from "./seeds.ts";

/** Limits of a search and of making its result rigid. */
export interface PackingLimits extends SearchLimits {
  /** How many of the arrangements found are made rigid. */
  readonly finalists: number;
  /** Updates of the contact forces. */
  readonly rounds: number;
  /** Steps for each. */
  readonly iterations: number;
}

/** Starts for circles that are all of one size: lattice cuts about a site, an edge, a triangle, and rings. */
const ALIKE: readonly Seed[] = [
  hexagonal(0, 0),
  hexagonal(0.5, 0),
  hexagonal(1 / 3, 1 / 3),
  rings(1, true),
  rings(1.04, true),
];

/** Starts for circles of several sizes: lattice cuts and a sunflower with the large ones in the middle, rings of both kinds. */
const MIXED: readonly Seed[] = [
  hexagonal(0, 0),
  hexagonal(0.5, 0),
  hexagonal(1 / 3, 1 / 3),
  rings(1, false),
  rings(1.04, false),
  rings(1.04, true),
  sunflower(true),
];

/** Those of them that most often lead: enough for the few kinds of wire in a bundle. */
const MIXED_FEW: readonly Seed[] = [
  hexagonal(0, 0),
  hexagonal(1 / 3, 1 / 3),
  rings(1, false),
  rings(1.04, true),
];

/** Limits of the search for radii in decreasing order. */
export const limitsOf = (radii: Float64Array, effort: PackingEffort): PackingLimits => {
  const n = radii.length;
  let sizes = 1;
  for (let i = 1; i < n; i++) if ((radii[i - 1] ?? 0) > 1.0001 * (radii[i] ?? 0)) sizes++;
  if (effort === "quick") {
    // A bundle has a few kinds of wire; many sizes have far more arrangements, and are rare.
    const few =
      sizes > 1 && sizes <= 4
        ? { seeds: MIXED_FEW, survivors: 1, hops: 2 }
        : { seeds: sizes === 1 ? ALIKE : MIXED, survivors: 1, hops: 8 + 12 * Math.max(0, sizes - 4) };
    const rigid = n <= 20 ? { rounds: 8, iterations: 40 } : { rounds: 4, iterations: 40 };
    return { ...few, randomSeed: 1, finalists: 1, ...rigid };
  }
  const seeds = sizes === 1 ? ALIKE : MIXED;
  return {
    seeds: [...seeds, ...[1, 2, 3, 4].map(scattered)],
    survivors: 5,
    hops: 400 + 100 * Math.min(20, sizes),
    randomSeed: 1,
    finalists: 5,
    rounds: 30,
    iterations: 150,
  };
};
