import { box, group } from "../compose/draw.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import type { Box, GroupMark, Leaf, PagePoint } from "../compose/mark.ts";

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

/** True if a stretch with a half width enters a window (Liang and Barsky). */
function enters(a: PagePoint, b: PagePoint, halfMm: number, w: Box): boolean {
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  let t0 = 0;
  let t1 = 1;
  for (const [p, q] of [
    [-dx, a.xMm - (w.xMm - halfMm)],
    [dx, w.xMm + w.widthMm + halfMm - a.xMm],
    [-dy, a.yMm - (w.yMm - halfMm)],
    [dy, w.yMm + w.heightMm + halfMm - a.yMm],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const t = q / p;
    if (p < 0) t0 = Math.max(t0, t);
    else t1 = Math.min(t1, t);
  }
  return t0 <= t1;
}

/** True if anything of a mark shows in a window: lines by their course, all else by their box. */
function shows({ leaf, reach }: Cuttable, window: Box): boolean {
  if (!meets(reach, window)) return false;
  if (leaf.kind === "line") return enters(leaf.from, leaf.to, leaf.stroke.widthMm / 2, window);
  if (leaf.kind !== "polyline") return true;
  return leaf.points.some((p, i) => {
    const next = leaf.points[i + 1];
    return next !== undefined && enters(p, next, leaf.stroke.widthMm / 2, window);
  });
}

/** Marks that a window on the scene shows. */
export function through(marks: readonly Cuttable[], window: Box): readonly Leaf[] {
  return marks.filter((m) => shows(m, window)).map((m) => m.leaf);
}

/**
 * What a window on a drawing shows, set with its upper left corner at a place on a page and cut off there.
 * @param hash of the whole drawing
 */
export function windowMarks(
  marks: readonly Cuttable[],
  window: Box,
  at: { readonly xMm: number; readonly yMm: number },
  hash: string,
): GroupMark {
  const shown = group(
    through(marks, window),
    at.xMm - window.xMm,
    at.yMm - window.yMm,
    box(at.xMm, at.yMm, window.widthMm, window.heightMm),
  );
  return { ...shown, hash };
}
