import { distance, pointInRing, ringSides, segmentDistance } from "@pinwright/kernel";
import type { Machine, Solid } from "../../model/index.ts";
import { type ClashSettings, offSide, wholeId } from "./settings.ts";
import type { Tube } from "./tubes.ts";

/** A bundle that cannot be laid where it is drawn. */
export interface Blocked {
  readonly tube: Tube;
  readonly solid: Solid;
  /** Length that going round or over it takes beyond the straight way. */
  readonly extraMm: number;
  /** Length that the bundle has to spare there. */
  readonly spareMm: number;
}

/**
 * Whether something is in a bundle's way: the bundle lies on its side of the panel, its own diameter high. It may be
 * dressed round or over what it meets for as long as the length to spare lasts; past what moves it may not. What it
 * lands at, the fasteners of that, and in-line connectors, which hang in the wires, are no obstacle.
 */
export function blockedBy(
  tube: Tube,
  solid: Solid,
  items: Machine["items"],
  thicknessMm: number,
  settings: ClashSettings,
): Blocked | null {
  if (solid.kind === "inline" || tube.landsAt.includes(solid.itemId)) return null;
  const radiusMm = tube.diameterMm / 2;
  const { fromMm, toMm } = offSide(solid, tube.side, thicknessMm);
  const marginMm = solid.moves ? settings.movingMm : 0;
  if (toMm + marginMm <= 0 || fromMm - marginMm >= tube.diameterMm) return null;
  if (axisDistance(tube, solid) >= radiusMm + marginMm) return null;
  const item = items.get(solid.itemId);
  const held = item?.kind === "fastener" && item.holds !== null ? items.get(item.holds) : undefined;
  if (held !== undefined && tube.landsAt.includes(wholeId(held))) return null;
  const extraMm = extraRound(tube, solid, toMm);
  const spareMm = Math.max(tube.slackMm, settings.stepMm);
  if (!solid.moves && extraMm <= spareMm) return null;
  return { tube, solid, extraMm, spareMm };
}

/** Distance of a bundle's middle line from a solid in plan, mm. */
function axisDistance(tube: Tube, { ring }: Solid): number {
  if (pointInRing(tube.a, ring) !== "outside") return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const side of ringSides(ring)) least = Math.min(least, segmentDistance(side, tube));
  return least;
}

/** What the shortest way round either side of a solid, or over its top, is longer than the straight way, mm. */
function extraRound({ a, b, diameterMm }: Tube, { ring }: Solid, topMm: number): number {
  const lengthMm = Math.max(distance(a, b), 1e-6);
  const ux = (b.xMm - a.xMm) / lengthMm;
  const uy = (b.yMm - a.yMm) / lengthMm;
  const along = ring.map((p) => (p.xMm - a.xMm) * ux + (p.yMm - a.yMm) * uy);
  const across = ring.map((p) => (p.yMm - a.yMm) * ux - (p.xMm - a.xMm) * uy);
  const fromMm = Math.max(0, Math.min(...along));
  const toMm = Math.max(fromMm, Math.min(lengthMm, Math.max(...along)));
  const asideMm = Math.min(
    Math.max(...across) + diameterMm / 2,
    diameterMm / 2 - Math.min(...across),
    Math.max(topMm, 0),
  );
  return Math.hypot(fromMm, asideMm) + (toMm - fromMm) + Math.hypot(lengthMm - toMm, asideMm) - lengthMm;
}
