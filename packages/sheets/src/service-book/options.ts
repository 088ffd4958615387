import type { Language } from "@pinwright/words";
import type { SheetOptions } from "../options.ts";

/** Something that one machine has instead of what the drawings say. */
export interface UnitAlternate {
  /**
   * A part of the book; a wire by its number, `7-12`; or all wires of a kind and colour, `wire.hu-22 WHRD`.
   */
  readonly part: string;
  /** The part that is there, or the colour of IEC 60757 that the wire has: `GYBK`, `wire.hu-22 GYBK`. */
  readonly instead: string;
  readonly allowed: "book" | "concession";
  readonly why: string;
}

/** One machine that was built. */
export interface ServiceUnit {
  readonly serial: string;
  /** Address of its page in the shop; blank or absent: it has none on the network. */
  readonly address?: string;
  readonly alternates: readonly UnitAlternate[];
}

/** What a service book is made for. */
export interface ServiceBookOptions extends SheetOptions {
  readonly language: Language;
  /** The machine that it goes with; null: any of its revision. */
  readonly unit: ServiceUnit | null;
}
