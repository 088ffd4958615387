import { circlesOf, type DrawnCircle, type Fault, FaultLog, readOutline } from "@pinwright/book";
import { boxOf } from "@pinwright/kernel";
import type { Model } from "../model.ts";
import { flat } from "../views/rings.ts";

/** What was found in a DXF or SVG file. */
export interface ReadDrawing {
  /** Closed lines, x and y by turns; none when there is no outline in it. */
  readonly rings: readonly (readonly number[])[];
  readonly widthMm: number;
  readonly heightMm: number;
  /** Circles of a DXF. */
  readonly circles: readonly DrawnCircle[];
  /** What could not be read. */
  readonly problems: readonly Pick<Fault, "code" | "expected">[];
  /** A drawing of that name is in the book. */
  readonly isTaken: boolean;
}

/** Reads a drawing without putting it into the book. */
export function readDrawing(
  { tables }: Model,
  { name, text }: { readonly name: string; readonly text: string },
): ReadDrawing {
  const log = new FaultLog();
  const outline = readOutline(name, text, log);
  const box = outline === null ? null : boxOf(outline.rings.flat());
  const isDxf = name.toLowerCase().endsWith(".dxf");
  return {
    rings: outline?.rings.map(flat) ?? [],
    widthMm: box === null ? 0 : box.maxXMm - box.minXMm,
    heightMm: box === null ? 0 : box.maxYMm - box.minYMm,
    circles: isDxf ? circlesOf(text).circles : [],
    problems: log.list().map(({ code, expected }) => ({ code, expected })),
    isTaken: tables.get("outlines")?.has(name) === true,
  };
}

/** Types of fasteners, for places that are to become fasteners. */
export const fastenerTypes = ({ book }: Model, _: null) =>
  book.tables.fastener_types.map(({ id, label, label_zh, diameter_mm }) => ({
    id,
    label,
    labelZh: label_zh,
    diameterMm: diameter_mm,
  }));
