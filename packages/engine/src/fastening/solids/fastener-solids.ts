import type { BookRow } from "@pinwright/book";
import type { RingMm } from "@pinwright/kernel";
import type { FastenerItem, Solid } from "../../model/index.ts";
import { type Prism, solidOf } from "./prism.ts";
import { discRing, hexagonRing, movedRing } from "./rings.ts";

type FastenerType = BookRow<"fastener_types">;

/** Width of a head, washer, nut or post; the thread's own where no wider one is given, mm. */
export const headWidthMm = (type: FastenerType): number => type.head_diameter_mm ?? type.diameter_mm;

/** Height of a nut or washer: of its head where that is given, else its whole length, mm. */
export const thicknessOf = (type: FastenerType): number => type.head_height_mm ?? type.length_mm;

/** Solid parts of a fastener: what stands off its side, what is in the panel, and what comes out on the far side. */
export function fastenerSolids(item: FastenerItem, thicknessMm: number): readonly Solid[] {
  const discs = new Map<number, RingMm>();
  const disc = (diameterMm: number): RingMm => {
    const ring = discs.get(diameterMm) ?? movedRing(discRing(diameterMm), item.place, 0);
    discs.set(diameterMm, ring);
    return ring;
  };
  const { type, washer, nut, flangeMm } = item;
  const tipMm = flangeMm - type.length_mm;
  const prisms: Prism[] = [...headPrisms(item, disc)];
  const add = (part: string, diameterMm: number, fromMm: number, toMm: number): void => {
    if (toMm - fromMm > 0) prisms.push({ part, ring: disc(diameterMm), fromMm, toMm });
  };
  if (washer !== null) add("washer", headWidthMm(washer), flangeMm, flangeMm + thicknessOf(washer));
  add("shank", type.diameter_mm, Math.max(tipMm, -thicknessMm), Math.min(0, flangeMm));
  add("point", type.diameter_mm, tipMm, -thicknessMm);
  if (nut !== null) add("nut", headWidthMm(nut), -thicknessMm - thicknessOf(nut), -thicknessMm);
  return prisms.flatMap((prism) => solidOf({ item, thicknessMm }, prism) ?? []);
}

/** A post's body stands between the panel and what it holds; a stand-off too; every other head lies on that. */
function headPrisms(item: FastenerItem, disc: (diameterMm: number) => RingMm): readonly Prism[] {
  const { type, washer, flangeMm } = item;
  const heightMm = type.head_height_mm ?? 0;
  if (type.kind === "standoff") {
    const ring = movedRing(hexagonRing(headWidthMm(type)), item.place, 0);
    return [{ part: "body", ring, fromMm: 0, toMm: heightMm }];
  }
  const ring = disc(headWidthMm(type));
  const seatMm = flangeMm + (washer === null ? 0 : thicknessOf(washer));
  const head = { part: "head", ring, fromMm: seatMm, toMm: seatMm + heightMm };
  return type.kind === "post" ? [{ part: "body", ring, fromMm: 0, toMm: flangeMm }, head] : [head];
}
