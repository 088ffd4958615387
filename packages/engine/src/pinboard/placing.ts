import { type BoxMm, normaliseDeg, type PointMm, polar } from "@pinwright/kernel";
import { grip, holderRectangle, type Item, stretch } from "./item.ts";
import type { LimbStep } from "./limb.ts";
import type { BoardTree } from "./tree.ts";

/** A straight part of a limb: it turns by `turnDeg` from what comes before it, and goes on for `lengthMm`. */
export interface Leg {
  readonly turnDeg: number;
  readonly lengthMm: number;
}

/** A limb on the board. */
export interface PlacedLimb {
  /** Of each step: the node at its end, the direction in which it arrives there, and its line from `from`. */
  readonly ends: readonly PointMm[];
  readonly directions: readonly number[];
  readonly lines: readonly (readonly PointMm[])[];
  readonly items: readonly Item[];
  readonly box: BoxMm;
}

const NODE_EPSILON_MM = 1e-7;

/** Lays steps end to end along legs, from a point and a direction. The last leg goes on as far as is needed. */
export function placeLimb(
  tree: BoardTree,
  steps: readonly LimbStep[],
  legs: readonly Leg[],
  start: PointMm,
  directionDeg: number,
): PlacedLimb {
  const ends: PointMm[] = [];
  const directions: number[] = [];
  const lines: (readonly PointMm[])[] = [];
  let at = start;
  let leg = 0;
  let direction = normaliseDeg(directionDeg + (legs[0]?.turnDeg ?? 0));
  let along = polar(direction, 1);
  let left = legs.length > 1 ? (legs[0]?.lengthMm ?? 0) : Number.POSITIVE_INFINITY;
  for (const step of steps) {
    const line = [at];
    let rest = step.lengthMm;
    while (rest > left + NODE_EPSILON_MM) {
      at = { xMm: at.xMm + along.xMm * left, yMm: at.yMm + along.yMm * left };
      if (left > NODE_EPSILON_MM) line.push(at);
      rest -= left;
      leg++;
      direction = normaliseDeg(direction + (legs[leg]?.turnDeg ?? 0));
      along = polar(direction, 1);
      left = leg < legs.length - 1 ? (legs[leg]?.lengthMm ?? 0) : Number.POSITIVE_INFINITY;
    }
    at = { xMm: at.xMm + along.xMm * rest, yMm: at.yMm + along.yMm * rest };
    left -= rest;
    line.push(at);
    ends.push(at);
    directions.push(direction);
    lines.push(line);
  }
  const items: Item[] = [];
  for (let i = 0; i < steps.length; i++) {
    const step = steps[i];
    if (step !== undefined) addBranchItems(tree, step, lines[i] ?? [], directions[i] ?? 0, items);
  }
  return { ends, directions, lines, items, box: boxOfItems(items, start) };
}

/** What a branch takes up: its stretches, and the holder when it ends in a landing. */
export function addBranchItems(
  tree: BoardTree,
  step: LimbStep,
  line: readonly PointMm[],
  arrivesDeg: number,
  items: Item[],
): void {
  const branch = tree.branches[step.branch];
  const last = line.length - 1;
  for (let i = 0; i < last; i++) {
    const a = line[i];
    const b = line[i + 1];
    if (a === undefined || b === undefined) continue;
    items.push(
      stretch({
        branch: step.branch,
        a,
        b,
        nodeA: i === 0 ? step.from : -1,
        nodeB: i === last - 1 ? step.to : -1,
        leastDegA: tree.leastAngleDeg[step.from] ?? 0,
        leastDegB: tree.leastAngleDeg[step.to] ?? 0,
        radiusMm: branch?.radiusMm ?? 0,
      }),
    );
  }
  const end = line[last];
  const holder = tree.holders[step.to] ?? null;
  if (end !== undefined && holder !== null) {
    items.push(
      grip({
        node: step.to,
        branch: step.branch,
        from: step.from,
        tailMm: step.lengthMm,
        rectangle: holderRectangle(end, arrivesDeg, holder.widthMm, holder.depthMm),
      }),
    );
  }
}

/** The box round some items and a point. */
export function boxOfItems(items: readonly Item[], start: PointMm): BoxMm {
  let minXMm = start.xMm;
  let minYMm = start.yMm;
  let maxXMm = start.xMm;
  let maxYMm = start.yMm;
  for (const { box } of items) {
    if (box.minXMm < minXMm) minXMm = box.minXMm;
    if (box.minYMm < minYMm) minYMm = box.minYMm;
    if (box.maxXMm > maxXMm) maxXMm = box.maxXMm;
    if (box.maxYMm > maxYMm) maxYMm = box.maxYMm;
  }
  return { minXMm, minYMm, maxXMm, maxYMm };
}

/** A bend keeps this far from a node, so that a breakout can be tied on both sides. Common practice, no source. */
const BEND_FROM_NODE_MM = 35;

/**
 * The place nearest to `wantedMm` along a limb where it may be bent: within a branch that need not be straight,
 * clear of its nodes, or in the middle of a short one. Null when every branch must be straight.
 */
export function legalBendMm(tree: BoardTree, steps: readonly LimbStep[], wantedMm: number): number | null {
  let best: number | null = null;
  let from = 0;
  for (const step of steps) {
    const clear = Math.min(BEND_FROM_NODE_MM, step.lengthMm / 2);
    const at = Math.min(Math.max(wantedMm, from + clear), from + step.lengthMm - clear);
    if (tree.branches[step.branch]?.straight !== true) {
      if (best === null || Math.abs(at - wantedMm) < Math.abs(best - wantedMm)) best = at;
    }
    from += step.lengthMm;
  }
  return best;
}
