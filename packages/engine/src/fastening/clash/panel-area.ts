import {
  type BoxMm,
  boxOf,
  differenceRings,
  growBox,
  offsetRings,
  type PointMm,
  pointInRing,
  pointSegmentDistance,
  type RingMm,
  ringSides,
  roundTo,
  signedArea,
} from "@pinwright/kernel";
import { type Finding, type Item, type Machine, makeFinding, type Solid } from "../../model/index.ts";
import { type CutoutShape, cutoutDepths, cutoutDistance } from "../cutouts/cutout-shape.ts";
import type { PanelCutouts } from "../cutouts/panel-cutouts.ts";
import { cutoutRings } from "../solids/openings.ts";
import { offSide } from "./settings.ts";

/** What is drawn to fit its opening, or its panel, exactly may be over by this much, mm. */
const DRAWN_MM = 0.1;

/** A panel as items see it. */
export interface PanelArea {
  readonly ring: RingMm;
  /** Its box, where it is just a rectangle along the axes: most of what lies on it is told to by that. */
  readonly rectangle: BoxMm | null;
  readonly thicknessMm: number;
  readonly cutouts: PanelCutouts | undefined;
}

export function panelArea(ring: RingMm, thicknessMm: number, cutouts: PanelCutouts | undefined): PanelArea {
  const box = boxOf(ring);
  const fills =
    box !== null && areaOf(ring) >= (box.maxXMm - box.minXMm) * (box.maxYMm - box.minYMm) - DRAWN_MM ** 2;
  return { ring, rectangle: fills ? box : null, thicknessMm, cutouts };
}

/** Outer edge of a panel: its outline, else its rectangle. */
export function panelRing(machine: Machine, panelId: string): RingMm | null {
  const outline = machine.panelOutlines.get(panelId)?.rings[0];
  if (outline !== undefined) return outline;
  const panel = machine.panels.get(panelId);
  if (panel === undefined) return null;
  return [
    { xMm: 0, yMm: 0 },
    { xMm: panel.width_mm, yMm: 0 },
    { xMm: panel.width_mm, yMm: panel.height_mm },
    { xMm: 0, yMm: panel.height_mm },
  ];
}

/** Whether an item lies on its panel, and passes through it only where that is open. */
export function checkPanelArea(
  item: Item,
  solids: readonly Solid[],
  panel: PanelArea,
  movingMm: number,
): readonly Finding[] {
  const beyond = beyondEdge(item, solids, panel);
  if (item.kind === "fastener") return beyond === null ? [] : [beyond];
  const closed = withoutOpening(item, solids, panel, movingMm);
  return [beyond, closed].flatMap((finding) => finding ?? []);
}

/** Distance of a point beyond a ring, mm; 0 within it. */
function beyondRing(p: PointMm, ring: RingMm): number {
  if (pointInRing(p, ring) !== "outside") return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const side of ringSides(ring)) least = Math.min(least, pointSegmentDistance(p, side));
  return least;
}

/** What lies on the face of its panel and sticks out beyond its edge; a fastener's middle must be on it. */
function beyondEdge(item: Item, solids: readonly Solid[], panel: PanelArea): Finding | null {
  const { rectangle, ring, thicknessMm } = panel;
  const corners: PointMm[] = [];
  let within = 0;
  if (item.kind === "fastener") corners.push(item.place);
  else
    for (const solid of solids) {
      if (!liesOn(item, solid, thicknessMm)) continue;
      if (rectangle !== null && boxWithin(solid.box, rectangle)) within++;
      else corners.push(...solid.ring);
    }
  const beyond = corners.map((p) => beyondRing(p, ring));
  const overMm = Math.max(0, ...beyond);
  if (overMm <= DRAWN_MM) return null;
  const off = within === 0 && beyond.every((mm) => mm > 0);
  const numbers = { over_mm: roundTo(overMm, 0.1), off };
  const severity = off || item.kind === "fastener" ? "error" : "warning";
  return makeFinding("off-panel", severity, [item.id, item.place.panelId], numbers);
}

const boxWithin = (box: BoxMm, outer: BoxMm): boolean =>
  box.minXMm >= outer.minXMm &&
  box.maxXMm <= outer.maxXMm &&
  box.minYMm >= outer.minYMm &&
  box.maxYMm <= outer.maxYMm;

function liesOn({ place }: Item, solid: Solid, thicknessMm: number): boolean {
  const { fromMm, toMm } = offSide(solid, place.side, thicknessMm);
  return fromMm <= DRAWN_MM && toMm > DRAWN_MM;
}

/** The part of an item with the most of it where the panel is not open. */
function withoutOpening(
  item: Exclude<Item, { kind: "fastener" }>,
  solids: readonly Solid[],
  panel: PanelArea,
  movingMm: number,
): Finding | null {
  let most: { readonly missingMm2: number; readonly part: string; readonly open: boolean } | null = null;
  for (const solid of solids) {
    const found = missingOpening(solid, panel, movingMm);
    if (found !== null && found.missingMm2 > (most?.missingMm2 ?? 0))
      most = { ...found, part: solid.id.split("#")[1] ?? "" };
  }
  most ??= reachesNowhere(item, solids)
    ? { missingMm2: areaOf(item.footprint), part: "reach", open: false }
    : null;
  if (most === null) return null;
  const numbers = {
    part: most.part,
    missing_mm2: roundTo(most.missingMm2, 1),
    opening: most.open ? "small" : "none",
  };
  return makeFinding("no-opening", "error", [item.id, item.place.panelId], numbers);
}

/** Its type passes through the panel, but there is nothing that it could pass through. */
const reachesNowhere = (item: Exclude<Item, { kind: "fastener" }>, solids: readonly Solid[]): boolean =>
  (item.kind === "device" || item.kind === "mechanism") &&
  item.parentId === null &&
  item.type.reach_mm > 0 &&
  solids.some(({ id }) => id === item.id) &&
  !solids.some(({ id }) => id === `${item.id}#reach`);

const areaOf = (ring: RingMm): number => Math.abs(signedArea(ring));

/** Area of a solid within the panel's thickness where nothing is cut away at that depth, mm²; null: none. */
function missingOpening(
  { ring, box, lowMm, highMm, moves }: Solid,
  { thicknessMm, cutouts }: PanelArea,
  movingMm: number,
): { readonly missingMm2: number; readonly open: boolean } | null {
  const fromMm = Math.max(0, -highMm);
  const toMm = Math.min(thicknessMm, -lowMm);
  if (toMm - fromMm <= DRAWN_MM) return null;
  const marginMm = moves ? movingMm : 0;
  const near = (cutouts?.index.near(growBox(box, marginMm)) ?? []).filter((shape) => {
    const [startMm, endMm] = cutoutDepths(shape, thicknessMm, "top");
    return startMm <= fromMm + DRAWN_MM && endMm >= toMm - DRAWN_MM;
  });
  if (near.some((shape) => surelyWithin(ring, shape, marginMm))) return null;
  const grown = marginMm > 0 ? offsetRings([ring], marginMm) : [ring];
  const left = differenceRings(
    grown,
    near.flatMap((shape) => cutoutRings(shape.form)),
  );
  if (offsetRings(left, -DRAWN_MM, "miter").length === 0) return null;
  return { missingMm2: left.reduce((sum, part) => sum + signedArea(part), 0), open: near.length > 0 };
}

/** Whether a ring lies within one round or rectangular cutout: these are convex, so its corners tell. */
const surelyWithin = (ring: RingMm, shape: CutoutShape, marginMm: number): boolean =>
  shape.form.kind !== "outline" && ring.every((p) => cutoutDistance(shape, p) <= DRAWN_MM - marginMm);
