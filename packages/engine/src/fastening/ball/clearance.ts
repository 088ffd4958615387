import { growBox, type PointMm, pointAlong, pointInRing, polylineLength } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import { distanceToRing } from "./distances.ts";
import { touchRadiusMm } from "./obstacles.ts";
import type { Region } from "./region.ts";

/** Something over the way of the ball that leaves it too little room. */
export interface Low {
  readonly solid: Solid;
  readonly at: PointMm;
}

/**
 * Steel on plastic or wood grips up to some 15°: between two faces that make less than twice that angle the ball jams
 * instead of being pushed out. Common practice, no source.
 */
const JAM_DEG = 30;

const SAMPLE_MM = 5;
const TOUCH_MM = 0.15;

/** Lowest edge over the surface below which a ball that comes against it is held like by a wall, mm. */
export const jamFromMm = (ballMm: number): number => (ballMm / 2) * (1 + Math.cos((JAM_DEG * Math.PI) / 180));

/**
 * Solids over the surface that leave less room than the ball and `clearMm`, but enough for it to get in: where it can
 * pass below them, or be jammed below their edge. Looked at every 5 mm along their edges and wherever the way of the
 * ball has a corner.
 */
export function lowSolids(
  solids: readonly Solid[],
  region: Region,
  isReached: (cell: number) => boolean,
  ballMm: number,
  clearMm: number,
): readonly Low[] {
  const low = solids.filter(
    (s) => !s.moves && s.lowMm > jamFromMm(ballMm) && s.lowMm < ballMm + clearMm && s.highMm > s.lowMm,
  );
  return low.flatMap((solid) => {
    const at =
      solid.lowMm < ballMm ? jamPlace(solid, region, isReached, ballMm) : passPlace(solid, region, isReached);
    return at === null ? [] : [{ solid, at }];
  });
}

function jamPlace(
  solid: Solid,
  region: Region,
  isReached: (cell: number) => boolean,
  ballMm: number,
): PointMm | null {
  const growMm = (touchRadiusMm(solid.lowMm, solid.highMm, ballMm) ?? 0) + TOUCH_MM;
  return region.corner(growBox(solid.box, growMm), isReached, (p) => distanceToRing(p, solid.ring) <= growMm);
}

function passPlace(solid: Solid, region: Region, isReached: (cell: number) => boolean): PointMm | null {
  const inside = region.corner(solid.box, isReached, (p) => pointInRing(p, solid.ring) !== "outside");
  if (inside !== null) return inside;
  const edge = [...solid.ring, ...solid.ring.slice(0, 1)];
  const lengthMm = polylineLength(edge);
  for (let mm = 0; mm < lengthMm; mm += SAMPLE_MM) {
    const p = pointAlong(edge, mm);
    if (isReached(region.cellAt(p))) return p;
  }
  return null;
}
