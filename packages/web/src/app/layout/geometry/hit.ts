import {
  type BoxMm,
  GridIndex,
  growBox,
  type PointMm,
  pointInRing,
  pointSegmentDistance,
} from "@pinwright/kernel";

/** Something on the drawing that can be pointed at. */
export interface Pointable {
  readonly id: string;
  readonly box: BoxMm;
  /** Corners on the panel; null for a line or a mere place. */
  readonly ring: readonly PointMm[] | null;
  readonly line: readonly [PointMm, PointMm] | null;
  /** What lies on top is hit first: lower is higher. */
  readonly depth: number;
}

/** Cells about as large as a board. */
const CELL_MM = 60;

const area = ({ minXMm, maxXMm, minYMm, maxYMm }: BoxMm): number => (maxXMm - minXMm) * (maxYMm - minYMm);

/** Finds what is at a place on the panel. */
export class HitIndex<T extends Pointable> {
  readonly #index = new GridIndex<T>(CELL_MM);

  constructor(all: Iterable<T>) {
    for (const one of all) this.#index.add(one.box, one);
  }

  /** Everything within `toleranceMm` of a place, best first: what lies on top, then the smallest. */
  at(place: PointMm, toleranceMm: number): readonly T[] {
    const about = { minXMm: place.xMm, maxXMm: place.xMm, minYMm: place.yMm, maxYMm: place.yMm };
    const found = this.#index
      .near(growBox(about, toleranceMm))
      .map((one) => ({ one, miss: missMm(one, place) }))
      .filter(({ miss }) => miss <= toleranceMm);
    // What is hit outright goes before what is only near, except that a line is never hit outright.
    return found
      .sort(
        (a, b) =>
          a.one.depth - b.one.depth ||
          Number(a.miss > 0) - Number(b.miss > 0) ||
          area(a.one.box) - area(b.one.box) ||
          a.miss - b.miss ||
          (a.one.id < b.one.id ? -1 : 1),
      )
      .map(({ one }) => one);
  }

  /** Everything that lies wholly within a box. */
  within(box: BoxMm): readonly T[] {
    return this.#index
      .near(box)
      .filter(
        (one) =>
          one.box.minXMm >= box.minXMm &&
          one.box.maxXMm <= box.maxXMm &&
          one.box.minYMm >= box.minYMm &&
          one.box.maxYMm <= box.maxYMm,
      );
  }

  /** Everything whose box meets a box. */
  near(box: BoxMm): readonly T[] {
    return this.#index.near(box);
  }
}

/** How far a place is from a thing; 0 inside. */
function missMm({ ring, line, box }: Pointable, place: PointMm): number {
  if (line !== null) return pointSegmentDistance(place, { a: line[0], b: line[1] });
  if (ring !== null && ring.length > 2) {
    if (pointInRing(place, ring) !== "outside") return 0;
    let least = Number.POSITIVE_INFINITY;
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length];
      if (b !== undefined) least = Math.min(least, pointSegmentDistance(place, { a, b }));
    }
    return least;
  }
  const dx = Math.max(box.minXMm - place.xMm, 0, place.xMm - box.maxXMm);
  const dy = Math.max(box.minYMm - place.yMm, 0, place.yMm - box.maxYMm);
  return Math.hypot(dx, dy);
}
