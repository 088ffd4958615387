import type { PointMm } from "@pinwright/kernel";
import type { Layout } from "./layout.ts";
import type { Limb } from "./limb.ts";
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
  const lines: (readonly PointMm[])[] = tree.branches.map((_, i) => {
    const line = layout.base.lineOf.get(i);
    return line === undefined ? [] : forward(tree, i, line, layout.base.nodeAt);
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

/** A line of the base from `a` to `b`, whichever way the base was laid. */
function forward(
  tree: BoardTree,
  branch: number,
  line: readonly PointMm[],
  nodeAt: ReadonlyMap<number, PointMm>,
): readonly PointMm[] {
  const a = tree.branches[branch]?.a;
  return a !== undefined && line[0] === nodeAt.get(a) ? line : line.toReversed();
}
