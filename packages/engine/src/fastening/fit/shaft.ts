import { compareText, roundTo } from "@pinwright/kernel";
import { type FastenerItem, type Finding, makeFinding, type Side } from "../../model/index.ts";
import { type FitFacts, type Fitted, isLess } from "./fastener-fit.ts";

/** What a fastener takes of a panel's inside: a screw in wood, or a hole right through. */
export interface Shaft {
  readonly id: string;
  readonly panelId: string;
  readonly side: Side;
  readonly xMm: number;
  readonly yMm: number;
  readonly kind: "wood" | "hole";
  readonly diameterMm: number;
  /** Depths that it takes, from the panel's top face. */
  readonly fromMm: number;
  readonly toMm: number;
}

/** Wood between two things that pass each other inside a panel, mm: common practice, no source. */
const APART_MM = 1;

/** What a fastener takes of its panel; null: nothing. */
export function shaftOf({ item, panel, fit, hole }: FitFacts & Fitted): Shaft | null {
  const { thickness_mm: thicknessMm } = panel;
  const { diameter_mm: threadMm } = item.type;
  if (fit.holdsIn === "nut" || fit.holdsIn === "tapped")
    return shaft(item, "hole", hole?.diameterMm ?? threadMm, 0, thicknessMm);
  if (fit.holdsIn !== "wood" || fit.reachMm <= 0) return null;
  const startMm = fit.recessMm;
  const pointMm = startMm + Math.min(fit.reachMm, fit.woodMm);
  return item.place.side === "top"
    ? shaft(item, "wood", threadMm, startMm, pointMm)
    : shaft(item, "wood", threadMm, thicknessMm - pointMm, thicknessMm - startMm);
}

function shaft(
  { id, place: { panelId, side, xMm, yMm } }: FastenerItem,
  kind: Shaft["kind"],
  diameterMm: number,
  fromMm: number,
  toMm: number,
): Shaft {
  return { id, panelId, side, xMm, yMm, kind, diameterMm, fromMm, toMm };
}

/**
 * Two fasteners of one panel that come too near to each other. Both in wood from the same side: `screw-spacing`, so many
 * diameters of the thicker one. From opposite sides, or when one is a hole right through: `screw-meets`, when they share a
 * depth and less than a millimetre is left between them.
 */
export function pairFinding(one: Shaft, two: Shaft, spacingDiameters: number): Finding | null {
  const distanceMm = Math.hypot(one.xMm - two.xMm, one.yMm - two.yMm);
  const [a, b] = compareText(one.id, two.id) < 0 ? [one, two] : [two, one];
  const subjects = [a.id, b.id];
  const touchMm = (a.diameterMm + b.diameterMm) / 2;
  if (a.kind === "wood" && b.kind === "wood" && a.side === b.side) {
    const leastMm = spacingDiameters * Math.max(a.diameterMm, b.diameterMm);
    if (!isLess(distanceMm, leastMm)) return null;
    return makeFinding("screw-spacing", isLess(distanceMm, touchMm) ? "error" : "warning", subjects, {
      distance_mm: roundTo(distanceMm, 0.1),
      least_mm: roundTo(leastMm, 0.1),
    });
  }
  const sharedMm = Math.min(a.toMm, b.toMm) - Math.max(a.fromMm, b.fromMm);
  if (!isLess(0, sharedMm) || !isLess(distanceMm, touchMm + APART_MM)) return null;
  return makeFinding("screw-meets", "error", subjects, {
    distance_mm: roundTo(distanceMm, 0.1),
    least_mm: roundTo(touchMm + APART_MM, 0.1),
    shared_mm: roundTo(sharedMm, 0.1),
  });
}

/** How far apart two fasteners may be and still have a finding together, mm. */
export const pairReachMm = (thickestMm: number, spacingDiameters: number): number =>
  Math.max(spacingDiameters * thickestMm, thickestMm + APART_MM);
