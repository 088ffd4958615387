import type { BookRow } from "@pinwright/book";
import type { Placement } from "@pinwright/engine";
import { fromFrame, type PointMm, rectangleCorners } from "@pinwright/kernel";
import { at, LINE, stroke } from "../compose/draw.ts";
import type { Ink, Mark, PagePoint } from "../compose/mark.ts";

/** How a part looks in a picture. */
export type Look = "dark" | "light" | "plain";

/** A board seen from the side of its parts, at a scale, its lower left corner at the lower left. */
export interface BoardView {
  readonly type: BookRow<"board_types">;
  readonly scale: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** A place of the board's frame, from the upper left corner of the drawing. */
  readonly toPage: (p: PointMm) => PagePoint;
}

/**
 * A view of a board.
 * @param ring its outline in its own frame; may reach beyond its rectangle
 * @param marginMm white at each side
 */
export function boardView(
  type: BookRow<"board_types">,
  ring: readonly PointMm[],
  scale: number,
  marginMm: number,
): BoardView {
  const left = Math.min(...ring.map((p) => p.xMm));
  const right = Math.max(...ring.map((p) => p.xMm));
  const low = Math.min(...ring.map((p) => p.yMm));
  const high = Math.max(...ring.map((p) => p.yMm));
  return {
    type,
    scale,
    widthMm: (right - left) * scale + 2 * marginMm,
    heightMm: (high - low) * scale + 2 * marginMm,
    toPage: (p) => at(marginMm + (p.xMm - left) * scale, marginMm + (high - p.yMm) * scale),
  };
}

const LOOKS: Readonly<
  Record<Look, { readonly fill: Ink; readonly pen: Ink; readonly widthMm: number; readonly mark: Ink }>
> = {
  dark: { fill: "ink", pen: "ink", widthMm: LINE.medium, mark: "paper" },
  light: { fill: "paper", pen: "faint", widthMm: LINE.hair, mark: "faint" },
  plain: { fill: "paper", pen: "ink", widthMm: LINE.thin, mark: "ink" },
};

/** Ink of the text that stands in a part. */
export const textInk = (look: Look): Ink => LOOKS[look].mark;

/** A side of a part in its own frame: the way to it from the middle. */
type Side = readonly [x: -1 | 0 | 1, y: -1 | 0 | 1];
const SIDES: readonly Side[] = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
];

/** Words of a mark that say that it is turned to the nearest edge of the board. */
const TO_EDGE = /to the edge/u;

/**
 * The side of a part that has the mark: where the mark is said to be turned to the edge, the side nearest to an edge of
 * the board, a long side of a header before its ends; else the left side of the part's own frame.
 */
export function markedSide(row: Placement, type: BookRow<"board_types">): Side {
  if (!TO_EDGE.test(row.polarity)) return [-1, 0];
  const isLong = row.width_mm >= 1.5 * row.depth_mm || row.depth_mm >= 1.5 * row.width_mm;
  const alongX = row.width_mm > row.depth_mm;
  const meant = SIDES.filter(([x]) => !isLong || (alongX ? x === 0 : x !== 0));
  const toEdge = (side: Side): number => {
    const p = onSide(row, side, 1);
    return Math.min(p.xMm, p.yMm, type.width_mm - p.xMm, type.depth_mm - p.yMm);
  };
  return meant.reduce((best, side) => (toEdge(side) < toEdge(best) - 1e-9 ? side : best));
}

/** The middle of a side of a part in the board's frame, or so much of the way there. */
const onSide = (row: Placement, [x, y]: Side, share: number): PointMm =>
  fromFrame(
    { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg },
    { xMm: (x * row.width_mm * share) / 2, yMm: (y * row.depth_mm * share) / 2 },
  );

/** The mark of a part is at most this wide on paper. */
const BAR_MM = 1.1;
const DOT_MM = 0.7;

/** The body of a part, with the mark of its right way round. */
export function bodyMarks(view: BoardView, row: Placement, look: Look): readonly Mark[] {
  const { fill, pen, widthMm, mark } = LOOKS[look];
  const body: Mark = {
    kind: "polygon",
    points: rectangleCorners(rectangleOf(row)).map(view.toPage),
    stroke: stroke(pen, widthMm),
    fill,
    layer: "BORDER",
  };
  return row.polarity === "" ? [body] : [body, polarityMark(view, row, mark)];
}

const rectangleOf = (row: Placement) => ({
  xMm: row.x_mm,
  yMm: row.y_mm,
  rotationDeg: row.rotation_deg,
  widthMm: row.width_mm,
  depthMm: row.depth_mm,
});

/** Width of the bar along the marked side, or radius of the dot, on paper. */
function markSize(
  view: BoardView,
  row: Placement,
): { readonly side: Side; readonly isDot: boolean; readonly sizeMm: number } {
  const side = markedSide(row, view.type);
  const acrossMm = (side[0] === 0 ? row.depth_mm : row.width_mm) * view.scale;
  const isDot = /notch|leg/u.test(row.polarity);
  return {
    side,
    isDot,
    sizeMm: isDot ? Math.min(DOT_MM, acrossMm * 0.2) : Math.min(BAR_MM, acrossMm * 0.22),
  };
}

/**
 * What of a part is free of its mark: its extent on paper, along its own x and y, and the middle of it in the part's
 * own frame, true size.
 */
export function freeOfMark(
  view: BoardView,
  row: Placement,
): { readonly widthMm: number; readonly depthMm: number; readonly middle: PointMm } {
  const [widthMm, depthMm] = [row.width_mm * view.scale, row.depth_mm * view.scale];
  if (row.polarity === "") return { widthMm, depthMm, middle: { xMm: 0, yMm: 0 } };
  const { side, isDot, sizeMm } = markSize(view, row);
  const [x, y] = side;
  const takenMm = sizeMm * (isDot ? 2.8 : 1.8);
  return {
    widthMm: widthMm - Math.abs(x) * takenMm,
    depthMm: depthMm - Math.abs(y) * takenMm,
    middle: { xMm: (-x * takenMm) / 2 / view.scale, yMm: (-y * takenMm) / 2 / view.scale },
  };
}

/** A bar along the marked side, a little inside; a dot for a notch and a mark at a leg. */
function polarityMark(view: BoardView, row: Placement, ink: Ink): Mark {
  const { side, isDot, sizeMm } = markSize(view, row);
  const [x, y] = side;
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  const halfWide = row.width_mm / 2;
  const halfDeep = row.depth_mm / 2;
  if (isDot) {
    const inMm = (1.6 * sizeMm) / view.scale;
    const place = { xMm: inMm - halfWide, yMm: /leg/u.test(row.polarity) ? halfDeep - inMm : 0 };
    return {
      kind: "circle",
      at: view.toPage(fromFrame(frame, place)),
      radiusMm: sizeMm,
      stroke: null,
      fill: ink,
      layer: "BORDER",
    };
  }
  const insideMm = (1.1 * sizeMm) / view.scale;
  const ends = [-1, 1].map((end) =>
    x === 0
      ? { xMm: end * (halfWide - insideMm / 2), yMm: y * (halfDeep - insideMm) }
      : { xMm: x * (halfWide - insideMm), yMm: end * (halfDeep - insideMm / 2) },
  );
  return {
    kind: "polyline",
    points: ends.map((p) => view.toPage(fromFrame(frame, p))),
    stroke: stroke(ink, sizeMm),
    layer: "BORDER",
  };
}
