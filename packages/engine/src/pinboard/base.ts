import { directionDeg, normaliseDeg, type PointMm, subtractPoints } from "@pinwright/kernel";
import { grip, holderRectangle, type Item } from "./item.ts";
import type { LimbStep } from "./limb.ts";
import { boxOfItems, type Leg, placeLimb } from "./placing.ts";
import type { Base } from "./task.ts";
import type { BoardTree } from "./tree.ts";

const ORIGIN: PointMm = { xMm: 0, yMm: 0 };

/** The holder of a landing that a line starts at, facing along the line's first stretch. */
export function startHolder(
  tree: BoardTree,
  step: LimbStep | undefined,
  line: readonly PointMm[] | undefined,
): Item[] {
  const a = line?.[0];
  const b = line?.[1];
  const holder = step === undefined ? null : (tree.holders[step.from] ?? null);
  if (step === undefined || a === undefined || b === undefined || holder === null) return [];
  return [
    grip({
      node: step.from,
      branch: step.branch,
      from: step.to,
      tailMm: step.lengthMm,
      rectangle: holderRectangle(a, directionDeg(subtractPoints(a, b)), holder.widthMm, holder.depthMm),
    }),
  ];
}

/** A trunk, laid along `legs` from the origin to the right. */
export function trunkBase(tree: BoardTree, steps: readonly LimbStep[], legs: readonly Leg[]): Base {
  const placed = placeLimb(tree, steps, legs, ORIGIN, 0);
  const nodeAt = new Map<number, PointMm>();
  const directionAt = new Map<number, number>();
  const lineOf = new Map<number, { from: number; line: readonly PointMm[] }>();
  const first = steps[0];
  nodeAt.set(first?.from ?? tree.root, ORIGIN);
  directionAt.set(first?.from ?? tree.root, normaliseDeg(legs[0]?.turnDeg ?? 0));
  steps.forEach((step, i) => {
    nodeAt.set(step.to, placed.ends[i] ?? ORIGIN);
    directionAt.set(step.to, placed.directions[i] ?? 0);
    lineOf.set(step.branch, { from: step.from, line: placed.lines[i] ?? [] });
  });
  const items = [...placed.items, ...startHolder(tree, first, placed.lines[0])];
  return { nodeAt, directionAt, lineOf, items, box: boxOfItems(items, ORIGIN), isHeld: false };
}

/** The root alone, at the origin. */
export function rootBase(root: number): Base {
  return {
    nodeAt: new Map([[root, ORIGIN]]),
    directionAt: new Map([[root, 0]]),
    lineOf: new Map(),
    items: [],
    box: boxOfItems([], ORIGIN),
    isHeld: false,
  };
}
