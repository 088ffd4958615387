import {
  type BoxMm,
  boxHolds,
  boxOf,
  differenceRings,
  growBox,
  intersectionRings,
  offsetRings,
  type PointMm,
  pointBetween,
  pointInRings,
  pointSegmentDistance,
  type Query,
  type RingMm,
} from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import { type Cells, cellsOf } from "./cells.ts";
import { distanceToRing } from "./distances.ts";
import { type Gap, gapsOf, type PairMemory } from "./gaps.ts";
import type { Obstacle } from "./obstacles.ts";
import { Region } from "./region.ts";
import { type Rest, restsOf } from "./rests.ts";

/** A playing surface, and what the ball meets on it. */
export interface PlayingSurface {
  readonly outline: readonly RingMm[];
  readonly obstacles: readonly Obstacle[];
  /** Holes that take the ball away. */
  readonly holes: readonly (readonly RingMm[])[];
  /** Mechanisms that throw the ball. */
  readonly throwers: ReadonlySet<string>;
  readonly ballMm: number;
  readonly slopeDeg: number;
}

type Lean = "level" | "left" | "right";

/** A place where the ball stays, and what it lies against. */
export interface Pocket extends Rest {
  readonly lean: Lean;
  readonly against: readonly Solid[];
}

/** The panel is looked at in bands as high as this, so that a change costs no more than the bands that it touches. */
const BAND_MM = 250;

/** Rounding of arcs and of micrometres, mm. */
const TOUCH_MM = 0.15;

/** By how much a machine leans to a side that was not set up with care. Common practice, no source. */
const LEAN_DEG = 1;

const LEANS: readonly (readonly [Lean, number])[] = [
  ["level", 0],
  ["left", -1],
  ["right", 1],
];

/** Where the ball can go on one playing surface. */
export class BallRoom {
  readonly region: Region;
  readonly #surface: PlayingSurface;
  readonly #reached: Uint8Array;
  readonly #holeBoxes: readonly (BoxMm | null)[];

  /** @param bands remembers the bands that nothing has changed in */
  constructor(surface: PlayingSurface, bands: Query<Cells>) {
    this.#surface = surface;
    const levels: number[] = [];
    this.region = new Region(freeBands(surface, bands, levels), levels);
    this.#holeBoxes = surface.holes.map((rings) => boxOf(rings.flat()));
    const parts = this.#reachedParts();
    this.#reached = Uint8Array.from({ length: this.region.count }, (_, cell) =>
      parts.has(this.region.partOf(cell)) ? 1 : 0,
    );
  }

  readonly isReached = (cell: number): boolean => this.#reached[cell] === 1;

  /** Places deeper than `leastMm` where the ball stays, level and with the machine leaning; each once. */
  pockets(leastMm: number): readonly Pocket[] {
    const found: Pocket[] = [];
    for (const [lean, sign] of LEANS) {
      const turnDeg = sign * leanTurnDeg(this.#surface.slopeDeg);
      for (const rest of restsOf(this.region, turnDeg, leastMm, this.isReached, this.#isTaken)) {
        const isNear = ({ at, to }: Rest): boolean =>
          pointSegmentDistance(rest.at, { a: at, b: to }) < this.#surface.ballMm / 2;
        if (found.some(isNear)) continue;
        found.push({ ...rest, lean, against: this.#touching(rest.at) });
      }
    }
    return found;
  }

  gaps(limitMm: number, memory: PairMemory): readonly Gap[] {
    return gapsOf(this.#surface.obstacles, this.region, this.isReached, limitMm, memory);
  }

  #touching(at: PointMm): readonly Solid[] {
    return this.#surface.obstacles
      .filter(
        ({ solid, growMm, box }) =>
          boxHolds(growBox(box, TOUCH_MM), at) && distanceToRing(at, solid.ring) <= growMm + TOUCH_MM,
      )
      .map(({ solid }) => solid);
  }

  readonly #isTaken = (at: PointMm, to: PointMm): boolean => {
    const along = [0, 0.25, 0.5, 0.75, 1].map((f) => pointBetween(at, to, f));
    const { holes, throwers } = this.#surface;
    const isOver = holes.some((rings, i) => {
      const box = this.#holeBoxes[i];
      return box != null && along.some((p) => boxHolds(box, p) && pointInRings(p, rings) !== "outside");
    });
    if (isOver) return true;
    return this.#touching(at).some((solid) => throwers.has(solid.itemId));
  };

  /** Parts that a hole of the ball leads to, and the largest. */
  #reachedParts(): ReadonlySet<number> {
    const { region } = this;
    const reached = new Set<number>();
    for (const ring of this.#surface.holes.flat()) {
      for (const p of [...ring, middleOf(ring)]) {
        const cell = region.cellAt(p);
        if (cell >= 0) reached.add(region.partOf(cell));
      }
    }
    const areas = new Map<number, number>();
    let largest = -1;
    for (let cell = 0; cell < region.count; cell++) {
      const part = region.partOf(cell);
      const area = (areas.get(part) ?? 0) + region.areaMm2(cell);
      areas.set(part, area);
      if (area > (areas.get(largest) ?? 0)) largest = part;
    }
    if (largest >= 0) reached.add(largest);
    return reached;
  }
}

/** By how much the way down turns when a sloping panel leans to a side, in degrees. */
function leanTurnDeg(slopeDeg: number): number {
  const rad = Math.PI / 180;
  return Math.atan2(Math.tan(LEAN_DEG * rad), Math.tan(Math.max(slopeDeg, 0.1) * rad)) / rad;
}

function middleOf(ring: RingMm): PointMm {
  const box = boxOf(ring);
  if (box === null) return { xMm: 0, yMm: 0 };
  return { xMm: (box.minXMm + box.maxXMm) / 2, yMm: (box.minYMm + box.maxYMm) / 2 };
}

/** Where the middle of the ball may be, band by band; their levels go into `levels`. */
function freeBands(surface: PlayingSurface, bands: Query<Cells>, levels: number[]): readonly Cells[] {
  const within = offsetRings(surface.outline, -surface.ballMm / 2);
  const box = boxOf(within.flat());
  if (box === null) return [];
  const found: Cells[] = [];
  for (let k = Math.floor(box.minYMm / BAND_MM); k * BAND_MM < box.maxYMm; k++) {
    const band = { ...box, minYMm: k * BAND_MM, maxYMm: (k + 1) * BAND_MM };
    const near = surface.obstacles.filter((o) => o.box.minYMm < band.maxYMm && o.box.maxYMm > band.minYMm);
    levels.push(band.minYMm);
    found.push(
      bands.ask(String(k), [surface.outline, surface.ballMm, ...near.map((o) => o.grown)], () => {
        const rectangle = [
          { xMm: band.minXMm, yMm: band.minYMm },
          { xMm: band.maxXMm, yMm: band.minYMm },
          { xMm: band.maxXMm, yMm: band.maxYMm },
          { xMm: band.minXMm, yMm: band.maxYMm },
        ];
        const area = intersectionRings(within, [rectangle]);
        return cellsOf(
          differenceRings(
            area,
            near.map((o) => o.grown),
          ),
        );
      }),
    );
  }
  return found;
}
