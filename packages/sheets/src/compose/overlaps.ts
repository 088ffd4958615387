import { leavesOf } from "./leaves.ts";
import type { Box, Page, TextMark } from "./mark.ts";
import { textCorners } from "./text.ts";

type Corners = readonly (readonly [number, number])[];

interface Shown {
  readonly mark: TextMark;
  readonly corners: Corners;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Overlap up to this is rounding, not touching ink. */
const SLACK_MM = 0.01;

function extent(corners: Corners, x: number, y: number): [number, number] {
  const along = corners.map(([cx, cy]) => cx * x + cy * y);
  return [Math.min(...along), Math.max(...along)];
}

/** True if two convex shapes share area (separating axis theorem). */
export function cornersOverlap(a: Corners, b: Corners): boolean {
  for (const corners of [a, b]) {
    for (let i = 0; i < corners.length; i++) {
      const [fromX, fromY] = corners[i] ?? [0, 0];
      const [toX, toY] = corners[(i + 1) % corners.length] ?? [0, 0];
      const length = Math.hypot(toX - fromX, toY - fromY);
      if (length === 0) continue;
      const x = (fromY - toY) / length;
      const y = (toX - fromX) / length;
      const [minA, maxA] = extent(a, x, y);
      const [minB, maxB] = extent(b, x, y);
      if (maxA - SLACK_MM <= minB || maxB - SLACK_MM <= minA) return false;
    }
  }
  return a.length > 2 && b.length > 2;
}

/** The part of a convex shape on one side of a line along the page (Sutherland and Hodgman). */
function cut(shape: Corners, axis: 0 | 1, limit: number, keepBelow: boolean): Corners {
  const kept: (readonly [number, number])[] = [];
  shape.forEach((p, i) => {
    const q = shape[(i + 1) % shape.length] ?? p;
    const inP = keepBelow ? p[axis] <= limit : p[axis] >= limit;
    const inQ = keepBelow ? q[axis] <= limit : q[axis] >= limit;
    if (inP) kept.push(p);
    if (inP === inQ) return;
    const t = (limit - p[axis]) / (q[axis] - p[axis]);
    kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
  });
  return kept;
}

/** What a window shows of a convex shape. */
function seen(shape: Corners, clip: Box | null): Corners {
  if (clip === null) return shape;
  const left = cut(shape, 0, clip.xMm, false);
  const right = cut(left, 0, clip.xMm + clip.widthMm, true);
  const top = cut(right, 1, clip.yMm, false);
  return cut(top, 1, clip.yMm + clip.heightMm, true);
}

/**
 * Pairs of texts on a page whose boxes share area. A sheet has none: text never overlaps text. Of a text behind
 * a window only what shows counts.
 */
export function overlaps(page: Page): readonly (readonly [TextMark, TextMark])[] {
  const shown: Shown[] = [];
  for (const { leaf, clip } of leavesOf(page.marks)) {
    if (leaf.kind !== "text" || leaf.text.trim() === "") continue;
    const corners = seen(textCorners(leaf), clip);
    if (corners.length < 3) continue;
    const [left, right] = extent(corners, 1, 0);
    const [top, bottom] = extent(corners, 0, 1);
    shown.push({ mark: leaf, corners, left, right, top, bottom });
  }
  shown.sort((a, b) => a.left - b.left);
  const pairs: (readonly [TextMark, TextMark])[] = [];
  shown.forEach((a, i) => {
    for (let j = i + 1; j < shown.length; j++) {
      const b = shown[j];
      if (b === undefined || b.left >= a.right) break;
      if (a.top >= b.bottom || b.top >= a.bottom) continue;
      if (cornersOverlap(a.corners, b.corners)) pairs.push([a.mark, b.mark]);
    }
  });
  return pairs;
}
