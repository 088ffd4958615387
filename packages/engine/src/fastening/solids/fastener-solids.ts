import type { BookRow } from "@pinwright/book";
import type { RingMm } from "@pinwright/kernel";
import type { FastenerItem, Solid } from "../../model/index.ts";
import { type Prism, type SolidOwner, solidOf } from "./prism.ts";
import { discRing, hexagonRing, movedRing } from "./rings.ts";

type FastenerType = BookRow<"fastener_types">;

/** Width of a head, washer, nut or post; the thread's own where no wider one is given, mm. */
const headWidthMm = (type: FastenerType): number => type.head_diameter_mm ?? type.diameter_mm;

/** Height of a nut or washer: of its head where that is given, else its whole length, mm. */
const thicknessOf = (type: FastenerType): number => type.head_height_mm ?? type.length_mm;

/** Solid parts of a fastener: what stands off its side, what is in the panel, and what comes out on the far side. */
export function fastenerSolids(item: FastenerItem, thicknessMm: number): readonly Solid[] {
  const { type, washer, nut, flangeMm } = item;
  const parts = new FastenerParts(item, thicknessMm);
  const headHeightMm = type.head_height_mm ?? 0;
  const seatMm = flangeMm + (washer === null ? 0 : thicknessOf(washer));
  const tipMm = flangeMm - type.length_mm;
  if (type.kind === "standoff") parts.hexagon("body", headWidthMm(type), 0, headHeightMm);
  else {
    // A post's body stands between the panel and what it holds; every other head lies on what it holds.
    if (type.kind === "post") parts.disc("body", headWidthMm(type), 0, flangeMm);
    parts.disc("head", headWidthMm(type), seatMm, seatMm + headHeightMm);
  }
  if (washer !== null) parts.disc("washer", headWidthMm(washer), flangeMm, seatMm);
  parts.disc("shank", type.diameter_mm, Math.max(tipMm, -thicknessMm), Math.min(0, flangeMm));
  parts.disc("point", type.diameter_mm, tipMm, -thicknessMm);
  if (nut !== null) parts.disc("nut", headWidthMm(nut), -thicknessMm - thicknessOf(nut), -thicknessMm);
  return parts.solids;
}

/** Gathers the parts of one fastener; parts of one width share their ring. */
class FastenerParts {
  readonly solids: Solid[] = [];
  readonly #owner: SolidOwner;
  readonly #discs = new Map<number, RingMm>();

  constructor(item: FastenerItem, thicknessMm: number) {
    this.#owner = { item, thicknessMm };
  }

  disc(part: string, diameterMm: number, fromMm: number, toMm: number): void {
    if (toMm <= fromMm) return;
    const known = this.#discs.get(diameterMm);
    const ring = known ?? movedRing(discRing(diameterMm), this.#owner.item.place, 0);
    if (known === undefined) this.#discs.set(diameterMm, ring);
    this.#add({ part, ring, fromMm, toMm });
  }

  hexagon(part: string, diameterMm: number, fromMm: number, toMm: number): void {
    if (toMm > fromMm)
      this.#add({ part, ring: movedRing(hexagonRing(diameterMm), this.#owner.item.place, 0), fromMm, toMm });
  }

  #add(prism: Prism): void {
    const solid = solidOf(this.#owner, prism);
    if (solid !== null) this.solids.push(solid);
  }
}
