import type { PinboardBranch, SizedBranch } from "@pinwright/engine";
import { LINE, line, polyline, stroke, TEXT } from "../compose/draw.ts";
import type { LabelPlace, LabelRequest, Obstacle } from "../compose/label-placer.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { shortMm } from "../compose/number.ts";
import { along, directionDeg, distanceMm, lengthOf, offset, readableDeg } from "../compose/plane.ts";

/** A branch as marks. */
export interface BranchDrawing {
  readonly id: string;
  readonly points: readonly PagePoint[];
  /** The bundle itself, under everything else. */
  readonly ground: readonly Mark[];
  /** Centre line, ties and dimension. */
  readonly marks: readonly Mark[];
  readonly obstacles: readonly Obstacle[];
  readonly label: LabelRequest | null;
}

/** From the edge of the bundle to the dimension line. */
const DIMENSION_GAP_MM = 4;
const ARROW_MM = 2.2;
/** A straight branch shorter than this has no room for arrows; its length stands in the label alone. */
const DIMENSION_LEAST_MM = 14;

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

/** Dimension line beside a straight branch, true to scale from node to node. */
function dimension(a: PagePoint, b: PagePoint, halfMm: number): Mark[] {
  const direction = directionDeg(a, b);
  const left = halfMm + DIMENSION_GAP_MM;
  const from = offset(a, direction, 0, left);
  const to = offset(b, direction, 0, left);
  const pen = stroke("ink", LINE.hair);
  const extension = (p: PagePoint): Mark =>
    line(offset(p, direction, 0, halfMm + 0.8), offset(p, direction, 0, left + 1.5), pen, "DIMENSIONS");
  return [
    extension(a),
    extension(b),
    line(from, to, pen, "DIMENSIONS"),
    arrow(from, direction + 180),
    arrow(to, direction),
  ];
}

/** A tie: a bar across the bundle. */
function tie(points: readonly PagePoint[], distance: number, halfMm: number): Mark {
  const { at, directionDeg: direction } = along(points, distance);
  const reach = halfMm + 1;
  return line(
    offset(at, direction, 0, -reach),
    offset(at, direction, 0, reach),
    stroke("ink", LINE.frame),
    "TIES",
  );
}

/** Draws a branch: the bundle at its laid diameter, its centre line, its ties and its length. */
export function drawBranch(
  branch: PinboardBranch,
  points: readonly PagePoint[],
  sized: SizedBranch | undefined,
): BranchDrawing {
  const laidMm = sized?.bundle.laidMm ?? 1;
  const halfMm = laidMm / 2;
  const [a] = points;
  const b = points[points.length - 1];
  const straight = points.length === 2 && a !== undefined && b !== undefined;
  const long = straight && distanceMm(a, b) >= DIMENSION_LEAST_MM;
  const dimensions = long ? dimension(a, b, halfMm) : [];
  const obstacles: Obstacle[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const p = points[i];
    const q = points[i + 1];
    if (p === undefined || q === undefined) continue;
    obstacles.push({ kind: "stretch", a: p, b: q, halfMm: halfMm + 0.6 });
    if (!long) continue;
    const direction = directionDeg(p, q);
    const left = halfMm + DIMENSION_GAP_MM;
    obstacles.push({
      kind: "stretch",
      a: offset(p, direction, 0, left),
      b: offset(q, direction, 0, left),
      halfMm: 0.5,
    });
  }
  return {
    id: branch.id,
    points,
    ground: [
      polyline(points, stroke("ink", laidMm + 2 * LINE.thin), "BRANCHES"),
      polyline(points, stroke("tint", laidMm), "BRANCHES"),
    ],
    marks: [
      polyline(points, stroke("accent", LINE.medium), "BRANCHES"),
      ...branch.tiesMm.map((t) => tie(points, t, halfMm)),
      ...dimensions,
    ],
    obstacles,
    label: branchLabel(branch, points, halfMm, sized, long),
  };
}

function branchLabel(
  branch: PinboardBranch,
  points: readonly PagePoint[],
  halfMm: number,
  sized: SizedBranch | undefined,
  dimensioned: boolean,
): LabelRequest | null {
  const total = lengthOf(points);
  if (total === 0) return null;
  const wires = sized === undefined ? "" : `Ø ${shortMm(sized.bundle.laidMm)} · ${sized.wireIds.length}×`;
  const middle = along(points, total / 2);
  return {
    id: branch.id,
    lines: [
      { text: shortMm(branch.lengthMm), heightMm: TEXT.normal, weight: "bold" },
      ...(wires === "" ? [] : [{ text: wires, heightMm: TEXT.small }]),
    ],
    target: middle.at,
    layer: "DIMENSIONS",
    places: ({ heightMm }) => {
      const places: LabelPlace[] = [];
      for (const [share, cost] of [
        [0.5, 0],
        [0.4, 0.5],
        [0.6, 0.5],
        [0.3, 1],
        [0.7, 1],
        [0.2, 2],
        [0.8, 2],
      ] as const) {
        const here = along(points, total * share);
        const turnDeg = readableDeg(here.directionDeg);
        const outer = halfMm + (dimensioned ? DIMENSION_GAP_MM + 0.6 : 1) + heightMm / 2;
        const inner = halfMm + 1.2 + heightMm / 2;
        places.push({ middle: offset(here.at, here.directionDeg, 0, outer), turnDeg, cost });
        places.push({ middle: offset(here.at, here.directionDeg, 0, -inner), turnDeg, cost: cost + 1.5 });
      }
      return places;
    },
  };
}
