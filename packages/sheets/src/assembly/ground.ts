import type { BookRow } from "@pinwright/book";
import { appliesTo, type LineResult, type PanelPoint } from "@pinwright/engine";
import { type FrameMm, fromFrame, polar } from "@pinwright/kernel";
import { LINE, stroke } from "../compose/draw.ts";
import type { Layer, Mark } from "../compose/mark.ts";
import type { PanelView } from "./panel-view.ts";

/** Chords of half a circle at the end of a slot. */
const HALF_CHORDS = 24;

/** Cutouts that a panel side shows: those that start from it, and those that go right through. */
export function seenCutouts(
  line: LineResult,
  view: Pick<PanelView, "panelId" | "side">,
): readonly BookRow<"cutouts">[] {
  return line.machine.book.tables.cutouts.filter(
    (row) =>
      row.panel === view.panelId &&
      appliesTo(row, line.machine.options) &&
      (row.depth_mm === null || row.side === view.side),
  );
}

function slotRing(frame: FrameMm, widthMm: number, heightMm: number): PanelPoint[] {
  const radiusMm = Math.min(widthMm, heightMm) / 2;
  const halfMm = Math.max(0, widthMm / 2 - radiusMm);
  const end = (xMm: number, fromDeg: number): PanelPoint[] =>
    Array.from({ length: HALF_CHORDS + 1 }, (_, i) => {
      const p = polar(fromDeg + (180 * i) / HALF_CHORDS, radiusMm);
      return fromFrame(frame, { xMm: xMm + p.xMm, yMm: p.yMm });
    });
  return [...end(halfMm, -90), ...end(-halfMm, 90)];
}

/** Corners of a cutout in its panel's frame; of an outline its outer ring. */
function cutoutRing(line: LineResult, row: BookRow<"cutouts">): readonly PanelPoint[] {
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  const widthMm = row.width_mm ?? 0;
  const heightMm = row.height_mm ?? widthMm;
  switch (row.shape) {
    case "circle":
      return slotRing(frame, widthMm, widthMm);
    case "slot":
      return slotRing(frame, widthMm, heightMm);
    case "rect":
      return [
        fromFrame(frame, { xMm: -widthMm / 2, yMm: -heightMm / 2 }),
        fromFrame(frame, { xMm: widthMm / 2, yMm: -heightMm / 2 }),
        fromFrame(frame, { xMm: widthMm / 2, yMm: heightMm / 2 }),
        fromFrame(frame, { xMm: -widthMm / 2, yMm: heightMm / 2 }),
      ];
    case "outline": {
      const ring = line.machine.book.outlines.get(row.outline ?? "")?.rings[0] ?? [];
      return ring.map((p) => fromFrame(frame, p));
    }
  }
}

/** A cutout as it lies in a view: a true circle where it is one. */
export function cutoutMark(
  line: LineResult,
  view: PanelView,
  row: BookRow<"cutouts">,
  layer: Layer = "BORDER",
): Mark {
  const pen = { stroke: stroke("faint", LINE.thin), fill: row.depth_mm === null ? ("tint" as const) : null };
  if (row.shape === "circle")
    return {
      kind: "circle",
      at: view.toPage({ xMm: row.x_mm, yMm: row.y_mm }),
      radiusMm: ((row.width_mm ?? 0) / 2) * view.scale,
      ...pen,
      layer,
    };
  return { kind: "polygon", points: cutoutRing(line, row).map(view.toPage), ...pen, layer };
}

/** The edge of a panel as it lies in a view; its own holes are drawn as cutouts are. */
export function panelMarks(line: LineResult, view: PanelView, layer: Layer = "BORDER"): readonly Mark[] {
  const panel = line.machine.panels.get(view.panelId);
  const width = panel?.width_mm ?? 0;
  const height = panel?.height_mm ?? 0;
  const rings = line.machine.panelOutlines.get(view.panelId)?.rings ?? [
    [
      { xMm: 0, yMm: 0 },
      { xMm: width, yMm: 0 },
      { xMm: width, yMm: height },
      { xMm: 0, yMm: height },
    ],
  ];
  return rings.map((ring, i) => ({
    kind: "polygon",
    points: ring.map(view.toPage),
    stroke: stroke(i === 0 ? "ink" : "faint", i === 0 ? LINE.medium : LINE.thin),
    fill: i === 0 ? "paper" : "tint",
    layer,
  }));
}

/** Panel and cutouts, lightly. */
export function groundMarks(line: LineResult, view: PanelView): readonly Mark[] {
  return [...panelMarks(line, view), ...seenCutouts(line, view).map((row) => cutoutMark(line, view, row))];
}
