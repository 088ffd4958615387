import type { BookRow } from "@pinwright/book";
import { GREEN_AND_YELLOW, splitColours } from "@pinwright/kernel";
import type { Machine, NetClass } from "../model/index.ts";

/** Whether a colour is green with yellow, in either order: kept for the protective conductor (IEC 60445, IEC 60757). */
export function isGreenAndYellow(colour: string): boolean {
  const codes = (splitColours(colour) ?? []).map((c) => c.code);
  return codes[0] === GREEN_AND_YELLOW || (codes.includes("GN") && codes.includes("YE"));
}

/** Whether a wire of a net of this class may wear a colour, when its type is to be had in `stocked`. */
export function mayWear(netClass: NetClass, colour: string, stocked: readonly string[]): boolean {
  if (netClass !== "earth") return !isGreenAndYellow(colour);
  return stocked.includes(GREEN_AND_YELLOW) ? colour === GREEN_AND_YELLOW : !isGreenAndYellow(colour);
}

/**
 * Colours in which a wire type is to be had: those of its reels that the type allows, or all that the type allows
 * when no reel of it is listed. In the order of the type's own list.
 */
export function stockedColours(machine: Machine): (type: BookRow<"wire_types">) => readonly string[] {
  const onReels = new Map<string, Set<string>>();
  for (const reel of machine.shop.tables.reels) {
    const set = onReels.get(reel.wire_type) ?? new Set<string>();
    for (const colour of reel.colours) set.add(colour);
    onReels.set(reel.wire_type, set);
  }
  return (type) => {
    const reels = onReels.get(type.id);
    return reels === undefined ? type.colours : type.colours.filter((colour) => reels.has(colour));
  };
}
