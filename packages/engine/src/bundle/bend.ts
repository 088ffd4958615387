import type { Shop } from "@pinwright/book";
import { roundTo } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../model/index.ts";

/** A bundle that turns at a waypoint from one branch into another. */
export interface Turn {
  readonly harnessId: string;
  readonly waypointId: string;
  /** Change of direction, 0 (straight on) to 180 (back). */
  readonly turnDeg: number;
  /** Diameter of the bundle that turns, as laid. */
  readonly diameterMm: number;
  readonly branches: readonly [BranchAtTurn, BranchAtTurn];
}

interface BranchAtTurn {
  readonly id: string;
  readonly lengthMm: number;
}

/**
 * Whether a bundle can be bent as its branches run. A fillet of radius r = bend multiple × diameter touches both
 * branches r·tan(θ/2) from the corner; half of each branch is there for it, the other half belongs to its other end.
 * Finding `bend-tight` when it does not fit, with the radius that would. Radius multiple: the shop's `bend_multiple`.
 */
export const checkTurn = (turn: Turn, shop: Pick<Shop, "numbers">): Finding | null => {
  const [a, b] = turn.branches;
  const roomMm = Math.min(a.lengthMm, b.lengthMm) / 2;
  const radiusMm = shop.numbers.bend_multiple * turn.diameterMm;
  const half = Math.tan((Math.min(turn.turnDeg, 180) * Math.PI) / 360);
  const needs = radiusMm * half;
  if (needs <= roomMm) return null;
  return makeFinding("bend-tight", "warning", [turn.waypointId, turn.harnessId, a.id, b.id], {
    turn_deg: roundTo(turn.turnDeg, 0.1),
    diameter_mm: turn.diameterMm,
    radius_mm: roundTo(radiusMm, 0.1),
    tangent_mm: roundTo(Math.min(needs, LONGEST_MM), 0.1),
    room_mm: roundTo(roomMm, 0.1),
    radius_possible_mm: roundTo(roomMm / half, 0.1),
  });
};

/** A bundle that doubles back has no fillet at all; its tangent is shown as this. */
const LONGEST_MM = 100_000;
