import { eachLeaf, leafBox, leavesOf } from "./leaves.ts";
import type { Box, GroupMark, LinkTarget, Mark, Page } from "./mark.ts";

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

/** What the marks of a group say, and the room they take; texts count where there are any. */
export function groupExtent(
  marks: readonly Mark[],
  dx: number,
  dy: number,
): { readonly box: Box; readonly text: string } | null {
  const texts: string[] = [];
  const boxes: { readonly box: Box; readonly isText: boolean }[] = [];
  eachLeaf(marks, (leaf, x, y) => {
    const own = leafBox(leaf);
    const isText = leaf.kind === "text";
    if (isText) texts.push(leaf.text.trim());
    boxes.push({ box: { ...own, xMm: own.xMm + x + dx, yMm: own.yMm + y + dy }, isText });
  });
  const counted = texts.length > 0 ? boxes.filter((b) => b.isText) : boxes;
  if (counted.length === 0) return null;
  const left = Math.min(...counted.map(({ box }) => box.xMm));
  const top = Math.min(...counted.map(({ box }) => box.yMm));
  const right = Math.max(...counted.map(({ box }) => box.xMm + box.widthMm));
  const bottom = Math.max(...counted.map(({ box }) => box.yMm + box.heightMm));
  return {
    box: { xMm: left, yMm: top, widthMm: right - left, heightMm: bottom - top },
    text: texts.join(" "),
  };
}

type Visit = (group: GroupMark, page: number, dx: number, dy: number) => void;

function eachGroup(pages: readonly Page[], visit: Visit): void {
  for (const [i, page] of pages.entries())
    eachLeaf(
      page.marks,
      () => undefined,
      (group, dx, dy) => {
        visit(group, i, dx + group.dxMm, dy + group.dyMm);
        return true;
      },
    );
}

/** Places that links may lead to, by name; the first of a name counts. */
export function anchorsOf(pages: readonly Page[]): ReadonlyMap<string, Place> {
  const anchors = new Map<string, Place>();
  eachGroup(pages, (group, page, dx, dy) => {
    if (group.anchor === undefined || anchors.has(group.anchor)) return;
    anchors.set(group.anchor, { page, yMm: groupExtent(group.marks, dx, dy)?.box.yMm ?? dy });
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
      const yMm = groupExtent(group.marks, dx, dy)?.box.yMm ?? dy;
      outline.push({ ...group.bookmark, page, yMm });
    }
    if (group.link === undefined) return;
    const to = targetOf(group.link, anchors);
    const extent = groupExtent(group.marks, dx, dy);
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
