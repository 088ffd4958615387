import { anticlockwise, boxOf, type RingMm } from "@pinwright/kernel";
import type { Item, Place, Side, Solid } from "../../model/index.ts";

/** What every solid of one item has in common. */
export interface SolidOwner {
  readonly item: Item;
  readonly thicknessMm: number;
}

/** Something between two heights off the side that its item is fixed to; below zero: in the panel and through it. */
export interface Prism {
  /** Name within the item; null: the item is nothing else. */
  readonly part: string | null;
  readonly ring: RingMm;
  readonly fromMm: number;
  readonly toMm: number;
  readonly moves?: boolean;
}

/** A height off a side of a panel as a height over its top face, mm. */
const overTop = (side: Side, thicknessMm: number, offMm: number): number =>
  side === "top" ? offMm : -thicknessMm - offMm;

/**
 * Which way heights of a type count at its place: away from the side that it is fixed to, or, where its origin lies
 * beyond the other face, away from that one.
 */
export const directionAt = (place: Place, thicknessMm: number): 1 | -1 =>
  place.zMm < 0 && place.zMm <= -thicknessMm ? -1 : 1;

/** The solid of a prism; null when it has no room in it. */
export function solidOf({ item, thicknessMm }: SolidOwner, prism: Prism): Solid | null {
  const box = boxOf(prism.ring);
  if (box === null || prism.ring.length < 3 || prism.fromMm === prism.toMm) return null;
  const { side, panelId } = item.place;
  const a = overTop(side, thicknessMm, prism.fromMm);
  const b = overTop(side, thicknessMm, prism.toMm);
  return {
    id: prism.part === null ? item.id : `${item.id}#${prism.part}`,
    itemId: item.kind === "fastener" ? item.id : (item.parentId ?? item.id),
    kind: item.kind,
    panelId,
    side,
    ring: anticlockwise(prism.ring),
    box,
    lowMm: Math.min(a, b),
    highMm: Math.max(a, b),
    moves: prism.moves ?? false,
  };
}

/** A prism of each ring; the first keeps the name, further ones are numbered from 2. */
export const prismsOf = (rings: readonly RingMm[], prism: Omit<Prism, "ring">): readonly Prism[] =>
  rings.map((ring, i) => ({
    ...prism,
    ring,
    part: i === 0 ? prism.part : `${prism.part ?? "part"}.${i + 1}`,
  }));
