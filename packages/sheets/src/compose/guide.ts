import { eachLeaf, leafBox, leavesOf } from "./leaves.ts";
import type { Box, GroupMark, Leaf, LinkTarget, Mark, Page } from "./mark.ts";

/** A place of a document: page counted from 0, and height on it from its top edge. */
export interface Place {
  readonly page: number;
  readonly yMm: number;
}

/** A stretch of a page that leads somewhere. */
export interface PageLink {
  readonly box: Box;
  readonly to: Place | { readonly url: string };
  /** What is written there. */
  readonly text: string;
}

/** A line of the outline. */
export interface Bookmark extends Place {
  readonly title: string;
  readonly level: number;
}

/** Where a document leads its reader. */
export interface Guide {
  readonly outline: readonly Bookmark[];
  /** Links of each page. */
  readonly links: readonly (readonly PageLink[])[];
  /** Anchors that links name and no group has. */
  readonly missing: readonly string[];
}

interface Extent {
  readonly box: Box;
  readonly text: string;
}

/** Extents of groups about their own origin: a book asks for that of each several times, and groups never change. */
const extents = new WeakMap<GroupMark, Extent | null>();

/** What the marks of a group say, and the room they take about its own origin; texts count where there are any. */
function ownExtent(group: GroupMark): Extent | null {
  const known = extents.get(group);
  if (known !== undefined) return known;
  const made = measured(group.marks);
  extents.set(group, made);
  return made;
}

function measured(marks: readonly Mark[]): Extent | null {
  const texts: string[] = [];
  let left = Number.POSITIVE_INFINITY;
  let top = left;
  let right = -left;
  let bottom = -left;
  const leaves: { readonly leaf: Leaf; readonly x: number; readonly y: number }[] = [];
  eachLeaf(marks, (leaf, x, y) => {
    if (leaf.kind === "text") texts.push(leaf.text.trim());
    leaves.push({ leaf, x, y });
  });
  for (const { leaf, x, y } of leaves) {
    if (texts.length > 0 && leaf.kind !== "text") continue;
    const box = leafBox(leaf);
    left = Math.min(left, box.xMm + x);
    top = Math.min(top, box.yMm + y);
    right = Math.max(right, box.xMm + x + box.widthMm);
    bottom = Math.max(bottom, box.yMm + y + box.heightMm);
  }
  if (left > right) return null;
  return {
    box: { xMm: left, yMm: top, widthMm: right - left, heightMm: bottom - top },
    text: texts.join(" "),
  };
}

/** What a group says, and the room it takes where its origin lies at `dx`, `dy` of the page. */
export function groupExtent(group: GroupMark, dx: number, dy: number): Extent | null {
  const own = ownExtent(group);
  if (own === null) return null;
  return { ...own, box: { ...own.box, xMm: own.box.xMm + dx, yMm: own.box.yMm + dy } };
}

type Visit = (group: GroupMark, page: number, dx: number, dy: number) => void;

function eachGroup(pages: readonly Page[], visit: Visit): void {
  const walk = (marks: readonly Mark[], page: number, dx: number, dy: number): void => {
    for (const mark of marks) {
      if (mark.kind !== "group") continue;
      const x = dx + mark.dxMm;
      const y = dy + mark.dyMm;
      visit(mark, page, x, y);
      walk(mark.marks, page, x, y);
    }
  };
  for (const [i, page] of pages.entries()) walk(page.marks, i, 0, 0);
}

/** Places that links may lead to, by name; the first of a name counts. */
export function anchorsOf(pages: readonly Page[]): ReadonlyMap<string, Place> {
  const anchors = new Map<string, Place>();
  eachGroup(pages, (group, page, dx, dy) => {
    if (group.anchor === undefined || anchors.has(group.anchor)) return;
    anchors.set(group.anchor, { page, yMm: groupExtent(group, dx, dy)?.box.yMm ?? dy });
  });
  return anchors;
}

/** Where a link leads; undefined: nowhere in this document. */
export function targetOf(link: LinkTarget, anchors: ReadonlyMap<string, Place>): PageLink["to"] | undefined {
  return "url" in link ? link : anchors.get(link.anchor);
}

/** Outline and links of a document, for PDF and for whoever reads it on a screen. */
export function guideOf(pages: readonly Page[]): Guide {
  const anchors = anchorsOf(pages);
  const outline: Bookmark[] = [];
  const links: PageLink[][] = pages.map(() => []);
  const missing = new Set<string>();
  eachGroup(pages, (group, page, dx, dy) => {
    if (group.bookmark !== undefined) {
      const yMm = groupExtent(group, dx, dy)?.box.yMm ?? dy;
      outline.push({ ...group.bookmark, page, yMm });
    }
    if (group.link === undefined) return;
    const to = targetOf(group.link, anchors);
    const extent = groupExtent(group, dx, dy);
    if (to === undefined && "anchor" in group.link) missing.add(group.link.anchor);
    if (to !== undefined && extent !== null) links[page]?.push({ ...extent, to });
  });
  return { outline, links, missing: [...missing] };
}

/** What is written on a page, in the order of reading, and where it stands. */
export function pageTexts(page: Page): readonly { readonly text: string; readonly box: Box }[] {
  return leavesOf(page.marks).flatMap(({ leaf }) =>
    leaf.kind === "text" && leaf.text.trim() !== "" ? [{ text: leaf.text.trim(), box: leafBox(leaf) }] : [],
  );
}
