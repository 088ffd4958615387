import { group } from "./draw.ts";
import type { Box, Mark } from "./mark.ts";
import { taggedBlock } from "./tag.ts";

/** A piece of a page that is never broken. Its marks have their origin at its own top left corner. */
export interface Block {
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  /** Set again at the top of a page that starts with this block: the header of its table. */
  readonly repeat?: Block;
  /**
   * Not left alone at the foot of a page: the next block comes with it, and at least this much of what follows.
   * A heading over a heading so keeps both with the first row under them.
   */
  readonly keepMm?: number;
}

/** White space between two blocks. */
export function gap(heightMm: number): Block {
  return { heightMm, marks: [] };
}

/** One block made of two, the second below the first. */
export function stacked(upper: Block, lower: Block): Block {
  return {
    heightMm: upper.heightMm + lower.heightMm,
    marks: [...upper.marks, group(lower.marks, 0, upper.heightMm)],
  };
}

/** One block made of two, the second at the right of the first. */
export function beside(left: Block, right: Block, rightFromMm: number): Block {
  return {
    heightMm: Math.max(left.heightMm, right.heightMm),
    marks: [...left.marks, group(right.marks, rightFromMm, 0)],
  };
}

/** Height that a block takes with all that it is kept together with. */
function keptMm(blocks: readonly Block[], index: number): number {
  const block = blocks[index];
  if (block === undefined) return 0;
  const after = block.keepMm === undefined ? 0 : Math.max(block.keepMm, keptMm(blocks, index + 1));
  return block.heightMm + after;
}

/**
 * Sets blocks one below the other into the bodies of pages; a block that does not fit starts the next page. A
 * block that is higher than a body stands on a page by itself: whoever makes blocks keeps them lower.
 * @param bodyOf the body of page n, counted from 0
 */
export function flow(blocks: readonly Block[], bodyOf: (page: number) => Box): Mark[][] {
  const pages: Mark[][] = [[]];
  let body = bodyOf(0);
  let yMm = body.yMm;
  let empty = true;
  const set = (block: Block): void => {
    if (block.marks.length > 0) pages[pages.length - 1]?.push(group(block.marks, body.xMm, yMm));
    yMm += block.heightMm;
  };
  for (const [index, block] of blocks.entries()) {
    if (!empty && yMm + keptMm(blocks, index) > body.yMm + body.heightMm + 1e-6) {
      body = bodyOf(pages.length);
      pages.push([]);
      yMm = body.yMm;
      empty = true;
    }
    if (empty && block.marks.length === 0) continue;
    // Whoever hears the page has heard the header of the table.
    if (empty && block.repeat !== undefined && pages.length > 1)
      set(taggedBlock({ role: "Artifact" }, block.repeat));
    set(block);
    empty = false;
  }
  return pages;
}
