import { common, leavesOf } from "./leaves.ts";
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

const extent = (corners: Corners, x: number, y: number): [number, number] => {
  const along = corners.map(([cx, cy]) => cx * x + cy * y);
  return [Math.min(...along), Math.max(...along)];
};

/** True if two turned rectangles share area (separating axis theorem). */
export const cornersOverlap = (a: Corners, b: Corners): boolean => {
  for (const corners of [a, b]) {
    const [p, q, r] = corners;
    if (p === undefined || q === undefined || r === undefined) return false;
    for (const [from, to] of [
      [p, q],
      [q, r],
    ] as const) {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      if (length === 0) return false;
      const x = (to[0] - from[0]) / length;
      const y = (to[1] - from[1]) / length;
      const [minA, maxA] = extent(a, x, y);
      const [minB, maxB] = extent(b, x, y);
      if (maxA - SLACK_MM <= minB || maxB - SLACK_MM <= minA) return false;
    }
  }
  return true;
};

const visible = (left: number, top: number, right: number, bottom: number, clip: Box | null): boolean => {
  if (clip === null) return true;
  const seen = common({ xMm: left, yMm: top, widthMm: right - left, heightMm: bottom - top }, clip);
  return seen.widthMm > SLACK_MM && seen.heightMm > SLACK_MM;
};

/**
 * Pairs of texts on a page whose boxes share area. A sheet has none: text never overlaps text. Texts that a
 * window hides wholly do not count.
 */
export const overlaps = (page: Page): readonly (readonly [TextMark, TextMark])[] => {
  const shown: Shown[] = [];
  for (const { leaf, clip } of leavesOf(page.marks)) {
    if (leaf.kind !== "text" || leaf.text.trim() === "") continue;
    const corners = textCorners(leaf);
    const [left, right] = extent(corners, 1, 0);
    const [top, bottom] = extent(corners, 0, 1);
    if (visible(left, top, right, bottom, clip))
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
};
