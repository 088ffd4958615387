import { cautionBlock } from "../compose/caution.ts";
import { at, LINE, line as rule, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Mark } from "../compose/mark.ts";
import { paragraph } from "../compose/paragraph.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { anchored, tagged } from "../compose/tag.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import type { BookContext } from "./context.ts";
import type { HazardId } from "./hazards.ts";

/** A chapter that would begin lower than this from the foot begins on the next page. */
const CHAPTER_KEEP_MM = 95;

/** What is lower than this is not broken over two pages. */
const WHOLE_MM = 130;
/** Of a longer group at least this much stands under its heading. */
const FIRST_ROWS_MM = 18;
/** A group of a table that is lower than this is not broken over two pages. */
const WHOLE_GROUP_MM = 72;

const lines = (texts: readonly string[], heightMm: number, x: number, bold: boolean, topMm = 0): Mark[] =>
  texts.map((t, i) =>
    write(t, at(x, topMm + (i + 0.75) * leadingMm(heightMm)), {
      heightMm,
      weight: bold ? "bold" : "regular",
    }),
  );

/** Heading of a chapter with its number. */
export function chapterHead(number: string, title: string, anchor: string, widthMm: number): Block {
  const numberMm = textWidthMm(number, TEXT.huge, "bold") + 4;
  const texts = wrap(title, widthMm - numberMm, TEXT.huge, "bold");
  const heightMm = 3 + texts.length * leadingMm(TEXT.huge) + 1;
  const heads = [
    ...(number === ""
      ? []
      : [
          write(number, at(0, 3 + 0.75 * leadingMm(TEXT.huge)), {
            heightMm: TEXT.huge,
            weight: "bold",
            ink: "accent",
          }),
        ]),
    ...lines(texts, TEXT.huge, number === "" ? 0 : numberMm, true, 3),
  ];
  return {
    heightMm: heightMm + 3,
    keepMm: CHAPTER_KEEP_MM,
    marks: [
      anchored(anchor, [tagged({ role: "H1" }, heads)], { title: `${number} ${title}`.trim(), level: 1 }),
      rule(at(0, heightMm), at(widthMm, heightMm), stroke("accent", LINE.strong)),
    ],
  };
}

/** Heading of a section; it stands in the contents. */
export function sectionHead(title: string, anchor: string, widthMm: number, keepMm = 32): Block {
  const texts = wrap(title, widthMm, TEXT.head, "bold");
  return {
    heightMm: 4 + texts.length * leadingMm(TEXT.head) + 0.5,
    keepMm,
    marks: [
      anchored(anchor, [tagged({ role: "H2" }, lines(texts, TEXT.head, 0, true, 4))], { title, level: 2 }),
    ],
  };
}

/** Heading of one thing, with a few words in small letters at its right or under it. */
export function thingHead(
  title: string,
  detail: string,
  anchor: string,
  widthMm: number,
  keepMm = 26,
): Block {
  const step = leadingMm(TEXT.large);
  const texts = wrap(title, widthMm, TEXT.large, "bold");
  const last = textWidthMm(texts.at(-1) ?? "", TEXT.large, "bold");
  const beside = detail !== "" && last + 6 + textWidthMm(detail, TEXT.small) <= widthMm;
  const under = detail === "" || beside ? [] : wrap(detail, widthMm, TEXT.small);
  const top = 3.2;
  const headMm = top + texts.length * step;
  const small = beside
    ? [
        write(detail, at(widthMm, top + (texts.length - 0.25) * step), {
          heightMm: TEXT.small,
          anchor: "end",
        }),
      ]
    : lines(under, TEXT.small, 0, false, headMm);
  const heightMm = headMm + under.length * leadingMm(TEXT.small) + 0.6;
  return {
    heightMm: heightMm + 0.8,
    keepMm,
    marks: [
      rule(at(0, 1.4), at(widthMm, 1.4), stroke("faint", LINE.thin)),
      anchored(anchor, [tagged({ role: "H3" }, lines(texts, TEXT.large, 0, true, top))], {
        title,
        level: 3,
      }),
      tagged({ role: "P" }, small),
    ],
  };
}

/** Blocks that stand on one page, unless they are higher than that allows. */
export function together(blocks: readonly Block[], mostMm = WHOLE_MM): readonly Block[] {
  const [first, ...rest] = blocks;
  const restMm = rest.reduce((sum, { heightMm }) => sum + heightMm, 0);
  if (first === undefined || first.heightMm + restMm > mostMm) return blocks;
  return [{ ...first, keepMm: Math.max(first.keepMm ?? 0, restMm) }, ...rest];
}

/** Running text. */
export const prose = (text: string, widthMm: number): Block => paragraph(text, widthMm, TEXT.normal);

/** A remark in small letters. */
export const note = (text: string, widthMm: number): Block => paragraph(text, widthMm, TEXT.small);

/** A name in bold before its text, both in small letters. */
export function named(name: string, text: string, widthMm: number, nameMm: number): Block {
  const heightMm = TEXT.normal;
  const step = leadingMm(heightMm);
  const names = wrap(name, nameMm - 2, heightMm, "bold");
  const texts = wrap(text, widthMm - nameMm, heightMm);
  return {
    heightMm: Math.max(names.length, texts.length) * step + 0.8,
    marks: [
      tagged({ role: "P" }, [...lines(names, heightMm, 0, true), ...lines(texts, heightMm, nameMm, false)]),
    ],
  };
}

/** Items of a list, each with a dot or with its letter in the order of work. */
export function listed(texts: readonly string[], widthMm: number, ordered: boolean): Block[] {
  const left = 6;
  const step = leadingMm(TEXT.normal);
  return [
    ...texts.map((text, i): Block => {
      const own = wrap(text, widthMm - left, TEXT.normal);
      const sign: Mark = ordered
        ? write(String.fromCodePoint(97 + (i % 26)), at(0.5, 0.75 * step), {
            weight: "bold",
            ink: "accent",
          })
        : {
            kind: "circle",
            at: at(2, 0.75 * step - TEXT.normal / 2),
            radiusMm: 0.55,
            stroke: null,
            fill: "accent",
            layer: "BORDER",
          };
      return {
        heightMm: own.length * step + 0.8,
        marks: [
          tagged({ role: "LI", ...(i === 0 ? { starts: true } : {}) }, [
            sign,
            ...lines(own, TEXT.normal, left, false),
          ]),
        ],
      };
    }),
    gap(1.2),
  ];
}

/** Cautions of those hazards that the machine has, with the words that defer to local codes. */
export function hazardBlocks(
  { hazards, words, language }: BookContext,
  ids: readonly HazardId[],
  place: string,
  widthMm: number,
  own: readonly string[] = [],
): readonly Block[] {
  const told = hazards.filter(({ id }) => ids.includes(id));
  if (told.length + own.length === 0) return [];
  const texts = [
    ...own,
    ...told.map(({ id, names }) => {
      const { title, says } = hazardText(words, id);
      return `${title}${names === "" ? "" : ` (${names})`}: ${says}`;
    }),
    words((w) => w.safety.defer),
  ];
  const block = cautionBlock(texts, language, widthMm);
  const marks = told.reduce<readonly Mark[]>(
    (inner, { id }) => [anchored(`hazard:${id}@${place}`, inner)],
    block.marks,
  );
  return [{ ...block, marks, keepMm: 12 }, gap(2)];
}

/** Title and caution of a hazard. */
export const hazardText = (
  words: BookContext["words"],
  id: HazardId,
): { readonly title: string; readonly says: string } => ({
  title: words((w) => w.safety.hazards[id].title),
  says: words((w) => w.safety.hazards[id].says),
});

type Row = Extract<TableRow, { kind: "row" }>;
/** A row of a table of the book; a heading across it may be led to. */
export type BookRow =
  | Row
  | {
      readonly kind: "group";
      readonly text: string;
      readonly detail?: string;
      readonly anchor?: string;
    };

/** A row. @param anchor name by which it is led to */
export const row = (cells: readonly string[], anchor?: string, links?: Row["links"]): Row => ({
  kind: "row",
  cells,
  ...(anchor === undefined ? {} : { anchor }),
  ...(links === undefined ? {} : { links }),
});

/** A table of the book; its headings across may be led to. */
export function bookTable(
  context: BookContext,
  columns: readonly TableColumn[],
  rows: readonly BookRow[],
  widthMm: number,
): Block[] {
  if (rows.length === 0) return [];
  const plain = rows.map((own): TableRow => {
    if (own.kind === "row") return own;
    const { kind, text, detail } = own;
    return { kind, text, ...(detail === undefined ? {} : { detail }) };
  });
  const blocks = table(
    columns,
    plain,
    widthMm,
    context.sheet((w) => w.common.continued),
  );
  // The first block is the header of the columns.
  return blocks.map((block, i) => {
    const own = rows[i - 1];
    if (own?.kind !== "group") return block;
    const end = rows.findIndex((other, n) => n >= i && other.kind === "group");
    const under = blocks.slice(i + 1, end === -1 ? undefined : end + 1);
    const underMm = under.reduce((sum, { heightMm }) => sum + heightMm, 0);
    const marks = own.anchor === undefined ? block.marks : [anchored(own.anchor, block.marks)];
    const keepMm = underMm <= WHOLE_GROUP_MM ? underMm : FIRST_ROWS_MM;
    return { ...block, marks, keepMm: Math.max(block.keepMm ?? 0, keepMm) };
  });
}
