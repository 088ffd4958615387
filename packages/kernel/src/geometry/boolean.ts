import {
  booleanOp,
  ClipType,
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Path64,
  type Paths64,
} from "clipper2-ts";
import type { PointMm } from "./point.ts";
import type { RingMm } from "./polygon.ts";

/** Polygon work is done in whole micrometres, so that it is exact and gives the same rings everywhere. */
const UM_PER_MM = 1000;

/** Largest deviation of a rounded corner from its true arc, in µm. */
const ARC_TOLERANCE_UM = 20;

const MITER_LIMIT = 2;

const toPath = (ring: RingMm): Path64 =>
  ring.map((p) => ({ x: Math.round(p.xMm * UM_PER_MM), y: Math.round(p.yMm * UM_PER_MM) }));

const toRings = (paths: Paths64): PointMm[][] =>
  paths.map((path) => path.map((p) => ({ xMm: p.x / UM_PER_MM, yMm: p.y / UM_PER_MM })));

/**
 * Shapes grown by `byMm` (shrunk when negative). Outer rings run anticlockwise and holes clockwise, in and out.
 * Corners are rounded (within 0.02 mm of the arc) or mitred (up to twice the distance, beyond that squared).
 * A shape that shrinks to nothing is gone.
 */
export const offsetRings = (
  rings: readonly RingMm[],
  byMm: number,
  corners: "round" | "miter" = "round",
): PointMm[][] =>
  toRings(
    inflatePaths(
      rings.map(toPath),
      byMm * UM_PER_MM,
      corners === "round" ? JoinType.Round : JoinType.Miter,
      EndType.Polygon,
      MITER_LIMIT,
      ARC_TOLERANCE_UM,
    ),
  );

/** The area within `widthMm`/2 of a polyline, ends and corners rounded: a wire's lane, a router's groove. */
export const thickenLine = (line: readonly PointMm[], widthMm: number): PointMm[][] =>
  toRings(
    inflatePaths(
      [toPath(line)],
      (widthMm / 2) * UM_PER_MM,
      JoinType.Round,
      EndType.Round,
      MITER_LIMIT,
      ARC_TOLERANCE_UM,
    ),
  );

const combine = (kind: ClipType, a: readonly RingMm[], b: readonly RingMm[]): PointMm[][] =>
  toRings(booleanOp(kind, a.map(toPath), b.map(toPath), FillRule.NonZero));

/** What lies in any of the rings; outer rings anticlockwise, holes clockwise. */
export const unionRings = (a: readonly RingMm[], b: readonly RingMm[] = []): PointMm[][] =>
  combine(ClipType.Union, a, b);

/** What lies in `a` and not in `b`. */
export const differenceRings = (a: readonly RingMm[], b: readonly RingMm[]): PointMm[][] =>
  combine(ClipType.Difference, a, b);

/** What lies in both. */
export const intersectionRings = (a: readonly RingMm[], b: readonly RingMm[]): PointMm[][] =>
  combine(ClipType.Intersection, a, b);
