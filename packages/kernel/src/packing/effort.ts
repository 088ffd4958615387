import type { PackingEffort } from "./packing.ts";
import type { SearchLimits } from "./search.ts";
import { hexagonal, rings, type Seed, scattered, sunflower } from "./seeds.ts";

/** Starts for circles that are all of one size: lattice cuts about a site, an edge, a triangle, and rings. */
const ALIKE: readonly Seed[] = [
  hexagonal(0, 0),
  hexagonal(0.5, 0),
  hexagonal(1 / 3, 1 / 3),
  rings(1, true),
  rings(1.04, true),
];

/** Starts for circles of several sizes: large ones in the middle and at the wall. */
const MIXED: readonly Seed[] = [
  rings(1, true),
  rings(1, false),
  rings(1.04, true),
  rings(1.04, false),
  sunflower(true),
  sunflower(false),
  hexagonal(0, 0),
  hexagonal(1 / 3, 1 / 3),
];

/** Limits of the search for radii in decreasing order. */
export const limitsOf = (
  radii: Float64Array,
  effort: PackingEffort,
): SearchLimits & { finalists: number } => {
  const alike = (radii[0] ?? 0) < 1.0001 * (radii[radii.length - 1] ?? 0);
  const seeds = alike ? ALIKE : MIXED;
  if (effort === "quick") return { seeds, survivors: 1, hops: 10, finalists: 1, randomSeed: 1 };
  return {
    seeds: [...seeds, ...[1, 2, 3, 4].map(scattered)],
    survivors: 4,
    hops: 400,
    finalists: 4,
    randomSeed: 1,
  };
};
