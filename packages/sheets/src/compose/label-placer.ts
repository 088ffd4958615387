import { at, LINE, line, stroke, TEXT, write } from "./draw.ts";
import {
  blockMarks,
  blockSize,
  type LabelLine,
  type LabelPlace,
  type LabelSign,
  leaderMark,
  PAD_MM,
} from "./label.ts";
import type { Box, Layer, Mark, PagePoint } from "./mark.ts";
import { covers, isNear, type Obstacle } from "./obstacle.ts";
import { cornersOverlap } from "./overlaps.ts";
import { corners, distanceMm, fromStretchMm, inside, offset, type TurnedBox } from "./plane.ts";

export interface LabelRequest {
  readonly id: string;
  readonly lines: readonly LabelLine[];
  /** Stands at the left of the lines; its label then has no places that are turned. */
  readonly sign?: LabelSign;
  /** White that is kept at its left and right, beside what every label keeps. */
  readonly clearMm?: number;
  /** What it belongs to; a leader line points here when the label stands away. */
  readonly target: PagePoint;
  readonly places: (block: { readonly widthMm: number; readonly heightMm: number }) => readonly LabelPlace[];
  readonly layer: Layer;
}

export interface Balloon {
  readonly number: number;
  readonly id: string;
  readonly lines: readonly LabelLine[];
  /** Null when not even the number found room: the table then gives the place in words. */
  readonly at: PagePoint | null;
  readonly target: PagePoint;
}

export interface PlacedLabels {
  readonly marks: readonly Mark[];
  /** Labels that found no room and are told in a table. */
  readonly balloons: readonly Balloon[];
}

const RING_MM = 4;
const RINGS = 40;
const DIRECTIONS = 24;
/** Cost of covering the drawing wholly; a millimetre of leader costs `LEADER_COST`. */
const COVER_COST = 60;
const LEADER_COST = 0.35;
const CROSSED_TEXT_COST = 25;
/** A place of this cost or less, which covers next to nothing, is taken without looking farther. */
const GOOD_COST = 3.5;

type Corners = readonly (readonly [number, number])[];

interface Taken {
  readonly corners: Corners;
  readonly middle: PagePoint;
  readonly radiusMm: number;
}

interface Stretch {
  readonly a: PagePoint;
  readonly b: PagePoint;
}

function halfHeights(size: { widthMm: number; heightMm: number }): number {
  return Math.hypot(size.widthMm, size.heightMm) / 2 + PAD_MM;
}

/** State of one drawing while its labels are placed. */
class Placer {
  private readonly taken: Taken[] = [];
  private readonly leaders: Stretch[] = [];
  private readonly bounds: Box;
  private readonly obstacles: readonly Obstacle[];

  constructor(bounds: Box, obstacles: readonly Obstacle[]) {
    this.bounds = bounds;
    this.obstacles = obstacles;
  }

  /** Cost of a place, or null when it would cover a text or leave the drawing. */
  cost(
    size: { widthMm: number; heightMm: number },
    place: LabelPlace,
    leaderTo: PagePoint | null,
  ): number | null {
    const padded = {
      middle: place.middle,
      turnDeg: place.turnDeg,
      widthMm: size.widthMm + 2 * PAD_MM,
      heightMm: size.heightMm + PAD_MM,
    };
    const own = corners(padded);
    if (!inside(own, this.bounds)) return null;
    const reach = halfHeights(padded);
    for (const t of this.taken) {
      if (distanceMm(t.middle, place.middle) > t.radiusMm + reach) continue;
      if (cornersOverlap(own, t.corners)) return null;
    }
    let cost = place.cost + COVER_COST * this.covered(padded, reach);
    if (leaderTo !== null) {
      cost += LEADER_COST * distanceMm(place.middle, leaderTo);
      for (const t of this.taken) {
        const gap = fromStretchMm(t.middle, place.middle, leaderTo);
        if (gap < t.radiusMm && stretchCrosses(place.middle, leaderTo, t.corners)) cost += CROSSED_TEXT_COST;
      }
    }
    for (const l of this.leaders) {
      if (fromStretchMm(place.middle, l.a, l.b) < reach && stretchCrosses(l.a, l.b, own))
        cost += CROSSED_TEXT_COST;
    }
    return cost;
  }

  /** Share of a block that lies on the drawing, found on a grid of 7 × 3 places. */
  private covered(b: TurnedBox, reach: number): number {
    const near = this.obstacles.filter((o) => isNear(o, b.middle, reach));
    if (near.length === 0) return 0;
    let hits = 0;
    for (let i = -3; i <= 3; i++) {
      for (let j = -1; j <= 1; j++) {
        const p = offset(b.middle, b.turnDeg, (i * b.widthMm) / 6, (j * b.heightMm) / 2);
        if (near.some((o) => covers(o, p))) hits++;
      }
    }
    return hits / 21;
  }

  take(size: { widthMm: number; heightMm: number }, place: LabelPlace, leaderTo: PagePoint | null): void {
    const own = { middle: place.middle, turnDeg: place.turnDeg, ...size };
    this.taken.push({ corners: corners(own), middle: place.middle, radiusMm: halfHeights(size) });
    if (leaderTo !== null) this.leaders.push({ a: place.middle, b: leaderTo });
  }

  /** The best of some places, the first of equals; null when none is free. */
  best(
    size: { widthMm: number; heightMm: number },
    places: readonly LabelPlace[],
    leaderTo: PagePoint | null,
  ): { readonly place: LabelPlace; readonly cost: number } | null {
    let found: { place: LabelPlace; cost: number } | null = null;
    for (const place of places) {
      if (found !== null && place.cost >= found.cost) continue;
      const cost = this.cost(size, place, leaderTo);
      if (cost !== null && (found === null || cost < found.cost - 1e-9)) found = { place, cost };
    }
    return found;
  }
}

/** True if a stretch enters a convex shape, found at places 1.5 mm apart. */
function stretchCrosses(a: PagePoint, b: PagePoint, shape: Corners): boolean {
  const steps = Math.max(1, Math.ceil(distanceMm(a, b) / 1.5));
  for (let i = 0; i <= steps; i++) {
    const x = a.xMm + ((b.xMm - a.xMm) * i) / steps;
    const y = a.yMm + ((b.yMm - a.yMm) * i) / steps;
    if (pointIn(x, y, shape)) return true;
  }
  return false;
}

function pointIn(x: number, y: number, shape: Corners): boolean {
  let sign = 0;
  for (let i = 0; i < shape.length; i++) {
    const [ax, ay] = shape[i] ?? [0, 0];
    const [bx, by] = shape[(i + 1) % shape.length] ?? [0, 0];
    const cross = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
    if (cross === 0) continue;
    if (sign !== 0 && Math.sign(cross) !== sign) return false;
    sign = Math.sign(cross);
  }
  return true;
}

function ring(target: PagePoint, n: number): LabelPlace[] {
  return Array.from({ length: DIRECTIONS }, (_, i) => ({
    middle: offset(target, (i * 360) / DIRECTIONS, n * RING_MM),
    turnDeg: 0,
    cost: 0,
  }));
}

/** Looks outward, ring by ring; stops when farther rings can only cost more. */
function searchRings(
  placer: Placer,
  size: { widthMm: number; heightMm: number },
  target: PagePoint,
): { place: LabelPlace; cost: number } | null {
  let found: { place: LabelPlace; cost: number } | null = null;
  for (let n = 2; n <= RINGS; n++) {
    if (found !== null && LEADER_COST * n * RING_MM >= found.cost) break;
    const here = placer.best(size, ring(target, n), target);
    if (here !== null && (found === null || here.cost < found.cost)) found = here;
  }
  return found;
}

const BALLOON_MM = 2.6;

/**
 * Places labels on a drawing so that no two texts overlap. In the order given, each label takes the cheapest of
 * its own places; if none is free, or all cover the drawing, it stands away with a leader line; if that fails, a
 * numbered balloon stands for it and the caller prints the table. Deterministic; the work is bounded by
 * labels × (own places + 40 rings × 24 directions).
 * @param fixed texts that stand already, as boxes
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  obstacles: readonly Obstacle[],
  fixed: readonly TurnedBox[],
  bounds: Box,
): PlacedLabels {
  const placer = new Placer(bounds, obstacles);
  for (const b of fixed) placer.take(b, { middle: b.middle, turnDeg: b.turnDeg, cost: 0 }, null);
  const marks: Mark[] = [];
  const balloons: Balloon[] = [];
  for (const request of requests) {
    const own = blockSize(request.lines, request.sign);
    const size = { ...own, widthMm: own.widthMm + 2 * (request.clearMm ?? 0) };
    const near = placer.best(size, request.places(size), null);
    const away = near !== null && near.cost <= GOOD_COST ? null : searchRings(placer, size, request.target);
    if (near !== null && (away === null || near.cost <= away.cost)) {
      placer.take(size, near.place, null);
      marks.push(...blockMarks(request.lines, own, near.place, request.layer, request.sign));
      continue;
    }
    if (away !== null) {
      placer.take(size, away.place, request.target);
      marks.push(
        leaderMark(own, away.place, request.target),
        ...blockMarks(request.lines, own, away.place, request.layer, request.sign),
      );
      continue;
    }
    balloons.push(balloon(placer, request, balloons.length + 1, marks));
  }
  return { marks, balloons };
}

function balloon(placer: Placer, request: LabelRequest, number: number, marks: Mark[]): Balloon {
  const size = { widthMm: 2 * BALLOON_MM, heightMm: 2 * BALLOON_MM };
  const found = searchRings(placer, size, request.target);
  if (found === null)
    return { number, id: request.id, lines: request.lines, at: null, target: request.target };
  placer.take(size, found.place, request.target);
  const middle = found.place.middle;
  const toEdge = BALLOON_MM / Math.max(BALLOON_MM, distanceMm(middle, request.target));
  marks.push(
    line(
      at(
        middle.xMm + (request.target.xMm - middle.xMm) * toEdge,
        middle.yMm + (request.target.yMm - middle.yMm) * toEdge,
      ),
      request.target,
      stroke("ink", LINE.hair),
      "TEXT",
    ),
    {
      kind: "circle",
      at: middle,
      radiusMm: BALLOON_MM,
      stroke: stroke("ink", LINE.thin),
      fill: "paper",
      layer: "TEXT",
    },
    write(String(number), at(middle.xMm, middle.yMm + TEXT.small / 2), {
      heightMm: TEXT.small,
      anchor: "middle",
    }),
  );
  return { number, id: request.id, lines: request.lines, at: middle, target: request.target };
}
