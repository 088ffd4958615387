import type { LineResult, PanelPoint, Side } from "@pinwright/engine";
import { type BoxMm, boxOf, rotateXyz } from "@pinwright/kernel";
import type { PagePoint } from "../compose/mark.ts";

/** How a panel side is laid out before the builder and drawn. */
export interface PanelView {
  readonly panelId: string;
  readonly side: Side;
  /** Millimetres on paper for one of the panel. */
  readonly scale: number;
  /** The underside is turned over about the panel's y: left and right change places. */
  readonly mirrored: boolean;
  /** Extent of the whole panel as it lies, from its lower left corner, true size. */
  readonly panelMm: { readonly widthMm: number; readonly heightMm: number };
  /** The part that is drawn, in millimetres of the panel as it lies. */
  readonly region: BoxMm;
  readonly isWhole: boolean;
  /** Extent of the drawing on paper. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** A place of the panel's frame, from the lower left corner of the panel as it lies, true size. */
  readonly lying: (p: PanelPoint) => PanelPoint;
  /** A place of the panel's frame on paper, from the upper left corner of the drawing. */
  readonly toPage: (p: PanelPoint) => PagePoint;
}

/** The box round a panel in its own frame: round its outline, or its rectangle. Null: there is no such panel. */
function panelBox(line: LineResult, panelId: string): BoxMm | null {
  const outline = line.machine.panelOutlines.get(panelId)?.rings.flat();
  const panel = line.machine.panels.get(panelId);
  if (panel === undefined) return null;
  return (
    (outline === undefined ? null : boxOf(outline)) ?? {
      minXMm: 0,
      minYMm: 0,
      maxXMm: panel.width_mm,
      maxYMm: panel.height_mm,
    }
  );
}

/**
 * A view square on to a panel side as it lies before the builder: the top as the frame is, the underside mirrored in
 * x. Null when the machine has no such panel.
 * @param region the part to draw, in millimetres of the panel as it lies; absent: all of it
 */
export function panelView(
  line: LineResult,
  panelId: string,
  side: Side,
  scale: number,
  region?: BoxMm,
): PanelView | null {
  const own = panelBox(line, panelId);
  if (own === null) return null;
  const mirrored = side === "under";
  const panelMm = { widthMm: own.maxXMm - own.minXMm, heightMm: own.maxYMm - own.minYMm };
  const part = region ?? { minXMm: 0, minYMm: 0, maxXMm: panelMm.widthMm, maxYMm: panelMm.heightMm };
  const lying = (p: PanelPoint): PanelPoint => ({
    xMm: mirrored ? own.maxXMm - p.xMm : p.xMm - own.minXMm,
    yMm: p.yMm - own.minYMm,
  });
  return {
    panelId,
    side,
    scale,
    mirrored,
    panelMm,
    region: part,
    isWhole: region === undefined,
    widthMm: (part.maxXMm - part.minXMm) * scale,
    heightMm: (part.maxYMm - part.minYMm) * scale,
    lying,
    toPage: (p) => {
      const seen = lying(p);
      return { xMm: (seen.xMm - part.minXMm) * scale, yMm: (part.maxYMm - seen.yMm) * scale };
    },
  };
}

/** What the lower edge of a view of a panel is called. */
export type LowerEdge = "player" | "bottom" | "origin";

/**
 * What lies at the lower edge of every view of a panel, in the pose in which the machine is played: the player, the
 * floor, or only the corner that its frame starts from.
 */
export function lowerEdge(line: LineResult, panelId: string): LowerEdge {
  const { poses, pose_places: places } = line.machine.book.tables;
  const pose = poses.find((p) => p.usual === "yes") ?? poses[0];
  const place = places.find((p) => p.pose === pose?.id && p.panel === panelId);
  const isPlayfield = line.machine.panels.get(panelId)?.purpose === "playfield";
  if (place === undefined) return isPlayfield ? "player" : "origin";
  const down = rotateXyz({ xMm: 0, yMm: -1, zMm: 0 }, place.rx_deg, place.ry_deg, place.rz_deg);
  if (down.yMm < -0.7) return "player";
  return down.zMm < -0.7 ? "bottom" : "origin";
}

/** Largest scale, in tenths of how many times smaller, at which an extent fits into a room; never larger than life. */
export function fittingScale(
  extent: { readonly widthMm: number; readonly heightMm: number },
  room: { readonly widthMm: number; readonly heightMm: number },
): number {
  const least = Math.max(
    extent.widthMm / Math.max(room.widthMm, 1),
    extent.heightMm / Math.max(room.heightMm, 1),
  );
  return 10 / Math.max(10, Math.ceil(least * 10 - 1e-9));
}

/** `1:3`. */
export function scaleText(scale: number): string {
  return `1:${Math.round((1 / scale) * 10) / 10}`;
}
