import { compareText, type PointMm } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import { discMeetsRing, discNearBox, TOUCH_MM } from "./geometry.ts";
import { type Head, heightsOver } from "./heads.ts";
import { type Cylinder, type Layer, spannerLayer, toolRoom, widestMm } from "./rooms.ts";
import { type Bearing, blockedBearings, freestSector } from "./swing.ts";
import type { Tool } from "./tools.ts";

/** A solid with what it is put in with. */
export interface Obstacle {
  readonly unitId: string;
  readonly solid: Solid;
}

/** What a tool meets when it is set on a head. */
export interface Meeting {
  readonly tool: Tool;
  /** What is put in by itself and stands in its room, in code-point order; not the fastener's own. */
  readonly unitIds: readonly string[];
  /** What the fastener holds stands in its room. */
  readonly own: boolean;
  /** Length of tip with which the grip would pass over what the fastener holds; null: the tip itself meets it. */
  readonly clearTipMm: number | null;
}

/** What a fastener is driven past: itself and, where it is there already, what it holds. */
export interface Around {
  /** What comes within a distance of its axis, between two heights over the head's side. */
  readonly near: (withinMm: number, layer: Layer) => readonly Obstacle[];
  /** Unit of the fastener. */
  readonly unitId: string;
}

/** The best of some tools, and how far from the axis anything had a say in that, mm. */
export interface Best {
  readonly met: Meeting | null;
  readonly withinMm: number;
}

/** The tool that meets the least, its own item before all; of tools as good the first. Null: there is none. */
export function bestTool(head: Head, tools: readonly Tool[], around: Around): Best {
  let best: Meeting | null = null;
  let withinMm = 0;
  for (const tool of tools) {
    withinMm = Math.max(withinMm, widestMm(tool));
    const met = meet(head, tool, around);
    if (best === null || compareMeetings(met, best) < 0) best = met;
    if (!best.own && best.unitIds.length === 0) break;
  }
  return { met: best, withinMm };
}

const compareMeetings = (a: Meeting, b: Meeting): number =>
  Number(a.own) - Number(b.own) || a.unitIds.length - b.unitIds.length;

/** What one tool meets on a head. */
const meet = (head: Head, tool: Tool, around: Around): Meeting =>
  tool.kind === "spanner" ? meetBeside(head, tool, around) : meetAbove(head, tool, around);

function meetAbove(head: Head, tool: Tool, { near, unitId }: Around): Meeting {
  const [tip, grip] = toolRoom(head, tool);
  const obstacles = near(widestMm(tool), { lowMm: tip.lowMm, highMm: grip.highMm });
  const met = new Set<string>();
  let own = false;
  let clearTipMm: number | null = tool.tipLengthMm;
  for (const { unitId: other, solid } of obstacles) {
    const inTip = meetsCylinder(head, tip, solid);
    if (!inTip && !meetsCylinder(head, grip, solid)) continue;
    if (other !== unitId) {
      met.add(other);
      continue;
    }
    own = true;
    if (inTip) clearTipMm = null;
    else if (clearTipMm !== null) {
      const [, highMm] = heightsOver(solid, head.side, head.thicknessMm);
      clearTipMm = Math.max(clearTipMm, highMm - tip.lowMm);
    }
  }
  return { tool, unitIds: sorted(met), own, clearTipMm };
}

/** Whether a solid and an open cylinder about a head have room in common. */
function meetsCylinder(head: Head, cylinder: Cylinder, solid: Solid): boolean {
  return (
    inLayer(head, cylinder, solid) &&
    discNearBox(head, cylinder.radiusMm, solid.box) &&
    discMeetsRing(head, cylinder.radiusMm, solid.ring)
  );
}

function inLayer(head: Head, layer: Cylinder, solid: Solid): boolean {
  const [lowMm, highMm] = heightsOver(solid, head.side, head.thicknessMm);
  return lowMm < layer.highMm - TOUCH_MM && highMm > layer.lowMm + TOUCH_MM;
}

function meetBeside(head: Head, tool: Tool, { near, unitId }: Around): Meeting {
  const layer = spannerLayer(head, tool);
  const obstacles = near(layer.radiusMm, layer);
  const middle: PointMm = head;
  const met = new Map<string, Bearing[]>();
  for (const { unitId: other, solid } of obstacles) {
    if (!inLayer(head, layer, solid) || !discNearBox(middle, layer.radiusMm, solid.box)) continue;
    const bearings = blockedBearings(middle, tool, solid.ring);
    if (bearings.length > 0) met.set(other, [...(met.get(other) ?? []), ...bearings]);
  }
  const hit = freestSector(met, tool.swingDeg, (a, b) => {
    const own = Number(a.includes(unitId)) - Number(b.includes(unitId));
    return own || a.length - b.length;
  });
  const own = hit.includes(unitId);
  return { tool, unitIds: sorted(hit.filter((id) => id !== unitId)), own, clearTipMm: null };
}

const sorted = (ids: Iterable<string>): readonly string[] => [...ids].sort(compareText);
