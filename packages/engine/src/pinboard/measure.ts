import {
  type BoxMm,
  boxOf,
  joinBoxes,
  rectangleDistance,
  rectanglesOverlap,
  segmentDistance,
  segmentRectangleDistance,
  segmentsMeet,
} from "@pinwright/kernel";
import { angleAtNodeDeg, boxesNear, sharedNode, wantedRoomMm } from "./crowding.ts";
import type { Grip, Item, Stretch } from "./item.ts";

/** A holder, and what comes nearest to it. */
export interface Room {
  readonly node: number;
  /** Node of the other holder, or null when it is a branch. */
  readonly otherNode: number | null;
  readonly otherBranch: number | null;
  readonly distanceMm: number;
  readonly wantedMm: number;
}

/** What a finished drawing is judged by. */
export interface Quality {
  readonly crossings: readonly (readonly [branch: number, branch: number])[];
  readonly overlaps: number;
  /** Pairs that leave less room than a hand wants, overlapping ones included. */
  readonly tight: readonly Room[];
  readonly box: BoxMm;
}

/** Two stretches from one peg that lie closer than this angle are one on the other. */
const SAME_DEG = 0.5;

/** Looks at every pair of items on the board. */
export function measure(items: readonly Item[], handRoomMm: number): Quality {
  const crossed = new Map<string, readonly [number, number]>();
  const tight: Room[] = [];
  let overlaps = 0;
  items.forEach((p, i) => {
    for (let j = 0; j < i; j++) {
      const q = items[j];
      if (q === undefined || !boxesNear(p.box, q.box, handRoomMm + 30)) continue;
      if (p.kind === "stretch" && q.kind === "stretch") {
        if (cross(p, q)) {
          const pair = [Math.min(p.branch, q.branch), Math.max(p.branch, q.branch)] as const;
          crossed.set(pair.join(), pair);
        }
        continue;
      }
      const room = roomBetween(p, q, handRoomMm);
      if (room === null) continue;
      if (room.distanceMm <= 0) overlaps++;
      if (room.distanceMm < room.wantedMm - 1e-6) tight.push(room);
    }
  });
  const box = items.reduce<BoxMm | null>((b, item) => (b === null ? item.box : joinBoxes(b, item.box)), null);
  return {
    crossings: [...crossed.values()],
    overlaps,
    tight,
    box: box ?? boxOf([{ xMm: 0, yMm: 0 }]) ?? { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 },
  };
}

function cross(p: Stretch, q: Stretch): boolean {
  const node = sharedNode(p, q);
  if (node >= 0) return angleAtNodeDeg(p, q, node) < SAME_DEG;
  if (p.branch === q.branch && (p.a === q.b || p.b === q.a)) return false;
  return segmentsMeet(p, q) || segmentDistance(p, q) < 1e-6;
}

function roomBetween(p: Item, q: Item, handRoomMm: number): Room | null {
  if (p.kind === "grip" && q.kind === "grip") {
    const distanceMm = rectanglesOverlap(p.rectangle, q.rectangle)
      ? 0
      : rectangleDistance(p.rectangle, q.rectangle);
    return { node: p.node, otherNode: q.node, otherBranch: null, distanceMm, wantedMm: handRoomMm };
  }
  const [holder, branch] = p.kind === "grip" ? [p, q] : [q, p];
  if (holder.kind !== "grip" || branch.kind !== "stretch") return null;
  return branchRoom(holder, branch, handRoomMm);
}

function branchRoom(holder: Grip, branch: Stretch, handRoomMm: number): Room | null {
  if (branch.branch === holder.branch && (branch.nodeA === holder.node || branch.nodeB === holder.node)) {
    return null;
  }
  const clear = segmentRectangleDistance(branch, holder.rectangle) - branch.radiusMm;
  const own = branch.branch === holder.branch;
  return {
    node: holder.node,
    otherNode: null,
    otherBranch: branch.branch,
    distanceMm: Math.max(0, clear),
    wantedMm: own ? 0 : wantedRoomMm(holder, branch, handRoomMm),
  };
}
