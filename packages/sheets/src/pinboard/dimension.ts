import { LINE, line, stroke, TEXT } from "../compose/draw.ts";
import type { LabelPlace } from "../compose/label.ts";
import type { LabelRequest } from "../compose/label-placer.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { shortMm } from "../compose/number.ts";
import { coverer, type Obstacle } from "../compose/obstacle.ts";
import {
  along,
  directionDeg,
  distanceMm,
  fromStretchMm,
  lengthOf,
  offset,
  readableDeg,
} from "../compose/plane.ts";
import type { Run } from "./run.ts";

/** From the edge of the bundle to the dimension line. */
const GAP_MM = 4;
const ARROW_MM = 2.2;
/** A run shorter than this has no room for arrows; its length stands in the label alone. */
const LEAST_MM = 14;
/** A dimension line of which more than this share would lie on other branches is left out. */
const MOST_COVERED = 0.3;
/** A run is straight when no bend is farther than this from its chord. */
const STRAIGHT_MM = 0.3;

export interface DimensionDrawing {
  readonly marks: readonly Mark[];
  readonly obstacles: readonly Obstacle[];
  readonly label: LabelRequest;
}

/** An arrowhead at `tip`, pointing in a direction. */
function arrow(tip: PagePoint, pointsDeg: number): Mark {
  return {
    kind: "polygon",
    points: [tip, offset(tip, pointsDeg, -ARROW_MM, 0.36), offset(tip, pointsDeg, -ARROW_MM, -0.36)],
    stroke: null,
    fill: "ink",
    layer: "DIMENSIONS",
  };
}

/** Dimension line beside a straight run, true to scale from end to end; `side` is 1 at its left, −1 at its right. */
function lineMarks(a: PagePoint, b: PagePoint, halfMm: number, side: 1 | -1): Mark[] {
  const direction = directionDeg(a, b);
  const away = side * (halfMm + GAP_MM);
  const from = offset(a, direction, 0, away);
  const to = offset(b, direction, 0, away);
  const pen = stroke("ink", LINE.hair);
  const extension = (p: PagePoint): Mark =>
    line(
      offset(p, direction, 0, side * (halfMm + 0.8)),
      offset(p, direction, 0, away + side * 1.5),
      pen,
      "DIMENSIONS",
    );
  return [
    extension(a),
    extension(b),
    line(from, to, pen, "DIMENSIONS"),
    arrow(from, direction + 180),
    arrow(to, direction),
  ];
}

/**
 * The length of a run: a dimension line at the side where it crosses least, and a label with the length, the
 * bundle's diameter and its number of wires. A bent run, a short one and one in a crowd have the label alone.
 * @param others what the dimension line should not run across: all bundles, holders and dimension lines before
 */
export function drawDimension(run: Run, others: readonly Obstacle[]): DimensionDrawing {
  const [a] = run.points;
  const b = run.points[run.points.length - 1];
  const total = lengthOf(run.points);
  const straight =
    a !== undefined && b !== undefined && run.points.every((p) => fromStretchMm(p, a, b) <= STRAIGHT_MM);
  if (!straight || total < LEAST_MM) return { marks: [], obstacles: [], label: label(run, total, 0) };
  const direction = directionDeg(a, b);
  const ends = (side: 1 | -1): readonly [PagePoint, PagePoint] => [
    offset(a, direction, 0, side * (run.halfMm + GAP_MM)),
    offset(b, direction, 0, side * (run.halfMm + GAP_MM)),
  ];
  const covered = (side: 1 | -1): number => {
    const [from, to] = ends(side);
    const covers = coverer(others, from, to);
    const samples = Math.max(8, Math.ceil(total / 4));
    let hits = 0;
    for (let i = 1; i < samples; i++) if (covers(offset(from, direction, (total * i) / samples))) hits++;
    return hits / samples;
  };
  const left = covered(1);
  const right = left === 0 ? 1 : covered(-1);
  const side = left <= right ? 1 : -1;
  if (Math.min(left, right) > MOST_COVERED) return { marks: [], obstacles: [], label: label(run, total, 0) };
  const [from, to] = ends(side);
  return {
    marks: lineMarks(a, b, run.halfMm, side),
    obstacles: [{ kind: "stretch", a: from, b: to, halfMm: 0.5 }],
    label: label(run, total, side),
  };
}

/** Where on a bent run the label stands best: the middle of its longest stretch, as a distance along it. */
function longestMiddleMm(points: readonly PagePoint[]): {
  readonly middleMm: number;
  readonly lengthMm: number;
} {
  let before = 0;
  let best = { middleMm: 0, lengthMm: 0 };
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i];
    const b = points[i + 1];
    if (a === undefined || b === undefined) continue;
    const lengthMm = distanceMm(a, b);
    if (lengthMm > best.lengthMm + 1e-6) best = { middleMm: before + lengthMm / 2, lengthMm };
    before += lengthMm;
  }
  return best;
}

const SHARES = [
  [0, 0],
  [-0.1, 0.5],
  [0.1, 0.5],
  [-0.2, 1],
  [0.2, 1],
  [-0.3, 2],
  [0.3, 2],
  [-0.4, 3],
  [0.4, 3],
] as const;

function label(run: Run, total: number, side: 1 | 0 | -1): LabelRequest {
  const stretch = side === 0 ? longestMiddleMm(run.points) : { middleMm: total / 2, lengthMm: total };
  return {
    id: run.id,
    lines: [
      { text: shortMm(run.lengthMm), heightMm: TEXT.normal, weight: "bold" },
      { text: `Ø ${shortMm(run.laidMm)} · ${run.wires}×`, heightMm: TEXT.small },
    ],
    target: along(run.points, stretch.middleMm).at,
    layer: "DIMENSIONS",
    places: ({ heightMm }) =>
      SHARES.flatMap(([share, cost]): LabelPlace[] => {
        const here = along(run.points, stretch.middleMm + share * stretch.lengthMm);
        const turnDeg = readableDeg(here.directionDeg);
        const away = (s: 1 | -1): number => s * (run.halfMm + (s === side ? GAP_MM + 0.6 : 1) + heightMm / 2);
        return ([1, -1] as const).map((s) => ({
          middle: offset(here.at, here.directionDeg, 0, away(s)),
          turnDeg,
          cost: side === 0 || s === side ? cost : cost + 1.5,
        }));
      }),
  };
}
