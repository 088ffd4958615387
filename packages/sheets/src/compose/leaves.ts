import type { Box, GroupMark, Leaf, Mark, PagePoint, TextMark } from "./mark.ts";
import { textCorners } from "./text.ts";

/** A mark that is not a group, where its groups put it. */
export interface PlacedLeaf {
  readonly leaf: Leaf;
  /** What may be seen of it: the windows of all its groups together; null: everything. */
  readonly clip: Box | null;
  /** True when the body hash leaves it out. */
  readonly frame: boolean;
}

const moved = (p: PagePoint, dx: number, dy: number): PagePoint => ({ xMm: p.xMm + dx, yMm: p.yMm + dy });

/** The same mark, moved. */
const moveLeaf = (leaf: Leaf, dx: number, dy: number): Leaf => {
  if (dx === 0 && dy === 0) return leaf;
  switch (leaf.kind) {
    case "line":
      return { ...leaf, from: moved(leaf.from, dx, dy), to: moved(leaf.to, dx, dy) };
    case "polyline":
    case "polygon":
      return { ...leaf, points: leaf.points.map((p) => moved(p, dx, dy)) };
    case "area":
      return { ...leaf, rings: leaf.rings.map((ring) => ring.map((p) => moved(p, dx, dy))) };
    case "rect":
      return { ...leaf, box: { ...leaf.box, xMm: leaf.box.xMm + dx, yMm: leaf.box.yMm + dy } };
    case "circle":
    case "arc":
    case "text":
    case "code":
      return { ...leaf, at: moved(leaf.at, dx, dy) };
  }
};

/** The part that two boxes share; of no extent when they share nothing. */
const common = (a: Box, b: Box): Box => {
  const xMm = Math.max(a.xMm, b.xMm);
  const yMm = Math.max(a.yMm, b.yMm);
  return {
    xMm,
    yMm,
    widthMm: Math.max(0, Math.min(a.xMm + a.widthMm, b.xMm + b.widthMm) - xMm),
    heightMm: Math.max(0, Math.min(a.yMm + a.heightMm, b.yMm + b.heightMm) - yMm),
  };
};

/**
 * Visits all marks of a page but its groups in drawing order, each with how far its groups move it.
 * @param enter asked for each group; false passes over its marks
 */
export const eachLeaf = (
  marks: readonly Mark[],
  visit: (leaf: Leaf, dx: number, dy: number, clip: Box | null, frame: boolean) => void,
  enter: (group: GroupMark, dx: number, dy: number) => boolean = () => true,
): void => {
  const walk = (list: readonly Mark[], dx: number, dy: number, clip: Box | null, frame: boolean): void => {
    for (const mark of list) {
      if (mark.kind !== "group") {
        visit(mark, dx, dy, clip, frame);
        continue;
      }
      if (!enter(mark, dx, dy)) continue;
      const own =
        mark.clip === null ? null : { ...mark.clip, xMm: mark.clip.xMm + dx, yMm: mark.clip.yMm + dy };
      const both = own === null ? clip : clip === null ? own : common(own, clip);
      walk(mark.marks, dx + mark.dxMm, dy + mark.dyMm, both, frame || mark.part === "frame");
    }
  };
  walk(marks, 0, 0, null, false);
};

/** All marks of a page without their groups, in drawing order. */
export const leavesOf = (marks: readonly Mark[]): readonly PlacedLeaf[] => {
  const leaves: PlacedLeaf[] = [];
  eachLeaf(marks, (leaf, dx, dy, clip, frame) => {
    leaves.push({ leaf: moveLeaf(leaf, dx, dy), clip, frame });
  });
  return leaves;
};

const around = (points: readonly (readonly [number, number])[]): Box => {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const xMm = Math.min(...xs);
  const yMm = Math.min(...ys);
  return { xMm, yMm, widthMm: Math.max(...xs) - xMm, heightMm: Math.max(...ys) - yMm };
};

const pair = (p: PagePoint): readonly [number, number] => [p.xMm, p.yMm];

/** Axis-parallel box of a text on the page. */
const textBox = (mark: TextMark): Box => around(textCorners(mark));

/** Axis-parallel box of a mark on the page, without the width of its line. */
export const leafBox = (leaf: Leaf): Box => {
  switch (leaf.kind) {
    case "line":
      return around([pair(leaf.from), pair(leaf.to)]);
    case "polyline":
    case "polygon":
      return around(leaf.points.map(pair));
    case "area":
      return around(leaf.rings.flat().map(pair));
    case "rect":
      return leaf.box;
    case "circle":
    case "arc":
      return {
        xMm: leaf.at.xMm - leaf.radiusMm,
        yMm: leaf.at.yMm - leaf.radiusMm,
        widthMm: 2 * leaf.radiusMm,
        heightMm: 2 * leaf.radiusMm,
      };
    case "text":
      return textBox(leaf);
    case "code":
      return { ...leaf.at, widthMm: leaf.sizeMm, heightMm: leaf.sizeMm };
  }
};
