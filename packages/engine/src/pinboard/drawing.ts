import { directionDeg, type PointMm, subtractPoints } from "@pinwright/kernel";
import { startHolder } from "./base.ts";
import type { Item } from "./item.ts";
import type { Layout } from "./layout.ts";
import type { Limb } from "./limb.ts";
import { addBranchItems } from "./placing.ts";
import type { BoardTree } from "./tree.ts";

/** Every node and line of a layout, by the numbers of the tree; lines run from a branch's `a` to its `b`. */
export interface Drawing {
  readonly nodeAt: readonly PointMm[];
  readonly lines: readonly (readonly PointMm[])[];
}

const NOWHERE: PointMm = { xMm: 0, yMm: 0 };

/** Reads a layout out. */
export function drawingOf(tree: BoardTree, layout: Layout): Drawing {
  const nodeAt = tree.nodes.map((_, i) => layout.base.nodeAt.get(i) ?? NOWHERE);
  const lines: (readonly PointMm[])[] = tree.branches.map((branch, i) => {
    const own = layout.base.lineOf.get(i);
    return own === undefined ? [] : own.from === branch.a ? own.line : own.line.toReversed();
  });
  layout.limbs.forEach((limb: Limb, i) => {
    const placed = layout.placedLimb(i);
    if (placed === null) return;
    limb.steps.forEach((step, k) => {
      nodeAt[step.to] = placed.ends[k] ?? NOWHERE;
      const line = placed.lines[k] ?? [];
      lines[step.branch] = tree.branches[step.branch]?.a === step.from ? line : line.toReversed();
    });
  });
  return { nodeAt, lines };
}

/** Everything on a drawing that takes room. */
export function itemsOf(tree: BoardTree, drawing: Drawing): Item[] {
  const items: Item[] = [];
  tree.branches.forEach((branch, i) => {
    const line = drawing.lines[i] ?? [];
    const step = { branch: i, from: branch.a, to: branch.b, lengthMm: branch.lengthMm };
    const before = line.at(-2) ?? line[0];
    const end = line.at(-1);
    const arrives = before === undefined || end === undefined ? 0 : directionDeg(subtractPoints(end, before));
    addBranchItems(tree, step, line, arrives, items);
    items.push(...startHolder(tree, step, line));
  });
  return items;
}
