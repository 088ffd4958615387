import { type BoxMm, growBox } from "@pinwright/kernel";
import type { FastenerItem, Machine } from "../../model/index.ts";
import type { SolidIndex } from "../solids/solid-index.ts";
import { type Head, headOf, nutOf } from "./heads.ts";
import { type Around, bestTool, farthestMm, type Meeting, type Obstacle } from "./probe.ts";
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
  /** How far from it anything has a say in how it is reached, mm. */
  readonly farthestMm: number;
  readonly reach: Reach;
}

/** Kinds that nothing is turned for unless they say what fits them. */
const UNDRIVEN: ReadonlySet<string> = new Set(["nail", "saddle", "washer", "other"]);

/** Tools for a fastener and its nut; null: nothing is turned there. */
export function toolsFor(
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

/** How far from a fastener anything has a say in how it is reached, mm. */
export function reachMm(fastener: FastenerItem, box: ToolBox): number {
  const { drive, nut } = toolsFor(fastener, box);
  return Math.max(farthestMm(drive ?? []), farthestMm(nut ?? []));
}

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
export function reachOf(machine: Machine, fastener: FastenerItem, box: ToolBox, index: SolidIndex): Reach {
  const tools = toolsFor(fastener, box);
  const { unitId, carriedId } = belongingOf(machine, fastener);
  const nutHead = nutOf(machine, fastener);
  const on = (head: Head | null, list: readonly Tool[] | null): Meeting | null => {
    if (head === null || list === null) return null;
    const area = growBox(axisBox(fastener), farthestMm(list));
    const obstacles: Obstacle[] = [];
    for (const solid of index.near(head.panelId, area)) {
      // An in-line connector hangs on its wires and is put aside.
      if (solid.kind === "inline") continue;
      const other = unitOf(machine, solid.itemId);
      if (other === carriedId || (other === unitId && solid.kind === "fastener")) continue;
      obstacles.push({ unitId: other, solid });
    }
    const around: Around = { obstacles, unitId };
    return bestTool(head, list, around);
  };
  return {
    unitId,
    carriedId,
    drive: on(headOf(machine, fastener), tools.drive),
    missing: tools.drive?.length === 0,
    nut: on(nutHead, tools.nut),
    nutMissing: tools.nut?.length === 0,
  };
}
