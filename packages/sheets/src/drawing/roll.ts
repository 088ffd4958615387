import type { SheetLanguage } from "@pinwright/words";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type SheetDocument } from "../compose/document.ts";
import { at, box, group, TEXT, write } from "../compose/draw.ts";
import { type Block, flow, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { type Heading, headingBlock } from "../compose/listing.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { frameOf, MARGIN_MM, PAPERS, type Paper } from "../compose/paper.ts";
import { type Identity, TITLE_BLOCK_MM } from "../compose/title-block.ts";
import { rulerMarks } from "./ruler.ts";

const PAD_MM = 8;
/** Least and most width of a column of text. */
const COLUMN_MM = { least: 120, most: 200 } as const;
/** The ruler with its figure. */
const RULER_MM = 12;

/** A true-scale drawing on one page of its own size, with how to read it under it. */
export interface RollSheet {
  readonly identity: Identity;
  readonly language: SheetLanguage;
  readonly drawing: {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly marks: readonly Mark[];
    readonly hash: string;
  };
  /** Place of the drawing that is 0, 0 in DXF. */
  readonly origin: PagePoint;
  readonly heading: Heading;
  readonly cautions: readonly string[];
  /** What stands under the drawing, in as many columns as there is room for. */
  readonly texts: (widthMm: number) => readonly Block[];
  readonly grids?: readonly Grid[];
}

/** Least height, in steps of 5 mm, at which blocks fit into so many columns. */
function heightFor(blocks: readonly Block[], widthMm: number, columns: number): number {
  const tallest = Math.max(0, ...blocks.map((b) => b.heightMm + (b.repeat?.heightMm ?? 0)));
  let heightMm = Math.max(20, tallest);
  while (flow(blocks, () => box(0, 0, widthMm, heightMm)).length > columns) heightMm += 5;
  return heightMm;
}

/** A page that fits A3 is A3, so that any printer takes it. */
function onPaper(own: Paper): Paper {
  const a3 = PAPERS["a3-landscape"];
  return own.widthMm <= a3.widthMm && own.heightMm <= a3.heightMm ? a3 : own;
}

/** A small drawing on A3, with heading, texts and cautions at its right. Null: it is too large, or there is too much. */
function onA3(sheet: RollSheet): SheetDocument | null {
  const { drawing, language } = sheet;
  const paper = PAPERS["a3-landscape"];
  const frame = frameOf(paper);
  const widthMm = TITLE_BLOCK_MM.width - PAD_MM;
  const left = frame.xMm + frame.widthMm - TITLE_BLOCK_MM.width;
  const top = frame.yMm + PAD_MM;
  const blocks = [
    headingBlock(sheet.heading, widthMm),
    ...sheet.texts(widthMm),
    ...(sheet.cautions.length === 0 ? [] : [gap(2), cautionBlock(sheet.cautions, language, widthMm)]),
    gap(RULER_MM),
  ];
  const roomMm = frame.heightMm - 2 * PAD_MM - TITLE_BLOCK_MM.full;
  const used = blocks.reduce((sum, b) => sum + b.heightMm, 0);
  const fits =
    drawing.widthMm + 2 * PAD_MM <= left - frame.xMm &&
    drawing.heightMm + 2 * PAD_MM <= frame.heightMm &&
    used <= roomMm;
  if (!fits) return null;
  const rulerTop = top + used - RULER_MM + 3;
  const marks: Mark[] = [
    { ...group(drawing.marks, frame.xMm + PAD_MM, top), hash: drawing.hash },
    ...flow(blocks, () => box(left, top, widthMm, roomMm + 1)).flat(),
    group(rulerMarks(false), left, rulerTop),
    write("100 mm", at(left + 103, rulerTop + 3), { heightMm: TEXT.small }),
  ];
  const document = assemble(sheet.identity, language, [{ paper, marks }], sheet.grids ?? []);
  const { xMm, yMm } = sheet.origin;
  return { ...document, drawing: { origin: at(frame.xMm + PAD_MM + xMm, top + yMm) } };
}

/**
 * A true-scale drawing with how to read it: on A3 where that is large enough, else on a page of its own size with
 * heading and texts under the drawing at the left, and ruler, cautions and title block at the right.
 */
export function composeRoll(sheet: RollSheet): SheetDocument {
  return onA3(sheet) ?? onOwnPaper(sheet);
}

/** The drawing, and under it heading and texts at the left, ruler, cautions and title block at the right. */
function onOwnPaper(sheet: RollSheet): SheetDocument {
  const { drawing, language } = sheet;
  const innerMm = Math.max(drawing.widthMm + 2 * PAD_MM, COLUMN_MM.least + TITLE_BLOCK_MM.width + 3 * PAD_MM);
  const roomMm = innerMm - TITLE_BLOCK_MM.width - 3 * PAD_MM;
  const columns = Math.max(1, Math.floor((roomMm + PAD_MM) / (COLUMN_MM.most + PAD_MM)));
  const columnMm = (roomMm - (columns - 1) * PAD_MM) / columns;
  const heading = headingBlock(sheet.heading, roomMm);
  const blocks = sheet.texts(columnMm);
  const textMm = heightFor(blocks, columnMm, columns);
  const rightMm = TITLE_BLOCK_MM.width - PAD_MM;
  const caution = sheet.cautions.length === 0 ? null : cautionBlock(sheet.cautions, language, rightMm);
  const cautionMm = caution === null ? 0 : caution.heightMm + 4;
  const bandMm = Math.max(heading.heightMm + textMm, RULER_MM + cautionMm + TITLE_BLOCK_MM.full);
  const left = MARGIN_MM.left + PAD_MM;
  const top = MARGIN_MM.other + PAD_MM;
  const bandTop = top + drawing.heightMm + PAD_MM;
  const paper = onPaper({
    widthMm: MARGIN_MM.left + innerMm + MARGIN_MM.other,
    heightMm: bandTop + bandMm + PAD_MM + MARGIN_MM.other,
  });
  const right = paper.widthMm - MARGIN_MM.other - TITLE_BLOCK_MM.width;
  const titleTop = paper.heightMm - MARGIN_MM.other - TITLE_BLOCK_MM.full;
  const texts = flow(blocks, () => box(0, 0, columnMm, textMm)).map((marks, i) =>
    group(marks, left + i * (columnMm + PAD_MM), bandTop + heading.heightMm),
  );
  const marks: Mark[] = [
    { ...group(drawing.marks, left, top), hash: drawing.hash },
    group(heading.marks, left, bandTop),
    ...texts,
    group(rulerMarks(false), right + 2, bandTop),
    write("100 mm", at(right + 105, bandTop + 3), { heightMm: TEXT.small }),
    ...(caution === null ? [] : [group(caution.marks, right, titleTop - cautionMm)]),
  ];
  const document = assemble(sheet.identity, language, [{ paper, marks }], sheet.grids ?? []);
  return { ...document, drawing: { origin: at(left + sheet.origin.xMm, top + sheet.origin.yMm) } };
}
