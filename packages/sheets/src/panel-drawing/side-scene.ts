import type { LineResult } from "@pinwright/engine";
import { edgeMarks, edgeWidthMm } from "../assembly/edge.ts";
import { cutoutMark } from "../assembly/ground.ts";
import { lowerEdge, type PanelView } from "../assembly/panel-view.ts";
import { at, box, group, LINE, stroke, TEXT } from "../compose/draw.ts";
import { type LabelRequest, placeLabels } from "../compose/label-placer.ts";
import type { Layer, Mark } from "../compose/mark.ts";
import type { TurnedBox } from "../compose/plane.ts";
import type { SheetOptions } from "../options.ts";
import { blankRings, layerOf, type MadeCut, type MadeSide } from "./made-cuts.ts";
import { ORDINATE_MM, ordinates, wholeLength } from "./ordinates.ts";

/** A cut this large has its number in it; none stands on a smaller one. */
const LARGE_MM = 4.2;
/** More different distances along an edge are told in the table alone. */
const MOST_ORDINATES = 24;
/** White at the upper and right edge, and below for the arrow at the lower edge. */
const MARGIN_MM = 8;
const EDGE_MM = 7;

/** A side of a panel as it is drawn, its marks counted from its upper left corner. */
export interface SideScene {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  /** Lower left corner of the panel. */
  readonly origin: { readonly xMm: number; readonly yMm: number };
}

/** Room that a scene takes beside the panel itself. */
export const SCENE_ROOM_MM = {
  widthMm: ORDINATE_MM + MARGIN_MM,
  heightMm: MARGIN_MM + ORDINATE_MM + EDGE_MM + 1,
} as const;

/**
 * A side of a panel with its cuts, each with its number, and distances from the lower left corner.
 * @param edge layer of the panel's edge; @param own whether only cuts from this side are drawn, as for a machine
 */
export function sideScene(
  line: LineResult,
  made: MadeSide,
  view: PanelView,
  options: SheetOptions,
  { edge, own }: { readonly edge: Layer; readonly own: boolean },
): SideScene {
  const cuts = own ? made.cuts.filter(({ row }) => row.side === made.side) : made.cuts;
  const left = ORDINATE_MM;
  const top = MARGIN_MM;
  const foot = top + view.heightMm;
  const middle = at(left + view.widthMm / 2, foot + ORDINATE_MM + EDGE_MM / 2);
  const arrow = lowerEdge(line, made.cut.panelId);
  const arrowMm = edgeWidthMm(arrow, options.language);
  const shown = cuts.map((cut) => cutoutOf(line, view, cut, own));
  const xs = cuts.map(({ xMm }) => xMm);
  const ys = cuts.map(({ yMm }) => yMm);
  const few = (values: readonly number[]): readonly number[] =>
    new Set(values.map((v) => Math.round(v * 10))).size > MOST_ORDINATES ? [] : values;
  const widthMm = Math.max(left + view.widthMm + MARGIN_MM, middle.xMm + arrowMm / 2);
  const shiftMm = Math.max(0, arrowMm / 2 - middle.xMm);
  const labels = placeLabels(
    cuts.map((cut) => request(cut, view)),
    [],
    cuts.flatMap((cut) => taken(cut, view)),
    box(0, 0, view.widthMm, view.heightMm),
  );
  return {
    widthMm: widthMm + shiftMm,
    heightMm: SCENE_ROOM_MM.heightMm + view.heightMm,
    marks: [
      group(
        [
          group([...edgeOf(line, made, view, edge), ...shown, ...labels.marks], left, top),
          ...ordinates(few(xs), view.scale, { xMm: left, yMm: foot, runs: "x" }),
          ...ordinates(few(ys), view.scale, { xMm: left, yMm: foot, runs: "y" }),
          ...wholeLength(view.panelMm.widthMm, view.scale, { xMm: left, yMm: top, runs: "x" }),
          ...wholeLength(view.panelMm.heightMm, view.scale, {
            xMm: left + view.widthMm,
            yMm: foot,
            runs: "y",
          }),
          group(edgeMarks(arrow, options.language, "TEXT"), middle.xMm, middle.yMm),
        ],
        shiftMm,
        0,
      ),
    ],
    origin: at(left + shiftMm, foot),
  };
}

function edgeOf(line: LineResult, made: MadeSide, view: PanelView, layer: Layer): readonly Mark[] {
  return blankRings(line, made.cut).map(
    (ring, i): Mark => ({
      kind: "polygon",
      points: ring.map(view.toPage),
      stroke: stroke("ink", LINE.strong),
      fill: i === 0 ? "paper" : "tint",
      layer,
    }),
  );
}

function cutoutOf(line: LineResult, view: PanelView, { row }: MadeCut, machine: boolean): Mark {
  const mark = cutoutMark(line, view, row, machine ? layerOf(row) : "HOLES");
  return mark.kind === "circle" || mark.kind === "polygon"
    ? { ...mark, stroke: stroke("ink", row.depth_mm === null ? LINE.medium : LINE.thin) }
    : mark;
}

/** What a cut takes of the drawing, so that no number stands on a small one. */
function taken({ row }: MadeCut, view: PanelView): TurnedBox[] {
  const widthMm = (row.width_mm ?? 0) * view.scale;
  const heightMm = (row.height_mm ?? row.width_mm ?? 0) * view.scale;
  if (Math.min(widthMm, heightMm) > LARGE_MM) return [];
  const turnDeg = view.mirrored ? -row.rotation_deg : row.rotation_deg;
  return [{ middle: view.toPage({ xMm: row.x_mm, yMm: row.y_mm }), widthMm, heightMm, turnDeg }];
}

/** A number in the middle of a large cut, beside a small one. */
function request(cut: MadeCut, view: PanelView): LabelRequest {
  const target = view.toPage({ xMm: cut.row.x_mm, yMm: cut.row.y_mm });
  const ownWidthMm = (cut.row.width_mm ?? 0) * view.scale;
  const ownHeightMm = (cut.row.height_mm ?? cut.row.width_mm ?? 0) * view.scale;
  const large = Math.min(ownWidthMm, ownHeightMm) > LARGE_MM;
  const turn = (cut.row.rotation_deg * Math.PI) / 180;
  const [cos, sin] =
    cut.row.shape === "circle" ? [1, 0] : [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
  const widthMm = ownWidthMm * cos + ownHeightMm * sin;
  const heightMm = ownWidthMm * sin + ownHeightMm * cos;
  return {
    id: cut.row.id,
    lines: [{ text: String(cut.number), heightMm: TEXT.small }],
    target,
    layer: "TEXT",
    places: (block) => {
      const x = widthMm / 2 + 0.6 + block.widthMm / 2;
      const y = heightMm / 2 + 0.3 + block.heightMm / 2;
      const spot = (dx: number, dy: number, cost: number) => ({
        middle: at(target.xMm + dx, target.yMm + dy),
        turnDeg: 0,
        cost,
      });
      const beside = [spot(x, 0, 0.1), spot(-x, 0, 0.2), spot(0, -y, 0.3), spot(0, y, 0.4)];
      return large ? [spot(0, 0, 0), ...beside] : beside;
    },
  };
}
