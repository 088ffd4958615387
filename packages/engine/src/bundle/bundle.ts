import type { Shop, ShopRow } from "@pinwright/book";
import { compareText, type PackingMemory, packCircles, roundTo } from "@pinwright/kernel";
import type { Bundle } from "../model/index.ts";

/**
 * The bundle of round wires and cables of the given diameters (mm): packed, with what no packing can beat and the
 * rule of thumb beside it, and the tie and sleeve that the shop has for it.
 *
 * `wires` counts circles. `packedMm` is rounded up and `lowerBoundMm` down to a micrometre. `laidMm` is packed times
 * the shop's laid factor; a single wire has its own diameter, however it is laid. `ruleMm` = 1.2 √Σd² is a trade
 * rule for mixed wires; it is too small for 2 to 6, 9 and 10 equal wires (by 15 % for 2).
 * @throws RangeError for a diameter that is not a positive finite number.
 */
export const bundleOf = (
  diametersMm: readonly number[],
  shop: Pick<Shop, "numbers" | "tables">,
  memory?: PackingMemory,
): Bundle => {
  const packing = packCircles(diametersMm, "quick", memory);
  const packedMm = (Math.ceil(packing.diameterMm * 1000 - MICROMETRE_NOISE) + 0) / 1000;
  const squares = diametersMm.reduce((sum, d) => sum + d * d, 0);
  const laidMm = diametersMm.length < 2 ? packedMm : roundTo(packedMm * shop.numbers.laid_factor, 0.001);
  return {
    wires: diametersMm.length,
    packedMm,
    lowerBoundMm: Math.floor(packing.lowerBoundMm * 1000 + MICROMETRE_NOISE) / 1000,
    ruleMm: roundTo(1.2 * Math.sqrt(squares), 0.001),
    laidMm,
    tieId: leastHolder(shop, "tie", laidMm)?.id ?? null,
    sleeveId: leastHolder(shop, "sleeve", laidMm)?.id ?? null,
  };
};

/** A nanometre, in micrometres: more than the search leaves on top of a diameter that has a closed form. */
const MICROMETRE_NOISE = 1e-3;

/** The least holder of a kind that takes a bundle of this diameter (mm), or null. */
export const leastHolder = (
  shop: Pick<Shop, "tables">,
  kind: ShopRow<"holders">["kind"],
  diameterMm: number,
): ShopRow<"holders"> | null => {
  let best: ShopRow<"holders"> | null = null;
  for (const holder of shop.tables.holders) {
    if (holder.kind !== kind || diameterMm < holder.min_diameter_mm || diameterMm > holder.max_diameter_mm) {
      continue;
    }
    if (
      best === null ||
      holder.max_diameter_mm < best.max_diameter_mm ||
      (holder.max_diameter_mm === best.max_diameter_mm && compareText(holder.id, best.id) < 0)
    ) {
      best = holder;
    }
  }
  return best;
};
