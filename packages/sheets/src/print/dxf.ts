import { compareText } from "@pinwright/kernel";
import { DxfWriter, LWPolylineFlags, point3d, TextHorizontalAlignment, Units } from "@tarikjabiri/dxf";
import type { SheetDocument } from "../compose/document.ts";
import { LINE } from "../compose/draw.ts";
import { leavesOf } from "../compose/leaves.ts";
import {
  LAYERS,
  type Layer,
  type Leaf,
  type PagePoint,
  type PlainLayer,
  type TextMark,
} from "../compose/mark.ts";

/** AutoCAD colour index of a layer: 7 is black on white; the others tell layers apart on a screen. */
const LAYER_COLOURS: Readonly<Record<PlainLayer, number>> = {
  BORDER: 8,
  TEXT: 7,
  DIMENSIONS: 4,
  BRANCHES: 5,
  PEGS: 1,
  HOLES: 1,
  HOLDERS: 3,
  TIES: 6,
};
/** Colours of the layers that a drawing names by itself, in turn. */
const OWN_COLOURS = [1, 5, 3, 6, 4, 2] as const;

/** A line this thick is the ground that paper shows of a bundle; a drawing holds its centre line instead. */
const GROUND_MM = LINE.frame + 0.01;

interface Target {
  readonly writer: DxfWriter;
  readonly place: (p: PagePoint) => { x: number; y: number; z: number };
}

const ALIGNMENTS = {
  start: TextHorizontalAlignment.Left,
  middle: TextHorizontalAlignment.Center,
  end: TextHorizontalAlignment.Right,
} as const;

function text({ writer, place }: Target, mark: TextMark): void {
  const p = place(mark.at);
  writer.addText(p, mark.heightMm, mark.text, {
    layerName: mark.layer,
    rotation: mark.turnDeg,
    horizontalAlignment: ALIGNMENTS[mark.anchor],
    secondAlignmentPoint: p,
  });
}

function path({ writer, place }: Target, points: readonly PagePoint[], closed: boolean, layer: Layer): void {
  const vertices = points.map((p) => {
    const { x, y } = place(p);
    return { point: { x, y } };
  });
  writer.addLWPolyline(vertices, {
    layerName: layer,
    flags: closed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
  });
}

function leaf(target: Target, mark: Leaf): void {
  const { writer, place } = target;
  const options = { layerName: mark.layer };
  switch (mark.kind) {
    case "line":
      writer.addLine(place(mark.from), place(mark.to), options);
      break;
    case "polyline":
      if (mark.stroke.widthMm < GROUND_MM) path(target, mark.points, false, mark.layer);
      break;
    case "polygon":
      path(target, mark.points, true, mark.layer);
      break;
    case "area":
      for (const ring of mark.rings) path(target, ring, true, mark.layer);
      break;
    case "rect": {
      if (mark.stroke === null) break;
      const { xMm, yMm, widthMm, heightMm } = mark.box;
      const corners = [
        { xMm, yMm },
        { xMm: xMm + widthMm, yMm },
        { xMm: xMm + widthMm, yMm: yMm + heightMm },
        { xMm, yMm: yMm + heightMm },
      ];
      path(target, corners, true, mark.layer);
      break;
    }
    case "circle":
      writer.addCircle(place(mark.at), mark.radiusMm, options);
      break;
    case "arc":
      writer.addArc(place(mark.at), mark.radiusMm, mark.fromDeg, mark.toDeg, options);
      break;
    case "text":
      text(target, mark);
      break;
    // The code is for a printed sheet; its text stands beside it.
    case "code":
      break;
  }
}

/**
 * The drawing of a sheet as DXF (AC1021) in millimetres, y up, with the drawing's own origin at 0, 0. Dimensions
 * are lines and texts: the library's DIMENSION entities lack their block. Bundles are given by centre lines.
 */
export function renderDxf(document: SheetDocument): Uint8Array {
  const page = document.pages[0];
  if (document.drawing === null || page === undefined)
    throw new Error(`Sheet ${document.id} is not a true-scale drawing: DXF can be written of drawings only.`);
  const { origin } = document.drawing;
  const writer = new DxfWriter();
  writer.setUnits(Units.Millimeters);
  const leaves = leavesOf(page.marks);
  for (const layer of LAYERS) writer.addLayer(layer, LAYER_COLOURS[layer], "Continuous");
  ownLayers(leaves).forEach((layer, i) => {
    writer.addLayer(layer, OWN_COLOURS[i % OWN_COLOURS.length] ?? 7, "Continuous");
  });
  const target: Target = {
    writer,
    place: (p) => point3d(round(p.xMm - origin.xMm), round(origin.yMm - p.yMm)),
  };
  for (const { leaf: mark } of leaves) leaf(target, mark);
  return new TextEncoder().encode(writer.stringify());
}

/** Layers of a drawing beside those that every one has, in code-point order. */
function ownLayers(leaves: ReturnType<typeof leavesOf>): readonly string[] {
  const plain: ReadonlySet<string> = new Set(LAYERS);
  return [...new Set(leaves.map(({ leaf }) => leaf.layer))]
    .filter((layer) => !plain.has(layer))
    .sort(compareText);
}

/** To a tenth of a micrometre: noise of sums does not belong in a drawing. */
function round(mm: number): number {
  return Math.round(mm * 1e4) / 1e4 + 0;
}
