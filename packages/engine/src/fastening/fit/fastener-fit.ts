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
  /** The hole that it goes into, drilled for it or cut already. */
  readonly hole: FastenerHole | null;
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
  if (bites === "none") return loose(item);
  const wood = localWood(panel, outline, near, {
    xMm: place.xMm,
    yMm: place.yMm,
    side: place.side,
    radiusMm: goesThrough || bites === "thread" ? 0 : type.diameter_mm / 2,
    ownHoleMm: bites === "wood" && !goesThrough ? type.diameter_mm : Number.POSITIVE_INFINITY,
  });
  const reachMm = exact(type.length_mm - item.flangeMm - (item.washer === null ? 0 : axialMm(item.washer)));
  const woodMm = exact(wood.hole !== null && !goesThrough ? 0 : Math.max(0, wood.endMm - wood.recessMm));
  const isWood = bites === "wood" && panel.wood !== "none" && woodMm > 0 && !isLess(wood.edgeMm, 0);
  const hold = goesThrough
    ? throughHold(facts, wood, reachMm - woodMm)
    : isWood
      ? woodHold(facts, wood, reachMm, woodMm)
      : noHold(facts, bites);
  return {
    fit: {
      fastenerId: item.id,
      holdsIn: hold.holdsIn,
      recessMm: wood.recessMm,
      woodMm,
      reachMm,
      engagedMm: exact(hold.engagedMm),
      leastEngagedMm: exact(hold.leastEngagedMm),
      leftMm: hold.leftMm,
      hole: wood.ownHole === null ? hold.hole : null,
    },
    wood,
    hole: hold.hole,
  };
}

type Hold = Pick<FastenerFit, "holdsIn" | "engagedMm" | "leastEngagedMm" | "leftMm" | "hole">;

function woodHold(
  { item: { type, flangeMm }, panel, limits }: FitFacts,
  wood: LocalWood,
  reachMm: number,
  woodMm: number,
): Hold {
  const fromMm = Math.max(wood.wholeFromMm - wood.recessMm, coneMm(type) - flangeMm, 0);
  const depthMm = exact(wood.recessMm + Math.min(reachMm + PILOT_BEYOND_MM, woodMm - limits.farMarginMm));
  const isDrilled = reachMm > 0 && depthMm > wood.recessMm && panel.wood !== "none";
  return {
    holdsIn: "wood",
    engagedMm: Math.max(0, Math.min(reachMm, woodMm) - fromMm),
    leastEngagedMm: limits.woodDiameters * type.diameter_mm,
    leftMm: exact(woodMm - reachMm),
    hole: isDrilled ? pilotOf(type, panel.wood, depthMm, wood.ownHole) : null,
  };
}

/** The hole that is cut for it, else its type's own pilot hole, else that of the table; a nail has none of the table's. */
function pilotOf(
  type: BookRow<"fastener_types">,
  wood: Wood,
  depthMm: number,
  cut: CutoutShape | null,
): FastenerHole | null {
  const table = type.kind === "nail" ? null : pilotHole(type.diameter_mm, wood);
  const diameterMm = widthOf(cut) ?? type.pilot_mm ?? table?.drillMm;
  return diameterMm === undefined
    ? null
    : { kind: "pilot", diameterMm, allowedMm: table?.allowedMm ?? null, depthMm };
}

function throughHold(
  { item: { type, nut, tappedMm }, limits }: FitFacts,
  { ownHole }: LocalWood,
  beyondMm: number,
): Hold {
  const diameters = bitesIn(type) === "wood" ? limits.woodDiameters : limits.threadDiameters;
  const wantedMm = diameters * type.diameter_mm;
  const hole = throughHole(type, nut, ownHole);
  if (tappedMm !== null)
    return {
      holdsIn: "tapped",
      engagedMm: clamp(beyondMm, tappedMm),
      leastEngagedMm: wantedMm,
      leftMm: null,
      hole,
    };
  const nutMm = nut === null ? 0 : axialMm(nut);
  const barrelMm = nut?.kind === "t-nut" ? nut.length_mm : 0;
  const mostMm = nutMm > 0 ? nutMm : Number.POSITIVE_INFINITY;
  return {
    holdsIn: "nut",
    engagedMm: clamp(beyondMm + barrelMm, mostMm),
    leastEngagedMm: Math.min(wantedMm, mostMm),
    leftMm: null,
    hole,
  };
}

/** A screw that finds no wood, or a machine screw of which nobody has said what it goes into. */
function noHold({ item: { type }, limits }: FitFacts, bites: "wood" | "thread"): Hold {
  const isWood = bites === "wood";
  return {
    holdsIn: "nothing",
    engagedMm: 0,
    leastEngagedMm: isWood ? limits.woodDiameters * type.diameter_mm : 0,
    leftMm: null,
    hole: isWood ? null : throughHole(type, null, null),
  };
}

/**
 * The hole of what goes right through: what is cut for it; a T-nut's barrel sits in its own; else the type's, which for a
 * wood screw is a pilot hole and not this one; else medium fit of ISO 273. Beyond that table a millimetre over the thread.
 */
function throughHole(
  type: BookRow<"fastener_types">,
  nut: BookRow<"fastener_types"> | null,
  cut: CutoutShape | null,
): FastenerHole {
  const cutMm = widthOf(cut);
  if (nut?.kind === "t-nut" && nut.pilot_mm !== null)
    return { kind: "clearance", diameterMm: cutMm ?? nut.pilot_mm, allowedMm: null, depthMm: null };
  const table = clearanceHole(type.diameter_mm);
  const own = bitesIn(type) === "wood" ? null : type.pilot_mm;
  return {
    kind: "clearance",
    diameterMm: cutMm ?? own ?? table?.mediumMm ?? type.diameter_mm + 1,
    allowedMm: table === null ? null : [table.fineMm, table.coarseMm],
    depthMm: null,
  };
}

const widthOf = (cut: CutoutShape | null): number | null => (cut === null ? null : cutoutWidthMm(cut));

/** What goes into no wood and no thread; a hole is drilled where its type wants one. */
function loose({ id, type }: FastenerItem): Fitted {
  const hole: FastenerHole | null =
    type.pilot_mm === null
      ? null
      : { kind: "clearance", diameterMm: type.pilot_mm, allowedMm: null, depthMm: null };
  return { fit: { ...unfit(id), hole }, wood: null, hole };
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
export const coveredHoleMm = ({ wood, hole }: Fitted): number | null =>
  widthOf(wood?.hole ?? null) ?? hole?.diameterMm ?? null;

/** Whether one length falls short of another by more than rounding. */
export const isLess = (aMm: number, bMm: number): boolean => aMm < bMm - TOUCH_MM;
