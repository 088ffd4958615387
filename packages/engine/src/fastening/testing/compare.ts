import {
  boxOf,
  convexPieces,
  intersectionRings,
  isConvex,
  type PointMm,
  type RingMm,
  ringDistance,
  signedArea,
  unionRings,
} from "@pinwright/kernel";
import { Cells } from "../clash/cells.ts";
import type { ShapelyAnswer } from "./shapely.ts";

type Layout = readonly (readonly PointMm[])[];

/** How far our answers on a layout are from another program's. */
export interface Differences {
  readonly pairs: number;
  readonly overlapping: number;
  /** Pairs of which both say that they touch without an area in common. */
  readonly touching: number;
  readonly areaMm2: number;
  readonly overlapMm2: number;
  readonly distanceMm: number;
  readonly coverageMm2: number;
  /** Area of the convex pieces of a shape against its own. */
  readonly piecesMm2: number;
  /** Pairs nearer than the clearance that only one of the two found. */
  readonly missed: number;
}

/** Clearance by which near pairs are looked for, mm. */
const CLEAR_MM = 0.5;
/** Distances this near to the clearance may fall on either side of it. */
const BORDER_MM = 1e-6;

const sumArea = (rings: readonly RingMm[]): number => rings.reduce((sum, ring) => sum + signedArea(ring), 0);

/** Compares a layout with what Shapely said of it; differences are the largest found. */
export function compareLayout(layout: Layout, answer: ShapelyAnswer): Differences {
  const found = {
    pairs: 0,
    overlapping: 0,
    touching: 0,
    areaMm2: 0,
    overlapMm2: 0,
    distanceMm: 0,
    piecesMm2: 0,
  };
  layout.forEach((ring, i) => {
    const area = answer.areas[i] ?? Number.NaN;
    found.areaMm2 = Math.max(found.areaMm2, Math.abs(Math.abs(signedArea(ring)) - area));
    const pieces = convexPieces(ring);
    if (!pieces.every(isConvex)) throw new Error("a piece is not convex");
    found.piecesMm2 = Math.max(found.piecesMm2, Math.abs(sumArea(pieces) - area));
  });
  const near = nearPairs(layout);
  let missed = 0;
  let at = 0;
  layout.forEach((a, i) => {
    layout.slice(i + 1).forEach((b, j) => {
      const [overlap, distance] = answer.pairs[at++] ?? [Number.NaN, Number.NaN];
      const oursMm = ringDistance(a, b);
      found.pairs++;
      if (overlap > 0) found.overlapping++;
      else if (distance === 0 && oursMm === 0) found.touching++;
      found.overlapMm2 = Math.max(found.overlapMm2, Math.abs(sumArea(intersectionRings([a], [b])) - overlap));
      found.distanceMm = Math.max(found.distanceMm, Math.abs(oursMm - distance));
      const isNear = distance < CLEAR_MM - BORDER_MM;
      if (isNear !== near.has(`${i} ${i + 1 + j}`) && Math.abs(distance - CLEAR_MM) > BORDER_MM) missed++;
    });
  });
  const coverage = sumArea(unionRings(layout));
  return { ...found, missed, coverageMm2: Math.abs(coverage - answer.coverage) };
}

/** Pairs nearer than the clearance, found by cells as clashes are. */
function nearPairs(layout: Layout): ReadonlySet<string> {
  const cells = new Cells<{
    panelId: string;
    box: NonNullable<ReturnType<typeof boxOf>>;
    i: number;
    ring: RingMm;
  }>(CLEAR_MM / 2);
  layout.forEach((ring, i) => {
    const box = boxOf(ring);
    if (box !== null) cells.add({ panelId: "p", box, i, ring });
  });
  const near = new Set<string>();
  for (const cell of cells.cells())
    cells.pairs(cell, (a, b) => {
      if (ringDistance(a.ring, b.ring, CLEAR_MM) >= CLEAR_MM) return;
      const key = `${Math.min(a.i, b.i)} ${Math.max(a.i, b.i)}`;
      if (near.has(key)) throw new Error(`the pair ${key} was looked at twice`);
      near.add(key);
    });
  return near;
}
