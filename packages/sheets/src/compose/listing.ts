import type { SheetLanguage } from "@pinwright/words";
import { cautionBlock } from "./caution.ts";
import { assemble, type PageBody, type SheetDocument } from "./document.ts";
import { at, box, group, LINE, line, stroke, TEXT, write } from "./draw.ts";
import { type Block, flow } from "./flow.ts";
import type { Grid } from "./grid.ts";
import type { Box, Mark, Weight } from "./mark.ts";
import { frameOf, type Paper } from "./paper.ts";
import { tagged } from "./tag.ts";
import { leadingMm, textWidthMm } from "./text.ts";
import { type Identity, TITLE_BLOCK_MM } from "./title-block.ts";
import { wrap } from "./wrap.ts";

/** What stands at the head of every page of a list. */
export interface Heading {
  /** Short and big: the harness's number. */
  readonly badge: string;
  /** What the sheet is, a line for each language. */
  readonly title: string;
  readonly subtitle: string;
  /** Figures that the reader wants first, set at the right. */
  readonly facts: readonly string[];
}

export interface Listing {
  readonly identity: Identity;
  readonly language: SheetLanguage;
  readonly paper: Paper;
  readonly heading: Heading;
  /** Cautions, a line for each language. */
  readonly cautions: readonly string[];
  /** Blocks for a body of this width. */
  readonly blocks: (widthMm: number) => readonly Block[];
  readonly grids: readonly Grid[];
}

const PAD_MM = 4;
/** A caution box narrower than this is not readable; it then stands at the head of the first page. */
const CAUTION_LEAST_MM = 80;

/** Languages side by side in one line if they fit, else each in lines of its own. */
function oneLineOrMore(text: string, roomMm: number, heightMm: number, weight: Weight): readonly string[] {
  const joined = text.split("\n").join(" · ");
  return textWidthMm(joined, heightMm, weight) <= roomMm ? [joined] : wrap(text, roomMm, heightMm, weight);
}

/** Badge, title, subtitle and figures over an accent line. */
export function headingBlock(heading: Heading, widthMm: number): Block {
  const badgeMm = heading.badge === "" ? 0 : textWidthMm(heading.badge, TEXT.huge, "bold") + 4;
  const factsMm = Math.max(0, ...heading.facts.map((t) => textWidthMm(t, TEXT.normal)));
  const room = widthMm - badgeMm - (factsMm === 0 ? 0 : factsMm + 6);
  const big = oneLineOrMore(heading.title, room, TEXT.head, "bold");
  // A long title must not take the room of what the sheet is for.
  const titleMm = big.length > 2 ? TEXT.large : TEXT.head;
  const title = titleMm === TEXT.head ? big : oneLineOrMore(heading.title, room, titleMm, "bold");
  const subtitle = oneLineOrMore(heading.subtitle, room, TEXT.large, "regular");
  const named: Mark[] = [];
  if (heading.badge !== "") {
    named.push(write(heading.badge, at(0, 8), { heightMm: TEXT.huge, weight: "bold", ink: "accent" }));
  }
  let y = 1;
  title.forEach((t, i) => {
    y = 1 + titleMm + i * leadingMm(titleMm);
    named.push(write(t, at(badgeMm, y), { heightMm: titleMm, weight: "bold" }));
  });
  const marks: Mark[] = [tagged({ role: "H1" }, named)];
  const under = subtitle.map((t, i) =>
    write(t, at(badgeMm, y + 1.6 + (i + 1) * (leadingMm(TEXT.large) - 0.6)), { heightMm: TEXT.large }),
  );
  if (under.length > 0) marks.push(tagged({ role: "P" }, under));
  y += 1.6 + subtitle.length * (leadingMm(TEXT.large) - 0.6);
  heading.facts.forEach((t, i) => {
    const baseline = 1 + TEXT.normal + i * leadingMm(TEXT.normal);
    marks.push(tagged({ role: "P" }, [write(t, at(widthMm, baseline), { anchor: "end" })]));
    y = Math.max(y, baseline);
  });
  const heightMm = y + 3;
  marks.push(line(at(0, heightMm), at(widthMm, heightMm), stroke("accent", LINE.strong)));
  return { heightMm: heightMm + 2, marks };
}

/** The room inside the frame of a page, above its title block. */
export function roomOf(paper: Paper, page: number): Box {
  const frame = frameOf(paper);
  const block = page === 0 ? TITLE_BLOCK_MM.full : TITLE_BLOCK_MM.strip;
  return box(
    frame.xMm + PAD_MM,
    frame.yMm + PAD_MM,
    frame.widthMm - 2 * PAD_MM,
    frame.heightMm - block - 2 * PAD_MM,
  );
}

/**
 * A sheet that is a list: heading on every page, cautions on the first (beside the title block when there is
 * room, else above the list), blocks set one below the other over as many pages as they need.
 */
export function composeListing(listing: Listing): SheetDocument {
  return assemble(listing.identity, listing.language, listingBodies(listing), listing.grids);
}

/** The pages of a list without their frames, for a sheet on which more than the list stands. */
export function listingBodies(listing: Omit<Listing, "grids">): readonly PageBody[] {
  const { paper, language } = listing;
  const frame = frameOf(paper);
  const widthMm = roomOf(paper, 0).widthMm;
  const heading = headingBlock(listing.heading, widthMm);
  const besideMm = frame.widthMm - TITLE_BLOCK_MM.width - 2 * PAD_MM;
  const texts = listing.cautions;
  const beside =
    texts.length > 0 && besideMm >= CAUTION_LEAST_MM - 2 * PAD_MM
      ? cautionBlock(texts, language, besideMm)
      : null;
  const fitsBeside = beside !== null && beside.heightMm <= TITLE_BLOCK_MM.full - 2;
  const above = texts.length > 0 && !fitsBeside ? cautionBlock(texts, language, widthMm) : null;
  const bodyOf = (page: number): Box => {
    const room = roomOf(paper, page);
    const used = heading.heightMm + (page === 0 && above !== null ? above.heightMm + 3 : 0);
    return box(room.xMm, room.yMm + used, room.widthMm, room.heightMm - used);
  };
  return flow(listing.blocks(widthMm), bodyOf).map((marks, page) => {
    const room = roomOf(paper, page);
    const own = page === 0 ? heading.marks : [tagged({ role: "Artifact" }, heading.marks)];
    const head: Mark[] = [group(own, room.xMm, room.yMm)];
    if (page === 0 && above !== null) {
      head.push(group(above.marks, room.xMm, room.yMm + heading.heightMm));
    }
    if (page === 0 && fitsBeside) {
      head.push(
        group(beside.marks, frame.xMm + PAD_MM, frame.yMm + frame.heightMm - beside.heightMm - PAD_MM),
      );
    }
    return { paper, marks: [...head, ...marks] };
  });
}
