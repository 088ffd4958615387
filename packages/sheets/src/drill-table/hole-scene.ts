import type { LineResult } from "@pinwright/engine";
import { edgeMarks, edgeWidthMm } from "../assembly/edge.ts";
import { cutoutMark, panelMarks, seenCutouts } from "../assembly/ground.ts";
import { lowerEdge } from "../assembly/panel-view.ts";
import { bodyHash } from "../compose/body-hash.ts";
import { at, box, group, LINE, stroke, TEXT } from "../compose/draw.ts";
import { type LabelRequest, placeLabels } from "../compose/label-placer.ts";
import type { Layer, Mark, PagePoint } from "../compose/mark.ts";
import type { TurnedBox } from "../compose/plane.ts";
import type { SheetOptions } from "../options.ts";
import type { Drill, DrillHole, DrillSide } from "./drill-facts.ts";

/** White round the panel for labels and the arrow. */
const MARGIN_MM = 16;
const EDGE_MM = 7;

/** A panel side with its holes as circles, each with a label, true to scale. */
export interface HoleScene {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  readonly hash: string;
  readonly origin: PagePoint;
}

/**
 * Draws the holes of a panel side. Labels never overlap, nor cover a hole.
 * @param edgeLayer layer of the panel's edge and of the labels
 * @param extra marks over the ground, in the coordinates of the panel's upper left corner, and texts that stand there
 */
export function holeScene(
  line: LineResult,
  { panelId, view, drills }: DrillSide,
  labelOf: (drill: Drill, hole: DrillHole) => string,
  layers: { readonly edge: Layer; readonly text: Layer },
  options: SheetOptions,
  extra: { readonly marks: readonly Mark[]; readonly boxes: readonly TurnedBox[] } = { marks: [], boxes: [] },
): HoleScene {
  const edge = lowerEdge(line, panelId);
  const place = at(view.widthMm / 2, view.heightMm + MARGIN_MM - EDGE_MM / 2);
  const fixed: TurnedBox[] = [
    { middle: place, widthMm: edgeWidthMm(edge, options.language), heightMm: EDGE_MM, turnDeg: 0 },
    ...extra.boxes,
  ];
  const requests: LabelRequest[] = [];
  const circles: Mark[] = [];
  for (const drill of drills) {
    for (const hole of drill.holes) {
      const middle = view.toPage(hole.row);
      const radiusMm = drill.diameterMm / 2;
      circles.push({
        kind: "circle",
        at: middle,
        radiusMm,
        stroke: stroke("ink", LINE.medium),
        fill: null,
        layer: drill.layer,
      });
      fixed.push({ middle, widthMm: 2 * radiusMm, heightMm: 2 * radiusMm, turnDeg: 0 });
      requests.push(request(labelOf(drill, hole), middle, radiusMm, hole, layers.text));
    }
  }
  const bounds = box(-MARGIN_MM, -MARGIN_MM, view.widthMm + 2 * MARGIN_MM, view.heightMm + 2 * MARGIN_MM);
  const labels = placeLabels(requests, [], fixed, bounds);
  const marks = [
    group(
      [
        ...panelMarks(line, view, layers.edge),
        ...seenCutouts(line, view).map((row) => cutoutMark(line, view, row)),
        ...extra.marks,
        ...circles,
        ...labels.marks,
        group(edgeMarks(edge, options.language), place.xMm, place.yMm),
      ],
      MARGIN_MM,
      MARGIN_MM,
    ),
  ];
  const widthMm = view.widthMm + 2 * MARGIN_MM;
  const heightMm = view.heightMm + 2 * MARGIN_MM;
  return {
    widthMm,
    heightMm,
    marks,
    hash: bodyHash([{ widthMm, heightMm, marks }]),
    origin: at(MARGIN_MM, MARGIN_MM + view.heightMm),
  };
}

function request(
  text: string,
  target: PagePoint,
  radiusMm: number,
  hole: DrillHole,
  layer: Layer,
): LabelRequest {
  return {
    id: hole.row.fastenerIds[0] ?? "",
    lines: [{ text, heightMm: TEXT.small }],
    target,
    layer,
    places: ({ widthMm, heightMm }) => {
      const x = radiusMm + 0.6 + widthMm / 2;
      const y = radiusMm + heightMm / 2;
      const spot = (dx: number, dy: number, cost: number) => ({
        middle: at(target.xMm + dx, target.yMm + dy),
        turnDeg: 0,
        cost,
      });
      return [spot(x, 0, 0), spot(-x, 0, 0.1), spot(0, -y, 0.2), spot(0, y, 0.3)];
    },
  };
}
