import { roundTo } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { cutoutDepths, cutoutDistance } from "../cutouts/cutout-shape.ts";
import { type FitFacts, type Fitted, isLess } from "./fastener-fit.ts";

/** What comes too near to a screw, and how near. */
interface Nearest {
  readonly id: string;
  readonly kind: "outline" | "cutout";
  readonly distanceMm: number;
}

/**
 * `screw-edge`: a screw in wood is nearer to the panel's outline, or to a hole, pocket or groove that takes wood at the
 * depths of its thread, than the shop wants. The nearest is told. An error when the thread breaks out at the side.
 */
export function screwEdge(facts: FitFacts & Fitted): Finding | null {
  const { item, fit, wood, limits, panel } = facts;
  if (wood === null || fit.holdsIn !== "wood" || fit.reachMm <= 0) return null;
  const leastMm = limits.edgeDiameters * item.type.diameter_mm;
  const nearest = nearestSide(facts, leastMm, { id: panel.id, kind: "outline", distanceMm: wood.edgeMm });
  if (!isLess(nearest.distanceMm, leastMm)) return null;
  const breaksOut = isLess(nearest.distanceMm, item.type.diameter_mm / 2);
  return makeFinding("screw-edge", breaksOut ? "error" : "warning", [item.id, nearest.id], {
    side: nearest.kind,
    type: item.type.id,
    distance_mm: roundTo(nearest.distanceMm, 0.1),
    least_mm: roundTo(leastMm, 0.1),
  });
}

function nearestSide(
  { item, panel, near, fit, wood }: FitFacts & Fitted,
  withinMm: number,
  edge: Nearest,
): Nearest {
  const startMm = fit.recessMm;
  const pointMm = startMm + Math.min(fit.reachMm, fit.woodMm);
  let nearest = edge;
  for (const shape of near) {
    if (shape === wood?.ownHole) continue;
    const [fromMm, toMm] = cutoutDepths(shape, panel.thickness_mm, item.place.side);
    if (!isLess(Math.max(fromMm, startMm), Math.min(toMm, pointMm))) continue;
    const distanceMm = cutoutDistance(shape, item.place);
    if (distanceMm > withinMm || !isLess(distanceMm, nearest.distanceMm)) continue;
    nearest = { id: shape.id, kind: "cutout", distanceMm };
  }
  return nearest;
}
