import type { PinboardBranch, SizedBranch } from "@pinwright/engine";
import { LINE, line, polyline, stroke } from "../compose/draw.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import type { Obstacle } from "../compose/obstacle.ts";
import { along, offset } from "../compose/plane.ts";

/** A branch as marks. */
export interface BranchDrawing {
  readonly id: string;
  readonly points: readonly PagePoint[];
  /** Half of the laid bundle's diameter. */
  readonly halfMm: number;
  /** Edge and ground of the bundle, under everything else: first all edges, then all grounds. */
  readonly edge: Mark;
  readonly ground: Mark;
  /** Centre line and ties. */
  readonly marks: readonly Mark[];
  readonly obstacles: readonly Obstacle[];
}

/** A tie: a bar across the bundle. */
function tie(points: readonly PagePoint[], distance: number, halfMm: number): Mark {
  const { at, directionDeg } = along(points, distance);
  const reach = halfMm + 1;
  return line(
    offset(at, directionDeg, 0, -reach),
    offset(at, directionDeg, 0, reach),
    stroke("ink", LINE.frame),
    "TIES",
  );
}

/** Draws a branch: the bundle at its laid diameter, its centre line and its ties. */
export function drawBranch(
  branch: PinboardBranch,
  points: readonly PagePoint[],
  sized: SizedBranch | undefined,
): BranchDrawing {
  const laidMm = sized?.bundle.laidMm ?? 1;
  const halfMm = laidMm / 2;
  const obstacles: Obstacle[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const a = points[i];
    const b = points[i + 1];
    if (a !== undefined && b !== undefined) {
      obstacles.push({ kind: "stretch", a, b, halfMm: halfMm + 0.6 });
    }
  }
  return {
    id: branch.id,
    points,
    halfMm,
    edge: polyline(points, stroke("ink", laidMm + 2 * LINE.thin), "BRANCHES"),
    ground: polyline(points, stroke("tint", laidMm), "BRANCHES"),
    marks: [
      polyline(points, stroke("accent", LINE.medium), "BRANCHES"),
      ...branch.tiesMm.map((t) => tie(points, t, halfMm)),
    ],
    obstacles,
  };
}
