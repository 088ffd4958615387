import type { BookRow, Outline } from "@pinwright/book";
import { toMicrometres } from "@pinwright/kernel";
import type { FastenerFit, FastenerHole, FastenerItem } from "../../model/index.ts";
import { type CutoutShape, cutoutWidthMm } from "../cutouts/cutout-shape.ts";
import { clearanceHole } from "./clearance-holes.ts";
import { axialMm, bitesIn, coneMm } from "./fastener-type.ts";
import { type LocalWood, localWood, TOUCH_MM } from "./local-wood.ts";
import { pilotHole, type Wood } from "./pilot-holes.ts";

/** Numbers of the shop that decide how a fastener must hold. */
export interface FitLimits {
  readonly farMarginMm: number;
  readonly woodDiameters: number;
  readonly threadDiameters: number;
  readonly edgeDiameters: number;
  readonly spacingDiameters: number;
}

/** What a fastener is looked at with. */
export interface FitFacts {
  readonly item: FastenerItem;
  readonly panel: BookRow<"panels">;
  readonly outline: Outline | undefined;
  /** Cutouts of its panel whose boxes come within its edge distance. */
  readonly near: readonly CutoutShape[];
  readonly limits: FitLimits;
  /** What it holds must not meet threadlocker. */
  readonly isPlastic: boolean;
}

/** How a fastener holds, and what was found on the way. */
export interface Fitted {
  readonly fit: FastenerFit;
  /** Null for what goes into no panel: nuts, washers, what is glued. */
  readonly wood: LocalWood | null;
}

/** A pilot hole goes so much deeper than the point, for the tip of the drill and chips, mm: common practice, no source. */
const PILOT_BEYOND_MM = 1;

/** Lengths are compared and kept in whole micrometres, so that sums of decimals give what the book says. */
const exact = (valueMm: number): number => toMicrometres(valueMm) / 1000;

const clamp = (value: number, most: number): number => Math.max(0, Math.min(value, most));

/**
 * How a fastener holds at the wood that is there.
 *
 * Length counts from under the head: what is left of it below the flange and the washer goes into the panel. It holds in
 * wood from where whole wood begins to its point, or to where wood ends; a countersunk head's cone does not hold. With a
 * nut or a tapped hole it goes right through, and holds in what lies beyond the far face; a T-nut's barrel lies within
 * the panel. A thread in a nut never holds longer than the nut is high.
 */
export function fitFastener(facts: FitFacts): Fitted {
  const { item, panel, outline, near } = facts;
  const { type, nut, tappedMm, place } = item;
  const bites = bitesIn(type);
  const goesThrough = nut !== null || tappedMm !== null;
  if (bites === "none") return { fit: loose(item), wood: null };
  const wood = localWood(panel, outline, near, {
    xMm: place.xMm,
    yMm: place.yMm,
    side: place.side,
    radiusMm: goesThrough || bites === "thread" ? 0 : type.diameter_mm / 2,
    ownHoleMm: bites === "wood" && !goesThrough ? type.diameter_mm : Number.POSITIVE_INFINITY,
  });
  const reachMm = exact(type.length_mm - item.flangeMm - (item.washer === null ? 0 : axialMm(item.washer)));
  const woodMm = exact(wood.hole !== null && !goesThrough ? 0 : Math.max(0, wood.endMm - wood.recessMm));
  const base = { fastenerId: item.id, recessMm: wood.recessMm, woodMm, reachMm };
  if (goesThrough) return { fit: { ...base, ...throughHold(facts, wood, reachMm - woodMm) }, wood };
  const isHeld = bites === "wood" && panel.wood !== "none" && woodMm > 0 && wood.edgeMm >= 0;
  if (!isHeld) {
    const wanting =
      bites === "wood"
        ? { leastEngagedMm: exact(facts.limits.woodDiameters * type.diameter_mm) }
        : { hole: throughHole(type, null) };
    return { fit: { ...unfit(item.id), ...base, ...wanting }, wood };
  }
  return { fit: { ...base, ...woodHold(facts, wood, base) }, wood };
}

type Hold = Pick<FastenerFit, "holdsIn" | "engagedMm" | "leastEngagedMm" | "leftMm" | "hole">;

function woodHold(
  { item: { type, flangeMm }, panel, limits }: FitFacts,
  wood: LocalWood,
  { reachMm, woodMm }: Pick<FastenerFit, "reachMm" | "woodMm">,
): Hold {
  const fromMm = Math.max(wood.wholeFromMm - wood.recessMm, coneMm(type) - flangeMm, 0);
  const depthMm = exact(wood.recessMm + Math.min(reachMm + PILOT_BEYOND_MM, woodMm - limits.farMarginMm));
  const isDrilled = reachMm > 0 && depthMm > wood.recessMm && wood.ownHole === null;
  return {
    holdsIn: "wood",
    engagedMm: exact(Math.max(0, Math.min(reachMm, woodMm) - fromMm)),
    leastEngagedMm: exact(limits.woodDiameters * type.diameter_mm),
    leftMm: exact(woodMm - reachMm),
    hole: isDrilled && panel.wood !== "none" ? pilotOf(type, panel.wood, depthMm) : null,
  };
}

/** The type's own pilot hole, else that of the table; a nail has none of the table's. */
function pilotOf(type: BookRow<"fastener_types">, wood: Wood, depthMm: number): FastenerHole | null {
  const table = type.kind === "nail" ? null : pilotHole(type.diameter_mm, wood);
  const diameterMm = type.pilot_mm ?? table?.drillMm;
  return diameterMm === undefined
    ? null
    : { kind: "pilot", diameterMm, allowedMm: table?.allowedMm ?? null, depthMm };
}

function throughHold(
  { item: { type, nut, tappedMm }, limits }: FitFacts,
  { ownHole }: LocalWood,
  beyondMm: number,
): Hold {
  const inWood = bitesIn(type) === "wood";
  const holdsIn = tappedMm === null ? "nut" : "tapped";
  const diameters = inWood ? limits.woodDiameters : limits.threadDiameters;
  const wantedMm = diameters * type.diameter_mm;
  const hole = ownHole === null ? throughHole(type, nut) : null;
  const base = { holdsIn, leftMm: null, hole } as const;
  if (tappedMm !== null)
    return { ...base, engagedMm: exact(clamp(beyondMm, tappedMm)), leastEngagedMm: exact(wantedMm) };
  const nutMm = nut === null ? 0 : axialMm(nut);
  const within = nut?.kind === "t-nut" ? nut.length_mm : 0;
  const mostMm = nutMm > 0 ? nutMm : Number.POSITIVE_INFINITY;
  return {
    ...base,
    engagedMm: exact(clamp(beyondMm + within, mostMm)),
    leastEngagedMm: exact(Math.min(wantedMm, mostMm)),
  };
}

/**
 * The hole of what goes right through: a T-nut's barrel sits in its own; else the type's, which for a wood screw is a
 * pilot hole and not this one; else medium fit of ISO 273. Beyond that table a millimetre over the thread.
 */
function throughHole(type: BookRow<"fastener_types">, nut: BookRow<"fastener_types"> | null): FastenerHole {
  if (nut?.kind === "t-nut" && nut.pilot_mm !== null)
    return { kind: "clearance", diameterMm: nut.pilot_mm, allowedMm: null, depthMm: null };
  const table = clearanceHole(type.diameter_mm);
  const own = bitesIn(type) === "wood" ? null : type.pilot_mm;
  return {
    kind: "clearance",
    diameterMm: own ?? table?.mediumMm ?? type.diameter_mm + 1,
    allowedMm: table === null ? null : [table.fineMm, table.coarseMm],
    depthMm: null,
  };
}

/** What goes into no wood and no thread; a hole is drilled where its type wants one. */
function loose({ id, type }: FastenerItem): FastenerFit {
  const hole: FastenerHole | null =
    type.pilot_mm === null
      ? null
      : { kind: "clearance", diameterMm: type.pilot_mm, allowedMm: null, depthMm: null };
  return { ...unfit(id), hole };
}

/** The fit of a fastener of which nothing can be said, because its panel is not in the machine. */
export const unfit = (fastenerId: string): FastenerFit => ({
  fastenerId,
  holdsIn: "nothing",
  recessMm: 0,
  woodMm: 0,
  reachMm: 0,
  engagedMm: 0,
  leastEngagedMm: 0,
  leftMm: null,
  hole: null,
});

/** Diameter of the hole that a head, washer or nut has to cover, mm; null: none that is known. */
export function coveredHoleMm({ fit, wood }: Fitted): number | null {
  const cut = wood?.ownHole ?? wood?.hole;
  if (cut !== null && cut !== undefined) return cutoutWidthMm(cut);
  return fit.hole?.diameterMm ?? null;
}

/** Whether one length falls short of another by more than rounding. */
export const isLess = (aMm: number, bMm: number): boolean => aMm < bMm - TOUCH_MM;
