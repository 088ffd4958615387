import type { Shop } from "@pinwright/book";
import type { PackingMemory } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../model/index.ts";
import { bundleOf } from "./bundle.ts";

/** A place that everything together has to go through. */
export interface Passage {
  readonly id: string;
  readonly kind: "lane" | "crossing" | "hole" | "clip";
  /** Thinnest bundle that it still holds; only a clip has one. */
  readonly minDiameterMm: number;
  readonly maxDiameterMm: number;
  /** Ids of the harnesses that go through it. */
  readonly harnessIds: readonly string[];
  /** Diameters (mm) of all wires and cables of all harnesses in it. */
  readonly diametersMm: readonly number[];
}

/**
 * Whether all harnesses together, laid as one bundle, go through a place: `lane-overfull`, `crossing-overfull`,
 * `hole-overfull`, `clip-overfull`, or `clip-loose` when a clip does not hold so thin a bundle.
 * `lower_bound_mm` above `max_mm` says that no skill will make it fit.
 */
export const checkPassage = (
  passage: Passage,
  shop: Pick<Shop, "numbers" | "tables">,
  memory?: PackingMemory,
): Finding | null => {
  if (passage.diametersMm.length === 0 || fitsForSure(passage, shop.numbers.laid_factor)) return null;
  const bundle = bundleOf(passage.diametersMm, shop, memory);
  const subjects = [passage.id, ...passage.harnessIds];
  const numbers = {
    laid_mm: bundle.laidMm,
    packed_mm: bundle.packedMm,
    lower_bound_mm: bundle.lowerBoundMm,
    min_mm: passage.minDiameterMm,
    max_mm: passage.maxDiameterMm,
    circles: bundle.wires,
  };
  if (bundle.laidMm > passage.maxDiameterMm) {
    return makeFinding(`${passage.kind}-overfull`, "error", subjects, numbers);
  }
  if (bundle.laidMm < passage.minDiameterMm) {
    return makeFinding(`${passage.kind}-loose`, "warning", subjects, numbers);
  }
  return null;
};

/**
 * Whether a passage needs no packing to be seen to fit: circles go into any circle of at least twice their area
 * (Fekete, Keldenich and Scheffer, Packing disks into disks with optimal worst-case density, 2019; from memory),
 * and no packing is thinner than √Σd².
 */
function fitsForSure({ diametersMm, minDiameterMm, maxDiameterMm }: Passage, laidFactor: number): boolean {
  const leastMm = Math.sqrt(diametersMm.reduce((sum, d) => sum + d * d, 0)) * laidFactor;
  return leastMm >= minDiameterMm && Math.SQRT2 * leastMm <= maxDiameterMm;
}
