import type { BookRow } from "@pinwright/book";
import {
  fixingHoles,
  type Machine,
  type Placement,
  placementsOf,
  type StuffingPlan,
} from "@pinwright/engine";
import { fromFrame, type PointMm, rectangleCorners } from "@pinwright/kernel";
import { at, box, LINE, stroke, TEXT } from "../compose/draw.ts";
import type { LabelLine, LabelPlace } from "../compose/label.ts";
import { type Balloon, type LabelRequest, placeLabels } from "../compose/label-placer.ts";
import type { Mark, Page } from "../compose/mark.ts";
import { type Obstacle, ringObstacles } from "../compose/obstacle.ts";
import { textWidthMm } from "../compose/text.ts";
import { type BoardView, boardView, bodyMarks, freeOfMark, type Look, textInk } from "./bodies.ts";

/** A board drawn at a scale, from the upper left corner of the drawing. */
export interface BoardPicture {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly scale: number;
  readonly marks: readonly Mark[];
  /** References that found no room beside their parts. */
  readonly balloons: readonly Balloon[];
}

/** White round the board for references that stand beside their parts. */
const MARGIN_MM = 7;
/** Scales of pictures, those of ISO 5455 and some between them, the largest first. */
const SCALES = [
  5, 4, 3.5, 3, 2.5, 2.25, 2, 1.8, 1.6, 1.5, 1.4, 1.25, 1.1, 1, 0.9, 0.8, 0.75, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2,
  0.1, 0.05,
] as const;
/** White that a text keeps to the edges of the part that it stands in. */
const INSIDE_MM = 0.5;

/** `2:1`, `1:1`, `1:2`. */
export const boardScaleText = (scale: number): string =>
  scale >= 1 ? `${scale}:1` : `1:${Number((1 / scale).toFixed(2))}`;

function outlineOf(machine: Machine, type: BookRow<"board_types">): readonly (readonly PointMm[])[] {
  const outline = type.outline === null ? undefined : machine.book.outlines.get(type.outline);
  return (
    outline?.rings ?? [
      [
        { xMm: 0, yMm: 0 },
        { xMm: type.width_mm, yMm: 0 },
        { xMm: type.width_mm, yMm: type.depth_mm },
        { xMm: 0, yMm: type.depth_mm },
      ],
    ]
  );
}

/** Hole of a fixing screw of M3, in a picture. */
const HOLE_MM = 3.2;

/** The bare board with its fixing holes. */
function groundMarks(view: BoardView, rings: readonly (readonly PointMm[])[]): readonly Mark[] {
  return [
    ...rings.map(
      (ring, i): Mark => ({
        kind: "polygon",
        points: ring.map(view.toPage),
        stroke: stroke("ink", i === 0 ? LINE.strong : LINE.thin),
        fill: i === 0 ? "tint" : "paper",
        layer: "BORDER",
      }),
    ),
    ...fixingHoles(view.type).map(
      (p): Mark => ({
        kind: "circle",
        at: view.toPage(p),
        radiusMm: (HOLE_MM / 2) * view.scale,
        stroke: stroke("faint", LINE.thin),
        fill: "paper",
        layer: "HOLES",
      }),
    ),
  ];
}

/** A part that is drawn, and what is written in it or beside it. */
interface Shown {
  readonly row: Placement;
  readonly look: Look;
  readonly text: string;
}

/**
 * What a stage shows: its parts dark with their references, those of earlier stages light and without. No stage: all
 * parts plain, with the numbers of their boxes.
 */
function shownParts(rows: readonly Placement[], plan: StuffingPlan, stage: number | null): readonly Shown[] {
  const boxes = new Map(plan.boxes.map((part, i) => [part, i + 1]));
  const stages = new Map(
    plan.stages.flatMap((s) => s.references.map((reference) => [reference, s.number] as const)),
  );
  return rows.flatMap((row): Shown[] => {
    if (stage === null) return [{ row, look: "plain", text: String(boxes.get(row.part) ?? "") }];
    const own = stages.get(row.reference) ?? 0;
    if (own > stage) return [];
    return own === stage ? [{ row, look: "dark", text: row.reference }] : [{ row, look: "light", text: "" }];
  });
}

const obstacleOf = (view: BoardView, { row }: Shown): Obstacle => ({
  kind: "box",
  box: {
    middle: view.toPage({ xMm: row.x_mm, yMm: row.y_mm }),
    turnDeg: row.rotation_deg,
    widthMm: row.width_mm * view.scale,
    heightMm: row.depth_mm * view.scale,
  },
});

const LETTERS = [TEXT.normal, TEXT.small] as const;

/** Where a text stands in a part, in its own frame from the middle, and how it is turned on the page. */
interface Inside {
  readonly heightMm: number;
  readonly turnDeg: 0 | 90;
  readonly middle: PointMm;
}

/** Where a text stands in a part, beside its mark, as large as it fits, level before upright. Null: it does not. */
function insidePlace(view: BoardView, { row, text }: Shown): Inside | null {
  const isTurned = ((row.rotation_deg % 180) + 180) % 180 === 90;
  if (!isTurned && row.rotation_deg % 180 !== 0) return null;
  const free = freeOfMark(view, row);
  const [wideMm, deepMm] = isTurned ? [free.depthMm, free.widthMm] : [free.widthMm, free.depthMm];
  for (const heightMm of LETTERS) {
    const longMm = textWidthMm(text, heightMm, "bold") + 2 * INSIDE_MM;
    const highMm = heightMm + 2 * INSIDE_MM;
    if (longMm <= wideMm && highMm <= deepMm) return { heightMm, turnDeg: 0, middle: free.middle };
    if (longMm <= deepMm && highMm <= wideMm) return { heightMm, turnDeg: 90, middle: free.middle };
  }
  return null;
}

/** Places round a part, level, the nearest first. */
function roundPlaces(view: BoardView, { row }: Shown): LabelRequest["places"] {
  const corners = rectangleCorners({
    xMm: row.x_mm,
    yMm: row.y_mm,
    rotationDeg: row.rotation_deg,
    widthMm: row.width_mm,
    depthMm: row.depth_mm,
  }).map(view.toPage);
  const left = Math.min(...corners.map((p) => p.xMm));
  const right = Math.max(...corners.map((p) => p.xMm));
  const top = Math.min(...corners.map((p) => p.yMm));
  const low = Math.max(...corners.map((p) => p.yMm));
  const [x, y] = [(left + right) / 2, (top + low) / 2];
  return ({ widthMm, heightMm }): readonly LabelPlace[] =>
    [
      at(x, top - heightMm / 2 - 0.2),
      at(x, low + heightMm / 2 + 0.2),
      at(right + widthMm / 2 + 0.7, y),
      at(left - widthMm / 2 - 0.7, y),
    ].map((middle, i) => ({ middle, turnDeg: 0, cost: i * 0.2 }));
}

/**
 * A board of a type as one stage of its plan shows it: this stage's parts dark and with their references, those that are
 * in already light, later ones not there; a bar or dot at the side that has the mark of the right way round.
 * @param stage number of the stage; null: the whole board, with the numbers of the boxes
 * @param room largest extent of the drawing on paper
 * @param most largest scale
 */
export function drawBoard(
  machine: Machine,
  plan: StuffingPlan,
  stage: number | null,
  room: { readonly widthMm: number; readonly heightMm: number },
  most = 4,
): BoardPicture | null {
  const type = machine.book.tables.board_types.find((row) => row.id === plan.typeId);
  if (type === undefined) return null;
  const rings = outlineOf(machine, type);
  const ring = rings[0] ?? [];
  const fits = (scale: number): boolean => {
    const view = boardView(type, ring, scale, MARGIN_MM);
    return view.widthMm <= room.widthMm && view.heightMm <= room.heightMm;
  };
  const scale = SCALES.find((s) => s <= most && fits(s)) ?? SCALES[SCALES.length - 1] ?? 1;
  const view = boardView(type, ring, scale, MARGIN_MM);
  const shown = shownParts(placementsOf(machine, plan.typeId), plan, stage);
  const named = shown.filter(({ text }) => text !== "");
  const texts = named.flatMap((one) => textInside(view, one));
  const beside = named.filter((one) => insidePlace(view, one) === null);
  const labels = placeLabels(
    beside.map((one) => requestOf(view, one)),
    [...shown.map((one) => obstacleOf(view, one)), ...ringObstacles(ring.map(view.toPage))],
    texts.map(({ fixed }) => fixed),
    box(0, 0, view.widthMm, view.heightMm),
  );
  return {
    widthMm: view.widthMm,
    heightMm: view.heightMm,
    scale,
    marks: [
      ...groundMarks(view, rings),
      // What is in already lies below what goes in now.
      ...shown.filter(({ look }) => look === "light").flatMap(({ row, look }) => bodyMarks(view, row, look)),
      ...shown.filter(({ look }) => look !== "light").flatMap(({ row, look }) => bodyMarks(view, row, look)),
      ...texts.map(({ mark }) => mark),
      ...labels.marks,
    ],
    balloons: labels.balloons,
  };
}

function textInside(view: BoardView, one: Shown) {
  const place = insidePlace(view, one);
  if (place === null) return [];
  const frame = { xMm: one.row.x_mm, yMm: one.row.y_mm, rotationDeg: one.row.rotation_deg };
  const middle = view.toPage(fromFrame(frame, place.middle));
  const { heightMm, turnDeg } = place;
  const widthMm = textWidthMm(one.text, heightMm, "bold");
  const downMm = heightMm / 2;
  const mark: Mark = {
    kind: "text",
    text: one.text,
    at: turnDeg === 0 ? at(middle.xMm, middle.yMm + downMm) : at(middle.xMm + downMm, middle.yMm),
    heightMm,
    weight: "bold",
    ink: textInk(one.look),
    anchor: "middle",
    turnDeg,
    layer: "TEXT",
  };
  return [{ mark, fixed: { middle, turnDeg, widthMm, heightMm } }];
}

function requestOf(view: BoardView, one: Shown): LabelRequest {
  const lines: readonly LabelLine[] = [{ text: one.text, heightMm: TEXT.small, weight: "bold" }];
  return {
    id: one.row.reference,
    lines,
    target: view.toPage({ xMm: one.row.x_mm, yMm: one.row.y_mm }),
    places: roundPlaces(view, one),
    layer: "TEXT",
  };
}

/**
 * The picture of a stage as a page of its own, for the screen: `pageSvg` writes it.
 * @param stage number of the stage; null: the whole board with the numbers of the boxes
 * @param widthMm width of the page; the board is drawn as large as it fits, at most five times its size
 * @returns null when there is no such type
 */
export function boardPage(
  machine: Machine,
  plan: StuffingPlan,
  stage: number | null,
  widthMm = 180,
): (Page & { readonly scale: number }) | null {
  const picture = drawBoard(machine, plan, stage, { widthMm, heightMm: widthMm }, 5);
  if (picture === null) return null;
  return { widthMm: picture.widthMm, heightMm: picture.heightMm, marks: picture.marks, scale: picture.scale };
}
