import { type BoxMm, growBox, pointInRing, type RingMm, SharedMemory } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import { growRing } from "./grow.ts";

/** What is this low, a ball rolls over: switch wires, screw heads; common practice, no source. */
const ROLLED_OVER_MM = 5;

/** What a ball on the playing surface runs against. */
export interface Obstacle {
  readonly solid: Solid;
  /** How near the middle of the ball comes to it, seen from above. */
  readonly growMm: number;
  /** Round where the middle of the ball cannot be for it; filled by the non-zero rule. */
  readonly grown: RingMm;
  readonly box: BoxMm;
}

/**
 * How near the middle of a ball on the surface comes to something between two heights, seen from above, mm: the radius
 * of the ball where it is touched. That is at its middle, or at the edge of what is lower than that or begins above it.
 * Null: the ball passes over or under.
 */
export function touchRadiusMm(lowMm: number, highMm: number, ballMm: number): number | null {
  const radiusMm = ballMm / 2;
  if (highMm <= ROLLED_OVER_MM || lowMm >= ballMm) return null;
  const atMm = Math.min(Math.max(radiusMm, lowMm), highMm);
  return Math.sqrt(radiusMm ** 2 - (radiusMm - atMm) ** 2);
}

const known = new SharedMemory<Solid, Obstacle | null>();

/** A solid as an obstacle; null when the ball passes it: over, under, or because it gives way (it moves). */
export function obstacleOf(solid: Solid, ballMm: number): Obstacle | null {
  return known.ask(solid, [ballMm], () => {
    const growMm = solid.moves ? null : touchRadiusMm(solid.lowMm, solid.highMm, ballMm);
    if (growMm === null) return null;
    const grown = growRing(solid.ring, growMm);
    return { solid, growMm, grown, box: growBox(solid.box, growMm) };
  });
}

/**
 * Obstacles without the small ones that stand in another: screws in a guide, posts in their rubbers. What is no wider
 * than the ball and has all corners in another that keeps the ball as far off cannot be touched: if it comes out
 * between two corners, then into a notch that the ball is too large for.
 */
export function outermost(obstacles: readonly Obstacle[], ballMm: number): readonly Obstacle[] {
  const isSmall = ({ solid: { box } }: Obstacle): boolean =>
    box.maxXMm - box.minXMm <= ballMm && box.maxYMm - box.minYMm <= ballMm;
  return obstacles.filter(
    (small) => !isSmall(small) || !obstacles.some((large) => large !== small && holds(large, small)),
  );
}

const holds = (large: Obstacle, small: Obstacle): boolean =>
  large.growMm >= small.growMm &&
  boxWithin(small.solid.box, large.solid.box) &&
  small.solid.ring.every((p) => pointInRing(p, large.solid.ring) === "inside");

const boxWithin = (small: BoxMm, large: BoxMm): boolean =>
  small.minXMm > large.minXMm &&
  small.minYMm > large.minYMm &&
  small.maxXMm < large.maxXMm &&
  small.maxYMm < large.maxYMm;
