import type { HarnessResult, LineResult } from "@pinwright/engine";
import { cautionsOf } from "../cautions.ts";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type SheetDocument } from "../compose/document.ts";
import { at, box, group, TEXT, write } from "../compose/draw.ts";
import { type Block, flow, gap } from "../compose/flow.ts";
import { headingBlock } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import { MARGIN_MM, type Paper } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { TITLE_BLOCK_MM } from "../compose/title-block.ts";
import { rulerMarks } from "../drawing/ruler.ts";
import { badgeOf, harnessTitle, identityOf, type Variant } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { legendBlocks, noteBlocks } from "./notes.ts";
import type { Scene } from "./scene.ts";

const PAD_MM = 8;
const COLUMN_MM = 88;
const TABLE_MM = 150;
const GUTTER_MM = 7;
/** The upright ruler with its figure. */
const RULER_MM = 105;

const VARIANT: Variant = { name: "roll", title: (w) => w.pinboard.roll, scale: "1:1" };

/** Blocks set into columns of one height, side by side. */
function columnsOf(blocks: readonly Block[], widthMm: number, heightMm: number): Mark[][] {
  return flow(blocks, () => box(0, 0, widthMm, heightMm));
}

/** Least height, in steps of 5 mm, at which blocks fit into so many columns. */
function heightFor(blocks: readonly Block[], widthMm: number, columns: number, leastMm: number): number {
  const tallest = Math.max(0, ...blocks.map((b) => b.heightMm + (b.repeat?.heightMm ?? 0)));
  let heightMm = Math.max(leastMm, tallest);
  while (columnsOf(blocks, widthMm, heightMm).length > columns) heightMm += 5;
  return heightMm;
}

/**
 * A pinboard as one true-scale page: the board, and under it how to read it, the from-to table in as many columns
 * as there is room for, and the title block.
 * @param table blocks of the from-to table for a width
 */
export function composePinboardRoll(
  result: LineResult,
  harness: HarnessResult,
  scene: Scene,
  table: (widthMm: number) => readonly Block[],
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const least = COLUMN_MM + TITLE_BLOCK_MM.width + 3 * PAD_MM;
  const innerMm = Math.max(scene.widthMm + 2 * PAD_MM, least);
  const heading = headingBlock(
    {
      badge: badgeOf(harness),
      title: say(language, (w) => w.kinds.pinboard),
      subtitle: harnessTitle(harness, options),
      facts: [],
    },
    COLUMN_MM,
  );
  const texts: Block[] = [
    heading,
    ...noteBlocks(harness, scene, language, COLUMN_MM),
    gap(2),
    ...legendBlocks(language, options.pegHoleMm, COLUMN_MM),
  ];
  const cautions = cautionsOf(result, harness, "pinboard", language);
  const caution =
    cautions.length === 0 ? null : cautionBlock(cautions, language, TITLE_BLOCK_MM.width - PAD_MM);
  const cautionMm = caution === null ? 0 : caution.heightMm + 4;
  const rows = table(TABLE_MM);
  // Tables stand between the notes and the title block; on a narrow board they go on below, over the whole width.
  const beside = Math.floor((innerMm - least + GUTTER_MM) / (TABLE_MM + GUTTER_MM));
  const textMm = heightFor(texts, COLUMN_MM, 1, 0);
  const firstMm = Math.max(
    textMm,
    TITLE_BLOCK_MM.full + cautionMm + 20,
    RULER_MM + 6,
    beside > 0 ? heightFor(rows, TABLE_MM, beside, 40) : 0,
  );
  const below = Math.max(1, Math.floor((innerMm - 2 * PAD_MM + GUTTER_MM) / (TABLE_MM + GUTTER_MM)));
  const belowMm = beside > 0 ? 0 : heightFor(rows, TABLE_MM, below, 20) + PAD_MM;
  const boardTop = MARGIN_MM.other + PAD_MM;
  const left = MARGIN_MM.left + PAD_MM;
  const bandTop = boardTop + scene.heightMm + PAD_MM;
  const paper: Paper = {
    widthMm: MARGIN_MM.left + innerMm + MARGIN_MM.other,
    heightMm: bandTop + belowMm + firstMm + PAD_MM + MARGIN_MM.other,
  };
  const textTop = bandTop + belowMm;
  const tables =
    beside > 0
      ? columnsOf(rows, TABLE_MM, firstMm).map((marks, i) =>
          group(marks, left + COLUMN_MM + PAD_MM + i * (TABLE_MM + GUTTER_MM), bandTop),
        )
      : columnsOf(rows, TABLE_MM, belowMm - PAD_MM).map((marks, i) =>
          group(marks, left + i * (TABLE_MM + GUTTER_MM), bandTop),
        );
  const right = paper.widthMm - MARGIN_MM.other - TITLE_BLOCK_MM.width;
  const titleTop = paper.heightMm - MARGIN_MM.other - TITLE_BLOCK_MM.full;
  const marks: Mark[] = [
    { ...group(scene.marks, left, boardTop), hash: scene.hash },
    ...columnsOf(texts, COLUMN_MM, firstMm).map((m) => group(m, left, textTop)),
    ...tables,
    ...(caution === null ? [] : [group(caution.marks, right, titleTop - cautionMm)]),
    group(rulerMarks(false), right + 2, textTop),
    write("100 mm", at(right + 105, textTop + 3), { heightMm: TEXT.small }),
    group(rulerMarks(true), right - 4.5, textTop + 5),
    write("100 mm", at(right - 1, textTop + 3), { heightMm: TEXT.small, anchor: "end" }),
  ];
  const identity = identityOf(result, harness, "pinboard", options, VARIANT);
  const document = assemble(identity, language, [{ paper, marks }], []);
  return { ...document, drawing: { origin: at(left, boardTop + scene.heightMm) } };
}
