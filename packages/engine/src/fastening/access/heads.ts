import type { BookRow } from "@pinwright/book";
import type { FastenerItem, Machine, Side, Solid } from "../../model/index.ts";

/** Where a tool is set on, on one side of a panel. Heights are counted from that side's face, away from it. */
export interface Head {
  readonly panelId: string;
  readonly side: Side;
  readonly thicknessMm: number;
  readonly xMm: number;
  readonly yMm: number;
  /** Height of what it presses on. */
  readonly seatMm: number;
  readonly topMm: number;
}

/** Height of a washer or nut: a row that gives no height of a head gives it as its length. */
const heightOf = (type: BookRow<"fastener_types">): number => type.head_height_mm ?? type.length_mm;

/** The head of a fastener; the body of a post counts as what it passes through, so its head is on top of that. */
export function headOf(machine: Machine, fastener: FastenerItem): Head {
  const { place, type, washer } = fastener;
  const seatMm = place.zMm + fastener.flangeMm + (washer === null ? 0 : heightOf(washer));
  return {
    ...baseOf(machine, fastener),
    side: place.side,
    seatMm,
    topMm: seatMm + (type.head_height_mm ?? 0),
  };
}

/** The nut of a fastener, on the far face; null when it has none, or one that holds itself. */
export function nutOf(machine: Machine, fastener: FastenerItem): Head | null {
  const { nut, place } = fastener;
  if (nut === null || nut.kind === "t-nut") return null;
  const side = place.side === "top" ? "under" : "top";
  return { ...baseOf(machine, fastener), side, seatMm: 0, topMm: heightOf(nut) };
}

function baseOf(machine: Machine, { place }: FastenerItem): Omit<Head, "side" | "seatMm" | "topMm"> {
  const thicknessMm = machine.panels.get(place.panelId)?.thickness_mm ?? 0;
  return { panelId: place.panelId, thicknessMm, xMm: place.xMm, yMm: place.yMm };
}

/** Lower and upper end of a solid over one side's face, mm. */
export function heightsOver(
  solid: Solid,
  side: Side,
  thicknessMm: number,
): readonly [lowMm: number, highMm: number] {
  if (side === "top") return [solid.lowMm, solid.highMm];
  return [-thicknessMm - solid.highMm, -thicknessMm - solid.lowMm];
}
