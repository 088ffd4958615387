import { Descent } from "./descent.ts";
import { limitsOf } from "./effort.ts";
import { enclosingLowerBoundMm } from "./lower-bound.ts";
import { searchArrangements } from "./search.ts";

/** How hard to search: `quick` in the line, `thorough` when a person waits for a proof or a record. */
export type PackingEffort = "quick" | "thorough";

/** Circles that do not overlap, and a circle about the origin that encloses them. */
export interface Packing {
  /** Diameter of the enclosing circle, centred on the origin. */
  readonly diameterMm: number;
  /** Centres in the order of the given diameters. */
  readonly centres: readonly { readonly xMm: number; readonly yMm: number }[];
  /** No packing of these circles has a smaller enclosing circle. */
  readonly lowerBoundMm: number;
}

/** Packings found so far, by multiset of diameters. Made by `createPackingMemory`, owned by the caller. */
export interface PackingMemory {
  readonly limit: number;
  readonly packings: Map<string, SortedPacking>;
}

/** A packing of circles in decreasing size. */
interface SortedPacking {
  readonly diameterMm: number;
  readonly centres: Packing["centres"];
  readonly lowerBoundMm: number;
}

/** A memory for at most `limit` different sets of circles; the oldest one is forgotten first. */
export const createPackingMemory = (limit = 20_000): PackingMemory => ({ limit, packings: new Map() });

/**
 * Packs circles of the given diameters (mm) into a small circle. The packing is valid: no two circles overlap and
 * none leaves the container by more than 1e-9 of its size; it is not proved to be the smallest. Deterministic; the
 * result depends on the multiset of diameters only, and the effort is counted in steps of the search.
 *
 * Arrangements from lattices, rings and spirals are settled as soft circles, improved by basin hopping (Wales and
 * Doye, J. Phys. Chem. A 101 (1997) 5111) and hardened by an augmented Lagrangian; see `Descent`.
 * @throws RangeError for a diameter that is not a positive finite number.
 */
export const packCircles = (
  diametersMm: readonly number[],
  effort: PackingEffort = "quick",
  memory?: PackingMemory,
): Packing => {
  for (const d of diametersMm) {
    if (!(d > 0 && Number.isFinite(d))) {
      throw new RangeError(`a circle's diameter is ${d} mm, expected a positive number`);
    }
  }
  const order = diametersMm.map((_, i) => i).sort((a, b) => (diametersMm[b] ?? 0) - (diametersMm[a] ?? 0));
  const sorted = order.map((i) => diametersMm[i] ?? 0);
  const key = `${effort} ${sorted.join(" ")}`;
  const known = memory?.packings.get(key);
  const packing = known ?? packSorted(sorted, effort);
  if (memory !== undefined && known === undefined) remember(memory, key, packing);
  const centres = diametersMm.map(() => ORIGIN);
  order.forEach((i, rank) => {
    centres[i] = packing.centres[rank] ?? ORIGIN;
  });
  return { diameterMm: packing.diameterMm, centres, lowerBoundMm: packing.lowerBoundMm };
};

const ORIGIN: Packing["centres"][number] = { xMm: 0, yMm: 0 };

const remember = (memory: PackingMemory, key: string, packing: SortedPacking): void => {
  const oldest = memory.packings.keys().next();
  if (memory.packings.size >= memory.limit && oldest.done !== true) memory.packings.delete(oldest.value);
  memory.packings.set(key, packing);
};

const packSorted = (sorted: readonly number[], effort: PackingEffort): SortedPacking => {
  const lowerBoundMm = enclosingLowerBoundMm(sorted);
  const [first = 0, second = 0] = sorted;
  if (sorted.length < 3) {
    const centres = [
      { xMm: (0 - second) / 2, yMm: 0 },
      { xMm: first / 2, yMm: 0 },
    ].slice(0, sorted.length);
    return { diameterMm: first + second, centres, lowerBoundMm };
  }
  const unit = Math.sqrt(sorted.reduce((sum, d) => sum + (d * d) / 4, 0));
  const radii = Float64Array.from(sorted, (d) => d / 2 / unit);
  const descent = new Descent(radii);
  const limits = limitsOf(radii, effort);
  let best = Number.POSITIVE_INFINITY;
  let centres = new Float64Array(0);
  for (const state of searchArrangements(descent, radii, limits).slice(0, limits.finalists)) {
    descent.state.set(state);
    descent.harden(limits.rounds, limits.iterations);
    const radius = repair(radii, descent.state);
    if (radius >= best) continue;
    best = radius;
    centres = descent.state.slice();
  }
  return {
    diameterMm: 2 * best * unit,
    centres: sorted.map((_, i) => ({
      xMm: (centres[2 * i] ?? 0) * unit,
      yMm: (centres[2 * i + 1] ?? 0) * unit,
    })),
    lowerBoundMm,
  };
};

/** Rounding in the last digits must never show as an overlap. */
const GUARD = 1 + 1e-13;

/** Spreads the centres until nothing overlaps; returns the radius that then encloses all, about the origin. */
const repair = (radii: Float64Array, state: Float64Array): number => {
  const n = radii.length;
  let spread = 1;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const dx = (state[2 * i] ?? 0) - (state[2 * j] ?? 0);
      const dy = (state[2 * i + 1] ?? 0) - (state[2 * j + 1] ?? 0);
      const ratio = ((radii[i] ?? 0) + (radii[j] ?? 0)) / Math.sqrt(dx * dx + dy * dy);
      if (ratio > spread) spread = ratio;
    }
  }
  spread *= GUARD;
  let radius = 0;
  for (let i = 0; i < n; i++) {
    const x = (state[2 * i] ?? 0) * spread;
    const y = (state[2 * i + 1] ?? 0) * spread;
    state[2 * i] = x;
    state[2 * i + 1] = y;
    radius = Math.max(radius, Math.sqrt(x * x + y * y) + (radii[i] ?? 0));
  }
  return radius * GUARD;
};
