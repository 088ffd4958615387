import { type BoxMm, growBox } from "@pinwright/kernel";
import type { FastenerItem, Machine } from "../../model/index.ts";
import type { SolidIndex } from "../solids/solid-index.ts";
import { type Head, headOf, nutOf } from "./heads.ts";
import { type Around, type Best, bestTool, type Meeting, type Obstacle } from "./probe.ts";
import type { Tool, ToolBox } from "./tools.ts";
import { carries, heldBy, unitOf } from "./units.ts";

/** How a fastener is driven when everything else is in its place. */
export interface Reach extends Belonging {
  /** Null: the shop has no tool that fits, or there is nothing to be driven. */
  readonly drive: Meeting | null;
  readonly missing: boolean;
  /** The same of its nut; null also when it has none. */
  readonly nut: Meeting | null;
  readonly nutMissing: boolean;
}

/** A fastener with what is known of it. */
export interface Reached {
  readonly fastener: FastenerItem;
  /** How far from its axis anything had a say in how it is reached, mm. */
  readonly farthestMm: number;
  readonly reach: Reach;
}

/** Kinds that nothing is turned for unless they say what fits them. */
const UNDRIVEN: ReadonlySet<string> = new Set(["nail", "saddle", "washer", "other"]);

/** Tools for a fastener and its nut; null: nothing is turned there. */
function toolsFor(
  { type, nut }: FastenerItem,
  box: ToolBox,
): { readonly drive: readonly Tool[] | null; readonly nut: readonly Tool[] | null } {
  return {
    drive: type.drive === "" && UNDRIVEN.has(type.kind) ? null : box.driving(type),
    nut: nut === null || nut.kind === "t-nut" ? null : box.holding(nut),
  };
}

/** The least box round a fastener's axis. */
export const axisBox = ({ place }: FastenerItem): BoxMm => ({
  minXMm: place.xMm,
  minYMm: place.yMm,
  maxXMm: place.xMm,
  maxYMm: place.yMm,
});

/** What a fastener goes with. */
export interface Belonging {
  readonly unitId: string;
  /** What the fastener carries; it is put on afterwards, and comes off before. */
  readonly carriedId: string | null;
}

export const belongingOf = (machine: Machine, fastener: FastenerItem): Belonging => ({
  unitId: unitOf(machine, fastener.id),
  carriedId: carries(fastener) ? heldBy(machine, fastener) : null,
});

/** How a fastener is reached among the solids of a machine. */
export function reachOf(
  machine: Machine,
  fastener: FastenerItem,
  box: ToolBox,
  index: SolidIndex,
): Omit<Reached, "fastener"> {
  const tools = toolsFor(fastener, box);
  const { unitId, carriedId } = belongingOf(machine, fastener);
  const on = (head: Head | null, list: readonly Tool[] | null): Best => {
    if (head === null || list === null) return { met: null, withinMm: 0 };
    return bestTool(head, list, { unitId, near: nearHead(machine, head, index, { unitId, carriedId }) });
  };
  const drive = on(headOf(machine, fastener), tools.drive);
  const nut = on(nutOf(machine, fastener), tools.nut);
  return {
    farthestMm: Math.max(drive.withinMm, nut.withinMm),
    reach: {
      unitId,
      carriedId,
      drive: drive.met,
      missing: tools.drive?.length === 0,
      nut: nut.met,
      nutMissing: tools.nut?.length === 0,
    },
  };
}

/** What stands about a head when its fastener is driven; an in-line connector hangs on its wires and is put aside. */
function nearHead(
  machine: Machine,
  head: Head,
  index: SolidIndex,
  { unitId, carriedId }: Belonging,
): Around["near"] {
  const { panelId, side, thicknessMm, xMm, yMm } = head;
  return (withinMm, { lowMm, highMm }) => {
    const area = growBox({ minXMm: xMm, minYMm: yMm, maxXMm: xMm, maxYMm: yMm }, withinMm);
    const [low, high] = side === "top" ? [lowMm, highMm] : [-thicknessMm - highMm, -thicknessMm - lowMm];
    return index.near(panelId, area, low, high).flatMap((solid): Obstacle[] => {
      if (solid.kind === "inline") return [];
      const other = unitOf(machine, solid.itemId);
      if (other === carriedId || (other === unitId && solid.kind === "fastener")) return [];
      return [{ unitId: other, solid }];
    });
  };
}
