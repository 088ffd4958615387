import type { Book, BookRow } from "@pinwright/book";
import {
  type BoxMm,
  boxOf,
  fromFrame,
  intoFrame,
  type PointMm,
  pointInRings,
  pointRectangleDistance,
  pointSegmentDistance,
  type RectangleMm,
  type RingMm,
  rectangleCorners,
  ringSides,
} from "@pinwright/kernel";
import type { Side } from "../../model/index.ts";

/** Wood that is not there, as an exact shape in the panel's frame. */
export interface CutoutShape {
  readonly id: string;
  readonly panelId: string;
  /** Side that the cut starts from. */
  readonly side: Side;
  readonly purpose: BookRow<"cutouts">["purpose"];
  /** Depth from that side; null: right through. */
  readonly depthMm: number | null;
  readonly form: CutoutForm;
  readonly box: BoxMm;
}

/** A slot is all that lies within `radiusMm` of the line from `a` to `b`; for a circle both are its middle. */
export type CutoutForm =
  | { readonly kind: "round"; readonly a: PointMm; readonly b: PointMm; readonly radiusMm: number }
  | { readonly kind: "rect"; readonly rectangle: RectangleMm }
  | { readonly kind: "outline"; readonly rings: readonly RingMm[] };

/**
 * The shape of a cutout. Null when the row does not say what it needs to have an area: the reader of the book has
 * told of that already.
 */
export function cutoutShape(book: Book, row: BookRow<"cutouts">): CutoutShape | null {
  const form = formOf(book, row);
  const box = form === null ? null : formBox(form);
  if (form === null || box === null) return null;
  const { id, panel: panelId, side, purpose, depth_mm: depthMm } = row;
  return { id, panelId, side, purpose, depthMm, form, box };
}

function formOf(book: Book, row: BookRow<"cutouts">): CutoutForm | null {
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  if (row.shape === "outline") {
    const rings = book.outlines.get(row.outline ?? "")?.rings;
    if (rings === undefined) return null;
    return { kind: "outline", rings: rings.map((ring) => ring.map((p) => fromFrame(frame, p))) };
  }
  const { width_mm: widthMm, height_mm: heightMm } = row;
  if (widthMm === null) return null;
  const middle = { xMm: row.x_mm, yMm: row.y_mm };
  if (row.shape === "circle") return { kind: "round", a: middle, b: middle, radiusMm: widthMm / 2 };
  if (heightMm === null) return null;
  if (row.shape === "rect") return { kind: "rect", rectangle: { ...frame, widthMm, depthMm: heightMm } };
  const halfMm = Math.max(0, (widthMm - heightMm) / 2);
  const end = (xMm: number): PointMm => fromFrame(frame, { xMm, yMm: 0 });
  return { kind: "round", a: end(-halfMm), b: end(halfMm), radiusMm: heightMm / 2 };
}

function formBox(form: CutoutForm): BoxMm | null {
  if (form.kind === "outline") return boxOf(form.rings.flat());
  if (form.kind === "rect") return boxOf(rectangleCorners(form.rectangle));
  const { a, b, radiusMm } = form;
  return {
    minXMm: Math.min(a.xMm, b.xMm) - radiusMm,
    minYMm: Math.min(a.yMm, b.yMm) - radiusMm,
    maxXMm: Math.max(a.xMm, b.xMm) + radiusMm,
    maxYMm: Math.max(a.yMm, b.yMm) + radiusMm,
  };
}

/** Distance of a point from the side of a cutout, mm; less than 0 within it. */
export function cutoutDistance({ form }: Pick<CutoutShape, "form">, p: PointMm): number {
  switch (form.kind) {
    case "round":
      return pointSegmentDistance(p, form) - form.radiusMm;
    case "rect":
      return rectangleSignedDistance(form.rectangle, p);
    case "outline":
      return ringsSignedDistance(form.rings, p);
  }
}

function rectangleSignedDistance(r: RectangleMm, p: PointMm): number {
  const local = intoFrame(r, p);
  const insideMm = Math.max(Math.abs(local.xMm) - r.widthMm / 2, Math.abs(local.yMm) - r.depthMm / 2);
  return insideMm <= 0 ? insideMm : pointRectangleDistance(p, r);
}

/** Distance of a point from the nearest side of some rings, mm; less than 0 where the even-odd rule says inside. */
export function ringsSignedDistance(rings: readonly RingMm[], p: PointMm): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings)
    for (const side of ringSides(ring)) least = Math.min(least, pointSegmentDistance(p, side));
  return pointInRings(p, rings) === "inside" ? -least : least;
}

/** Least extent of a cutout, mm: the diameter of a circle, the width of a slot; null for a drawing. */
export function cutoutWidthMm({ form }: Pick<CutoutShape, "form">): number | null {
  if (form.kind === "round") return 2 * form.radiusMm;
  return form.kind === "rect" ? Math.min(form.rectangle.widthMm, form.rectangle.depthMm) : null;
}

/**
 * What depths of a panel a cutout takes, counted from the face of one side: [0, thickness] when it goes right through.
 */
export function cutoutDepths(
  { side, depthMm }: Pick<CutoutShape, "side" | "depthMm">,
  thicknessMm: number,
  from: Side,
): readonly [fromMm: number, toMm: number] {
  if (depthMm === null || depthMm >= thicknessMm) return [0, thicknessMm];
  return side === from ? [0, depthMm] : [thicknessMm - depthMm, thicknessMm];
}
