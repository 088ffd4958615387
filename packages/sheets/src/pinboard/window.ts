import { box, group } from "../compose/draw.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import type { Box, GroupMark, Leaf } from "../compose/mark.ts";

/** Marks of a scene with the boxes that they reach, worked out once for all windows. */
export interface Cuttable {
  readonly leaf: Leaf;
  readonly reach: Box;
}

/** Prepares marks to be looked at through windows. */
export function cuttable(marks: Parameters<typeof leavesOf>[0]): readonly Cuttable[] {
  return leavesOf(marks).map(({ leaf }) => {
    const own = leafBox(leaf);
    const half = "stroke" in leaf && leaf.stroke !== null ? leaf.stroke.widthMm / 2 : 0;
    return {
      leaf,
      reach: box(own.xMm - half, own.yMm - half, own.widthMm + 2 * half, own.heightMm + 2 * half),
    };
  });
}

const meets = (a: Box, b: Box): boolean =>
  a.xMm < b.xMm + b.widthMm &&
  b.xMm < a.xMm + a.widthMm &&
  a.yMm < b.yMm + b.heightMm &&
  b.yMm < a.yMm + a.heightMm;

/** Marks that a window on the scene shows. */
export function through(marks: readonly Cuttable[], window: Box): readonly Leaf[] {
  return marks.filter((m) => meets(m.reach, window)).map((m) => m.leaf);
}

/** What a window on the scene shows, set with its upper left corner at a place on a page and cut off there. */
export function windowMarks(
  marks: readonly Cuttable[],
  window: Box,
  at: { readonly xMm: number; readonly yMm: number },
): GroupMark {
  return group(
    through(marks, window),
    at.xMm - window.xMm,
    at.yMm - window.yMm,
    box(at.xMm, at.yMm, window.widthMm, window.heightMm),
  );
}
