import { boxesOverlap, GridIndex, growBox, type PointMm, pointBetween, pointInRing } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import { distanceToRing, type Nearest, nearestPoints, ringsMeet, type Span } from "./distances.ts";
import type { Obstacle } from "./obstacles.ts";
import type { Region } from "./region.ts";

/** A gap that is nearly as wide as the ball. */
export interface Gap {
  readonly a: Solid;
  readonly b: Solid;
  /** Clear width of the gap less what the ball needs there, mm. */
  readonly spareMm: number;
  readonly widthMm: number;
  readonly at: PointMm;
}

/** Distances of pairs of solids, kept for as long as both are. */
export class PairMemory {
  readonly #known = new WeakMap<Solid, WeakMap<Solid, Nearest | null>>();

  /** The nearest points of two solids whose distance is within the span; the span must follow from the two. */
  nearest(a: Solid, b: Solid, span: Span): Nearest | null {
    let row = this.#known.get(a);
    if (row === undefined) {
      row = new WeakMap();
      this.#known.set(a, row);
    }
    let found = row.get(b);
    if (found === undefined) {
      found = within(a, b, span);
      row.set(b, found);
    }
    return found;
  }
}

function within(a: Solid, b: Solid, span: Span): Nearest | null {
  const nearest = nearestPoints(a, b, span);
  // Where boxes lie apart, rings do not cross.
  if (nearest === null || (boxesOverlap(a.box, b.box) && ringsMeet(a.ring, b.ring))) return null;
  return nearest;
}

/** Rounding of arcs and of micrometres, mm. */
const TOUCH_MM = 0.15;

/**
 * Gaps between two obstacles whose width is within `limitMm` of what the ball needs, where it can get to: into a wider
 * one it gets; at a narrower one it can lie against both sides at once.
 */
export function gapsOf(
  obstacles: readonly Obstacle[],
  region: Region,
  isReached: (cell: number) => boolean,
  limitMm: number,
  memory: PairMemory,
): readonly Gap[] {
  const index = new GridIndex<Obstacle>(60);
  const gaps: Gap[] = [];
  for (const one of obstacles) {
    const reach = growBox(one.box, limitMm);
    for (const two of index.near(reach)) {
      if (!boxesOverlap(reach, two.box)) continue;
      const needMm = one.growMm + two.growMm;
      const nearest = memory.nearest(two.solid, one.solid, {
        leastMm: needMm - limitMm,
        mostMm: needMm + limitMm,
      });
      if (nearest === null) continue;
      const at = pointBetween(nearest.a, nearest.b, two.growMm / needMm);
      if (isFilled(at, obstacles)) continue;
      const spareMm = nearest.distanceMm - needMm;
      const open = spareMm > 0 ? isReached(region.cellAt(at)) : hasSeat(at, one, two, region, isReached);
      if (open) gaps.push({ a: two.solid, b: one.solid, spareMm, widthMm: nearest.distanceMm, at });
    }
    index.add(one.box, one);
  }
  return gaps;
}

/** Whether a place in a gap lies in something else. */
const isFilled = (at: PointMm, obstacles: readonly Obstacle[]): boolean =>
  obstacles.some(
    ({ solid }) =>
      at.xMm > solid.box.minXMm &&
      at.xMm < solid.box.maxXMm &&
      at.yMm > solid.box.minYMm &&
      at.yMm < solid.box.maxYMm &&
      pointInRing(at, solid.ring) !== "outside",
  );

/** Whether the ball can lie against both sides of a gap, at a corner of the region that is reached. */
function hasSeat(
  at: PointMm,
  one: Obstacle,
  two: Obstacle,
  region: Region,
  isReached: (cell: number) => boolean,
): boolean {
  const box = growBox(
    { minXMm: at.xMm, maxXMm: at.xMm, minYMm: at.yMm, maxYMm: at.yMm },
    one.growMm + two.growMm,
  );
  const seat = region.corner(box, isReached, (p) =>
    [one, two].every(({ solid, growMm }) => distanceToRing(p, solid.ring) <= growMm + TOUCH_MM),
  );
  return seat !== null;
}
