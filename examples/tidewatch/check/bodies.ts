import type { Item, Machine } from "@pinwright/engine";
import { type PointMm, polar, rectangleCorners } from "@pinwright/kernel";

/** What fills space on one side of the playfield: its plan and its extent away from that side, mm. */
export interface Body {
  readonly id: string;
  readonly item: Item;
  readonly ring: readonly PointMm[];
  readonly fromMm: number;
  readonly toMm: number;
}

/** Bulbs and domes are round; their brackets stay below. Radii: common practice, no source. */
const BULB_MM = 6;
const DOME_MM = 9;
/** Thickness of a leaf switch's blades where they come up. */
const BLADE_MM = 4;
/** Target and blades of a stand-up target where it comes up through its slot. */
const TARGET_MM = { widthMm: 26, depthMm: 8 };

const discAt = (centre: PointMm, radiusMm: number): readonly PointMm[] =>
  Array.from({ length: 36 }, (_, i) => {
    const at = polar(i * 10, radiusMm);
    return { xMm: centre.xMm + at.xMm, yMm: centre.yMm + at.yMm };
  });

const headRadius = (item: Extract<Item, { kind: "fastener" }>): number =>
  (item.type.head_diameter_mm ?? item.type.diameter_mm) / 2;

/** Where an under-side item comes up through the playing surface. */
function reaching(item: Item): readonly PointMm[] {
  if (item.kind !== "device") return item.footprint;
  if (item.type.id.endsWith("-leaf")) {
    return rectangleCorners({ ...item.place, widthMm: BLADE_MM, depthMm: item.type.depth_mm / 2 });
  }
  if (item.type.id === "dt.standup") return rectangleCorners({ ...item.place, ...TARGET_MM });
  if (item.type.class !== "lamp") return item.footprint;
  return discAt(item.place, item.type.width_mm > 20 ? DOME_MM : BULB_MM);
}

/** Everything above the playing surface, heights counted from it. */
export function bodiesAbove(machine: Machine, panelId: string): Body[] {
  const thicknessMm = machine.panels.get(panelId)?.thickness_mm ?? 0;
  const bodies: Body[] = [];
  for (const item of machine.items.values()) {
    if (item.place.panelId !== panelId || item.kind === "inline") continue;
    const { id, place } = item;
    if (item.kind === "fastener") {
      if (place.side === "top") {
        const toMm =
          item.type.kind === "post" ? item.flangeMm : item.flangeMm + (item.type.head_height_mm ?? 0);
        bodies.push({ id, item, ring: discAt(place, headRadius(item)), fromMm: 0, toMm });
      }
    } else if (place.side === "top") {
      const fromMm = item.kind === "mechanism" ? 0 : place.zMm;
      bodies.push({ id, item, ring: item.footprint, fromMm, toMm: fromMm + item.type.height_mm });
    } else if (item.parentId !== null && place.zMm <= -thicknessMm && item.kind === "device") {
      const fromMm = -place.zMm - thicknessMm;
      bodies.push({ id, item, ring: item.footprint, fromMm, toMm: fromMm + item.type.height_mm });
    } else if (item.kind === "device" && item.parentId === null && item.type.reach_mm > 0) {
      bodies.push({ id, item, ring: reaching(item), fromMm: 0, toMm: item.type.reach_mm });
    }
  }
  return bodies;
}

/** Everything below the playfield, heights counted downwards from its lower face; parts of mechanisms as one. */
export function bodiesBelow(machine: Machine, panelId: string): Body[] {
  const bodies: Body[] = [];
  for (const item of machine.items.values()) {
    if (item.place.panelId !== panelId || item.place.side !== "under" || item.parentId !== null) continue;
    if (item.kind === "inline") {
      bodies.push({ id: item.id, item, ring: item.footprint, fromMm: 0, toMm: 20 });
    } else if (item.kind === "fastener") {
      const toMm = item.flangeMm + (item.type.head_height_mm ?? 0);
      bodies.push({ id: item.id, item, ring: discAt(item.place, headRadius(item)), fromMm: 0, toMm });
    } else {
      const fromMm = item.place.zMm;
      bodies.push({ id: item.id, item, ring: item.footprint, fromMm, toMm: fromMm + item.type.height_mm });
    }
  }
  return bodies;
}
