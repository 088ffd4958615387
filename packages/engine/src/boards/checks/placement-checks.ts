import type { BookRow, Outline } from "@pinwright/book";
import {
  convexOverlap,
  type PointMm,
  pointInRing,
  pointRectangleDistance,
  pointSegmentDistance,
  type RectangleMm,
  rectangleCorners,
  rectanglesOverlap,
  ringSides,
  roundTo,
  signedArea,
} from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { fixingHoles } from "../holes.ts";
import type { Placement } from "../joints.ts";

/** Bodies may touch, and be given a little larger than they are: common practice, no source. */
const TOUCH_MM = 0.1;
/** How far a part other than a connector may stand over the edge of its board: common practice, no source. */
const OVER_MM = 0.5;

/** A part and the rectangle that it takes on the board. */
interface Body {
  readonly row: Placement;
  readonly rectangle: RectangleMm;
  readonly radiusMm: number;
}

/**
 * What is wrong with where the parts of a board type are:
 * - `placement-off`: the middle of a part lies outside the board, or something other than a connector stands over its
 *   edge;
 * - `placement-overlap`: two bodies are in one place, but for a part that is hidden below another;
 * - `placement-hole`: a body stands where the head of a fixing screw goes;
 * - `placement-too-high`: a part is higher than the board is said to be, so that what lies above it was not checked.
 */
export function checkPlacements(
  type: BookRow<"board_types">,
  outline: Outline | undefined,
  rows: readonly Placement[],
  kinds: ReadonlyMap<string, BookRow<"parts">["kind"]>,
): readonly Finding[] {
  const bodies = rows.map(bodyOf);
  const ring = outline?.rings[0] ?? [
    { xMm: 0, yMm: 0 },
    { xMm: type.width_mm, yMm: 0 },
    { xMm: type.width_mm, yMm: type.depth_mm },
    { xMm: 0, yMm: type.depth_mm },
  ];
  const high = rows
    .filter((row) => row.height_mm > type.height_mm)
    .map((row) =>
      makeFinding("placement-too-high", "error", [type.id, row.reference], {
        height_mm: row.height_mm,
        board_mm: type.height_mm,
      }),
    );
  const off = bodies.flatMap((body) => offBoard(type.id, ring, body, kinds.get(body.row.part)));
  return [...off, ...overlaps(type.id, bodies), ...onHoles(type, bodies), ...high];
}

function bodyOf(row: Placement): Body {
  const rectangle = {
    xMm: row.x_mm,
    yMm: row.y_mm,
    rotationDeg: row.rotation_deg,
    widthMm: row.width_mm,
    depthMm: row.depth_mm,
  };
  return { row, rectangle, radiusMm: Math.hypot(row.width_mm, row.depth_mm) / 2 };
}

function offBoard(
  typeId: string,
  ring: readonly PointMm[],
  { row, rectangle }: Body,
  kind: BookRow<"parts">["kind"] | undefined,
): readonly Finding[] {
  const isOff = pointInRing(rectangle, ring) === "outside";
  const mayStandOver = kind === "connector";
  const over = Math.max(0, ...rectangleCorners(rectangle).map((p) => beyond(ring, p)));
  if (!isOff && (mayStandOver || over <= OVER_MM)) return [];
  return [
    makeFinding("placement-off", isOff ? "error" : "warning", [typeId, row.reference], {
      over_mm: roundTo(over, 0.01),
    }),
  ];
}

/** How far a point lies outside a ring; 0 within it. */
function beyond(ring: readonly PointMm[], p: PointMm): number {
  if (pointInRing(p, ring) !== "outside") return 0;
  return Math.min(...ringSides(ring).map((side) => pointSegmentDistance(p, side)));
}

function overlaps(typeId: string, bodies: readonly Body[]): readonly Finding[] {
  const found: Finding[] = [];
  for (const [i, a] of bodies.entries()) {
    for (const b of bodies.slice(i + 1)) {
      if (a.row.hidden || b.row.hidden) continue;
      const apart = Math.hypot(a.row.x_mm - b.row.x_mm, a.row.y_mm - b.row.y_mm);
      if (apart >= a.radiusMm + b.radiusMm) continue;
      if (!rectanglesOverlap(shrink(a.rectangle), shrink(b.rectangle))) continue;
      const areaMm2 = signedArea(convexOverlap(rectangleCorners(a.rectangle), rectangleCorners(b.rectangle)));
      found.push(
        makeFinding("placement-overlap", "error", [typeId, a.row.reference, b.row.reference], {
          area_mm2: roundTo(areaMm2, 0.01),
        }),
      );
    }
  }
  return found;
}

/** A pan head of M3 is at most 5.6 mm wide (ISO 7045, from memory). */
const HEAD_RADIUS_MM = 2.8;

/** Bodies that a fixing screw's head would stand on; of several holes the nearest. */
function onHoles(type: BookRow<"board_types">, bodies: readonly Body[]): readonly Finding[] {
  const holes = fixingHoles(type);
  return bodies.flatMap(({ row, rectangle }) => {
    const gapMm = Math.min(...holes.map((hole) => pointRectangleDistance(hole, rectangle)));
    if (gapMm >= HEAD_RADIUS_MM - TOUCH_MM) return [];
    const numbers = { gap_mm: roundTo(gapMm, 0.01), least_mm: HEAD_RADIUS_MM };
    return [makeFinding("placement-hole", "warning", [type.id, row.reference], numbers)];
  });
}

const shrink = (r: RectangleMm): RectangleMm => ({
  ...r,
  widthMm: Math.max(0, r.widthMm - TOUCH_MM),
  depthMm: Math.max(0, r.depthMm - TOUCH_MM),
});
