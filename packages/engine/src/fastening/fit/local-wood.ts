import type { BookRow, Outline } from "@pinwright/book";
import type { PointMm, RingMm } from "@pinwright/kernel";
import type { Side } from "../../model/index.ts";
import {
  type CutoutShape,
  cutoutDepths,
  cutoutDistance,
  ringsSignedDistance,
} from "../cutouts/cutout-shape.ts";

/** Rounding of places: what lies nearer than this touches, mm. */
export const TOUCH_MM = 1e-6;

/** A hole of purpose `fixing` so near to the middle of a fastener is its own. */
const OWN_HOLE_MM = 0.5;

/** Wood along the axis of a fastener. Depths are counted from the face that it is driven from. */
export interface LocalWood {
  /** Floor of the deepest pocket of that side in which its axis lies; 0: the face. */
  readonly recessMm: number;
  /** Where whole wood begins all round its thread; deeper than the recess when a pocket's side runs through the thread. */
  readonly wholeFromMm: number;
  /** Where wood ends: at the far face, or at the floor of the deepest far pocket that the thread lies over. */
  readonly endMm: number;
  /** The far pocket that ends it. */
  readonly farPocket: CutoutShape | null;
  /** A hole right through the panel over which its thread lies. */
  readonly hole: CutoutShape | null;
  /** A hole of purpose `fixing` about its own axis: it is the fastener's, not a loss of wood. */
  readonly ownHole: CutoutShape | null;
  /** Distance of its axis from the panel's outline; less than 0: it lies outside. */
  readonly edgeMm: number;
}

/** Where a fastener goes into a panel. */
export interface Axis extends PointMm {
  readonly side: Side;
  /** Radius of what has to have wood about it: 0 looks at the axis alone. */
  readonly radiusMm: number;
  /** Widest hole about the axis that still is the fastener's own, mm. */
  readonly ownHoleMm: number;
}

/**
 * The wood at a fastener, from the cutouts whose boxes come near it. Of all that a pocket or hole takes from the disc of
 * its thread the worst counts.
 */
export function localWood(
  panel: BookRow<"panels">,
  outline: Outline | undefined,
  near: readonly CutoutShape[],
  axis: Axis,
): LocalWood {
  const thicknessMm = panel.thickness_mm;
  let recessMm = 0;
  let wholeFromMm = 0;
  let endMm = thicknessMm;
  let farPocket: CutoutShape | null = null;
  let hole: CutoutShape | null = null;
  let ownHole: CutoutShape | null = null;
  for (const shape of near) {
    const distanceMm = cutoutDistance(shape, axis);
    if (distanceMm >= axis.radiusMm - TOUCH_MM) continue;
    const [fromMm, toMm] = cutoutDepths(shape, thicknessMm, axis.side);
    if (isOwnHole(shape, axis)) {
      ownHole ??= shape;
    } else if (fromMm === 0 && toMm === thicknessMm) {
      hole ??= shape;
    } else if (fromMm === 0) {
      wholeFromMm = Math.max(wholeFromMm, toMm);
      if (distanceMm < -TOUCH_MM) recessMm = Math.max(recessMm, toMm);
    } else if (fromMm < endMm) {
      endMm = fromMm;
      farPocket = shape;
    }
  }
  const edgeMm = -ringsSignedDistance(outlineRings(panel, outline), axis);
  return { recessMm, wholeFromMm, endMm, farPocket, hole, ownHole, edgeMm };
}

function isOwnHole({ purpose, form }: CutoutShape, axis: Axis): boolean {
  if (purpose !== "fixing" || form.kind !== "round") return false;
  const isCircle = form.a.xMm === form.b.xMm && form.a.yMm === form.b.yMm;
  const offMm = Math.hypot(form.a.xMm - axis.xMm, form.a.yMm - axis.yMm);
  return isCircle && offMm <= OWN_HOLE_MM && 2 * form.radiusMm <= axis.ownHoleMm;
}

/** Rings of a panel's outline, or its rectangle. */
function outlineRings(panel: BookRow<"panels">, outline: Outline | undefined): readonly RingMm[] {
  if (outline !== undefined) return outline.rings;
  const { width_mm: xMm, height_mm: yMm } = panel;
  return [
    [
      { xMm: 0, yMm: 0 },
      { xMm, yMm: 0 },
      { xMm, yMm },
      { xMm: 0, yMm },
    ],
  ];
}
