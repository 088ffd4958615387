import type { BookRow } from "@pinwright/book";
import type { LineResult, PanelCut, PanelPoint, Side } from "@pinwright/engine";
import { seenCutouts } from "../assembly/ground.ts";
import { type PanelView, panelView } from "../assembly/panel-view.ts";
import type { Layer } from "../compose/mark.ts";

/** A hole, slot or pocket as it is made: slots follow the measured thickness of what stands in them. */
export interface MadeCut {
  readonly number: number;
  readonly row: BookRow<"cutouts">;
  /** From the lower left corner of the panel as it lies with this side up. */
  readonly xMm: number;
  readonly yMm: number;
}

/** Cuts that a side of a panel shows, numbered from its lower left corner upwards. */
export interface MadeSide {
  readonly cut: PanelCut;
  readonly side: Side;
  readonly view: PanelView;
  readonly cuts: readonly MadeCut[];
}

/** A cut that is drawn at an edge stays there when its width follows another thickness. */
const AT_EDGE_MM = 0.11;

/** Sides of a sawn panel that a drawing is made of: the top always, the underside when something is cut from it. */
export function madeSides(line: LineResult, cut: PanelCut): readonly MadeSide[] {
  return (["top", "under"] as const).flatMap((side) => {
    const view = blankView(line, cut, side, 1);
    const rows = seenCutouts(line, { panelId: cut.panelId, side });
    if (view === null || (side === "under" && !rows.some((row) => row.side === "under"))) return [];
    return [
      {
        cut,
        side,
        view,
        cuts: numbered(
          rows.map((row) => madeRow(line, cut, row)),
          view,
        ),
      },
    ];
  });
}

function numbered(rows: readonly BookRow<"cutouts">[], view: PanelView): readonly MadeCut[] {
  return rows
    .map((row) => ({ row, lying: view.lying({ xMm: row.x_mm, yMm: row.y_mm }) }))
    .sort((a, b) => a.lying.yMm - b.lying.yMm || a.lying.xMm - b.lying.xMm)
    .map(({ row, lying }, i) => ({ number: i + 1, row, ...lying }));
}

/** A view of the blank as it is cut: it may be longer or shorter than drawn by what it follows of a thickness. */
export function blankView(line: LineResult, cut: PanelCut, side: Side, scale: number): PanelView | null {
  const drawn = panelView(line, cut.panelId, side, scale);
  if (drawn === null) return null;
  const { widthMm, heightMm } = cut;
  const lying = (p: PanelPoint): PanelPoint => ({
    xMm: side === "under" ? widthMm - p.xMm : p.xMm,
    yMm: p.yMm,
  });
  return {
    ...drawn,
    panelMm: { widthMm, heightMm },
    region: { minXMm: 0, minYMm: 0, maxXMm: widthMm, maxYMm: heightMm },
    widthMm: widthMm * scale,
    heightMm: heightMm * scale,
    lying,
    toPage: (p) => {
      const seen = lying(p);
      return { xMm: seen.xMm * scale, yMm: (heightMm - seen.yMm) * scale };
    },
  };
}

/** Corners of a blank: those at the far edges move with its size, the others stay where they are drawn. */
export function blankRings(line: LineResult, cut: PanelCut): readonly (readonly PanelPoint[])[] {
  const { drawnWidthMm, drawnHeightMm, widthMm, heightMm } = cut;
  const rings = line.machine.panelOutlines.get(cut.panelId)?.rings ?? [
    [
      { xMm: 0, yMm: 0 },
      { xMm: drawnWidthMm, yMm: 0 },
      { xMm: drawnWidthMm, yMm: drawnHeightMm },
      { xMm: 0, yMm: drawnHeightMm },
    ],
  ];
  const far = (at: number, drawn: number, made: number): number =>
    Math.abs(at - drawn) < AT_EDGE_MM ? made : at;
  return rings.map((ring) =>
    ring.map(({ xMm, yMm }) => ({
      xMm: far(xMm, drawnWidthMm, widthMm),
      yMm: far(yMm, drawnHeightMm, heightMm),
    })),
  );
}

/** A cutout as it is made: as wide as its panel needs, at the edge where it is drawn there. */
function madeRow(line: LineResult, cut: PanelCut, row: BookRow<"cutouts">): BookRow<"cutouts"> {
  const slot = line.panels.slots.find(({ cutoutId }) => cutoutId === row.id);
  const [x, width] = along(
    row.x_mm,
    row.width_mm,
    slot?.across === "width" ? slot.widthMm : null,
    cut.drawnWidthMm,
    cut.widthMm,
    row.rotation_deg === 0,
  );
  const [y, height] = along(
    row.y_mm,
    row.height_mm,
    slot?.across === "height" ? slot.widthMm : null,
    cut.drawnHeightMm,
    cut.heightMm,
    row.rotation_deg === 0,
  );
  return { ...row, x_mm: x, y_mm: y, width_mm: width, height_mm: height };
}

/** Middle and extent in one direction. */
function along(
  middle: number,
  extent: number | null,
  wanted: number | null,
  drawn: number,
  made: number,
  straight: boolean,
): readonly [middle: number, extent: number | null] {
  if (extent === null || !straight) return [middle, wanted ?? extent];
  const atLow = Math.abs(middle - extent / 2) < AT_EDGE_MM;
  const atHigh = Math.abs(middle + extent / 2 - drawn) < AT_EDGE_MM;
  if (atLow && atHigh) return [made / 2, made];
  const size = wanted ?? extent;
  if (atLow) return [size / 2, size];
  return atHigh ? [made - size / 2, size] : [middle, size];
}

/** Layer of a cut for a machine: by tool and depth, openings right through on `CUT`. */
export function layerOf({ shape, width_mm, depth_mm, side }: BookRow<"cutouts">): Layer {
  const digits = (n: number): string => String(Math.round(n)).padStart(3, "0");
  const depth = depth_mm === null ? "THROUGH" : `Z${digits(depth_mm * 10)}`;
  if (shape === "circle") return `DRILL_${side.toUpperCase()}_D${digits((width_mm ?? 0) * 100)}_${depth}`;
  return depth_mm === null ? "CUT" : `DRILL_ROUT_${side.toUpperCase()}_${depth}`;
}
