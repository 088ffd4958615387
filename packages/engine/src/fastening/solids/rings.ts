import type { Book, Ring } from "@pinwright/book";
import {
  boxOf,
  cosSinDeg,
  differenceRings,
  intersectionRings,
  type PointMm,
  polar,
  type RingMm,
  signedArea,
} from "@pinwright/kernel";

/** A disc is drawn with chords that leave it by at most this much, as arcs of outlines are. */
const CHORD_MM = 0.05;
const FEWEST_CORNERS = 12;
/** Sizes that are kept; a machine has some dozens. */
const MOST_DISCS = 1000;

const discs = new Map<number, readonly PointMm[]>();

/** A disc about (0, 0) as a ring, anticlockwise; its corners lie on the circle. The same object for the same size. */
export function discRing(diameterMm: number): readonly PointMm[] {
  const known = discs.get(diameterMm);
  if (known !== undefined) return known;
  const radiusMm = diameterMm / 2;
  const halfRad = radiusMm > CHORD_MM ? Math.acos(1 - CHORD_MM / radiusMm) : Math.PI;
  const corners = Math.max(FEWEST_CORNERS, 4 * Math.ceil(Math.PI / halfRad / 4));
  const ring = Array.from({ length: corners }, (_, i) => polar((i * 360) / corners, radiusMm));
  if (discs.size < MOST_DISCS) discs.set(diameterMm, ring);
  return ring;
}

/** A hexagon about (0, 0) whose corners lie on a circle of the given diameter. */
export const hexagonRing = (diameterMm: number): readonly PointMm[] =>
  Array.from({ length: 6 }, (_, i) => polar(i * 60, diameterMm / 2));

/**
 * A ring turned about (0, 0) and then moved.
 * @param mirrored it is turned over first, so that x points the other way
 */
export function movedRing(
  ring: Ring,
  at: PointMm,
  rotationDeg: number,
  mirrored = false,
): readonly PointMm[] {
  const { cos, sin } = cosSinDeg(rotationDeg);
  const flip = mirrored ? -1 : 1;
  return ring.map((p) => {
    const x = flip * p.xMm;
    return { xMm: at.xMm + (x * cos - p.yMm * sin), yMm: at.yMm + (x * sin + p.yMm * cos) };
  });
}

/** Every ring of an outline as areas without holes; the rectangle given when there is no outline. */
export function outlinePieces(book: Book, outline: string | null, rectangle: Ring): readonly RingMm[] {
  const rings = outline === null ? undefined : book.outlines.get(outline)?.rings;
  return rings === undefined ? [rectangle] : withoutHoles(rings);
}

/**
 * The area of rings (outer ones anticlockwise, holes clockwise) as rings without holes: a shape is cut straight
 * through the middle of each of its holes.
 */
export function withoutHoles(rings: readonly RingMm[]): readonly RingMm[] {
  const hole = rings.find((ring) => signedArea(ring) < 0);
  if (hole === undefined) return rings;
  const box = boxOf(rings.flat());
  const own = boxOf(hole);
  if (box === null || own === null) return [];
  const middleMm = (own.minXMm + own.maxXMm) / 2;
  const half = [
    { xMm: box.minXMm - 1, yMm: box.minYMm - 1 },
    { xMm: middleMm, yMm: box.minYMm - 1 },
    { xMm: middleMm, yMm: box.maxYMm + 1 },
    { xMm: box.minXMm - 1, yMm: box.maxYMm + 1 },
  ];
  return [...withoutHoles(intersectionRings(rings, [half])), ...withoutHoles(differenceRings(rings, [half]))];
}
