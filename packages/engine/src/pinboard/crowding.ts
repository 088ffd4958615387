import { type BoxMm, rectangleDistance, segmentDistance, segmentRectangleDistance } from "@pinwright/kernel";
import type { Grip, Item, Stretch } from "./item.ts";

/** Prices of what is wrong between two things on the board; only their order of size matters. */
export const PRICE = {
  crossing: 1_000_000,
  overlap: 20_000,
  /** A holder too near for hands: for being so, and for each mm. */
  room: 40,
  roomMm: 1,
  /** Branches too near for ties. */
  gapMm: 1.2,
  /** Branches that leave a peg at an angle in which no tie gun fits. */
  acuteDeg: 1,
} as const;

/** Free room between two bundles, for pegs and the tie gun. Common practice, no source. */
const BUNDLE_GAP_MM = 12;
/** Under this two branches lie on each other. */
const SAME_DEG = 1.5;

/** Share of a tail that can be asked as room between its holder and the branches at the tail's own start. */
const OWN_BREAKOUT_SHARE = 0.6;

/**
 * The price of two items being where they are; 0 when there is room enough. `handRoomMm` is the room that a
 * holder wants.
 */
export function pairPrice(p: Item, q: Item, handRoomMm: number): number {
  if (p.kind === "stretch") {
    return q.kind === "stretch" ? stretchPrice(p, q) : gripStretchPrice(q, p, handRoomMm);
  }
  return q.kind === "stretch" ? gripStretchPrice(p, q, handRoomMm) : gripPrice(p, q, handRoomMm);
}

/** How far apart two boxes must be for the items in them to cost nothing. */
export const reachMm = (handRoomMm: number): number => Math.max(handRoomMm, BUNDLE_GAP_MM + 30);

export const boxesNear = (a: BoxMm, b: BoxMm, withinMm: number): boolean =>
  a.minXMm < b.maxXMm + withinMm &&
  b.minXMm < a.maxXMm + withinMm &&
  a.minYMm < b.maxYMm + withinMm &&
  b.minYMm < a.maxYMm + withinMm;

const roomPrice = (distanceMm: number, wantedMm: number): number => {
  if (distanceMm <= 0) return PRICE.overlap;
  return distanceMm < wantedMm - 1e-6 ? PRICE.room + PRICE.roomMm * (wantedMm - distanceMm) : 0;
};

const gripPrice = (p: Grip, q: Grip, handRoomMm: number): number =>
  roomPrice(rectangleDistance(p.rectangle, q.rectangle), handRoomMm);

function gripStretchPrice(g: Grip, s: Stretch, handRoomMm: number): number {
  if (s.branch === g.branch) {
    if (s.nodeA === g.node || s.nodeB === g.node) return 0;
    return segmentRectangleDistance(s, g.rectangle) < s.radiusMm ? PRICE.overlap : 0;
  }
  return roomPrice(segmentRectangleDistance(s, g.rectangle) - s.radiusMm, wantedRoomMm(g, s, handRoomMm));
}

/** Room that a holder wants from a branch: that of a hand, but no more than its own tail can give. */
export const wantedRoomMm = (g: Grip, s: Stretch, handRoomMm: number): number =>
  s.nodeA === g.from || s.nodeB === g.from
    ? Math.min(handRoomMm, Math.max(0, g.tailMm - s.radiusMm) * OWN_BREAKOUT_SHARE)
    : handRoomMm;

/** The node that two stretches both end in, or −1. */
export const sharedNode = (p: Stretch, q: Stretch): number => {
  if (p.nodeA >= 0 && (p.nodeA === q.nodeA || p.nodeA === q.nodeB)) return p.nodeA;
  if (p.nodeB >= 0 && (p.nodeB === q.nodeA || p.nodeB === q.nodeB)) return p.nodeB;
  return -1;
};

/** Angle between two stretches that end in one node, seen from there, degrees; 180 for any of 90 and more. */
export function angleAtNodeDeg(p: Stretch, q: Stretch, node: number): number {
  const p1 = p.nodeA === node ? p.a : p.b;
  const p2 = p.nodeA === node ? p.b : p.a;
  const q1 = q.nodeA === node ? q.a : q.b;
  const q2 = q.nodeA === node ? q.b : q.a;
  const ux = p2.xMm - p1.xMm;
  const uy = p2.yMm - p1.yMm;
  const vx = q2.xMm - q1.xMm;
  const vy = q2.yMm - q1.yMm;
  const along = ux * vx + uy * vy;
  // No angle of 90° or more is too small for anyone, and most pairs at a large breakout end here.
  if (along <= 0) return 180;
  return (Math.atan2(Math.abs(ux * vy - uy * vx), along) * 180) / Math.PI;
}

function stretchPrice(p: Stretch, q: Stretch): number {
  const node = sharedNode(p, q);
  if (node >= 0) {
    const angle = angleAtNodeDeg(p, q, node);
    if (angle < SAME_DEG) return PRICE.crossing;
    const least = node === p.nodeA ? p.leastDegA : p.leastDegB;
    return angle < least - 1e-6 ? 10 + PRICE.acuteDeg * (least - angle) : 0;
  }
  const distance = segmentDistance(p, q);
  if (p.branch === q.branch) return bendPrice(p, q, distance);
  if (distance <= 0) return PRICE.crossing;
  const wanted = BUNDLE_GAP_MM + p.radiusMm + q.radiusMm;
  return distance < wanted ? PRICE.gapMm * (wanted - distance) : 0;
}

/** Two stretches of one bent branch: neighbours touch at the bend, others must keep apart. */
function bendPrice(p: Stretch, q: Stretch, distance: number): number {
  if (distance > 0) return 0;
  return p.b === q.a || q.b === p.a ? 0 : PRICE.crossing;
}
