import type { Languages, ScrewSymbol } from "../../model/index.ts";

/** How many of a fastener type, and as what they are used. */
export interface FastenerCount {
  readonly typeId: string;
  readonly labels: Languages;
  readonly partId: string | null;
  /** Its sign on map, card and box; null where it has none: washers and nuts that are never driven by themselves. */
  readonly symbol: ScrewSymbol | null;
  /** Driven as a fastener, put under a head, held on the far side. */
  readonly driven: number;
  readonly washers: number;
  readonly nuts: number;
  /** All three together: what the box must hold. */
  readonly count: number;
}

/** What is laid out at a place beside its fasteners. Halves of in-line connectors come with their harnesses. */
export interface KitPart {
  readonly kind: "mechanism" | "board" | "device" | "harness";
  /** Type; of a harness the harness itself. */
  readonly typeId: string;
  readonly labels: Languages;
  readonly partId: string | null;
  readonly count: number;
  /** Steps at this place that use it, in their order. */
  readonly stepIds: readonly string[];
}

/** Everything that one place needs for one machine; each entry of `fasteners` is a box with its label. */
export interface StationKit {
  readonly placeId: string;
  readonly stationId: string | null;
  readonly labels: Languages;
  readonly stepIds: readonly string[];
  readonly parts: readonly KitPart[];
  /** By letter of the symbol, those without one after them by type. */
  readonly fasteners: readonly FastenerCount[];
}
