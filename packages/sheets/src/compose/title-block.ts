import { afterOf, type SheetLanguage, sheetWords } from "@pinwright/words";
import { at, box, changing, LINE, line, rect, stroke, TEXT, write } from "./draw.ts";
import type { Box, Mark, Weight } from "./mark.ts";
import { say } from "./say.ts";
import { tagged } from "./tag.ts";
import { leadingMm, textWidthMm } from "./text.ts";
import { wrap } from "./wrap.ts";

/** What a title block says of a sheet: the data fields of ISO 7200. */
export interface Identity {
  readonly machineId: string;
  /** `<harness>.<kind>`. */
  readonly sheetId: string;
  readonly fileName: string;
  /** Title of the document in one line. */
  readonly documentTitle: string;
  readonly owner: string;
  /** Document type, a line for each language. */
  readonly documentType: string;
  /** What is shown: the harness; a line for each language. */
  readonly title: string;
  /** The machine that it belongs to. */
  readonly supplement: string;
  readonly number: string;
  /** Release, or the draft after one. */
  readonly revision: string;
  /** Date of issue as year-month-day. */
  readonly date: string;
  readonly creator: string;
  readonly approved: string;
  readonly state: "draft" | "released";
  /** Address of the server on the network, `https://…`; blank: none. */
  readonly address: string;
  /** `1:1`, or blank on a list. */
  readonly scale: string;
}

export interface SheetCount {
  readonly sheet: number;
  readonly of: number;
  readonly code: string;
}

/** Width of the cell of the revision, and what of a cell's width its text does not have. */
const REVISION_MM = 24;
const CELL_MARGINS_MM = 2.4;

/** Height of the title block on the first sheet, and of the strip on the ones that follow. */
export const TITLE_BLOCK_MM = { full: 41, strip: 19, width: 180 } as const;

/** Text in the largest of some heights in which it fits a cell; at the smallest, what does not fit ends in “…”. */
function fitted(
  text: string,
  widthMm: number,
  roomMm: number,
  heights: readonly number[],
  weight: Weight,
): { readonly lines: readonly string[]; readonly heightMm: number } {
  const smallest = heights[heights.length - 1] ?? TEXT.small;
  for (const heightMm of heights) {
    const lines = wrap(text, widthMm, heightMm, weight);
    if (heightMm + (lines.length - 1) * leadingMm(heightMm) <= roomMm) return { lines, heightMm };
  }
  const most = Math.max(1, Math.floor((roomMm - smallest) / leadingMm(smallest)) + 1);
  const lines = wrap(text, widthMm, smallest, weight).slice(0, most);
  let last = lines[most - 1] ?? "";
  while (last !== "" && textWidthMm(`${last}…`, smallest, weight) > widthMm) last = last.slice(0, -1);
  return { lines: [...lines.slice(0, -1), `${last}…`], heightMm: smallest };
}

/**
 * A revision as a title block says it: a draft says after which release it is, as the screen does. Where there is no room
 * for that in both languages it is said in one; where there is none at all, it is the name with its mark.
 */
function revisionText(revision: string, language: SheetLanguage, widthMm: number): string {
  const after = afterOf(revision);
  if (after === null) return revision;
  const both = say(language, (w) => w.change.draft(after), " · ");
  const one = sheetWords(language === "zh" ? "zh" : "en").change.draft(after);
  const fits = (text: string): boolean => textWidthMm(text, TEXT.small, "bold") <= widthMm;
  return [both, one].find(fits) ?? revision;
}

interface Cell {
  readonly caption: string;
  readonly value: string;
  readonly widthMm: number;
  readonly heights?: readonly number[];
  readonly bold?: boolean;
  /** Differs between prints of the same sheet. */
  readonly changing?: boolean;
}

function cellMarks(cell: Cell, b: Box): Mark[] {
  const captionBaseMm = 2.9;
  const valueTopMm = 4.4;
  const weight: Weight = cell.bold === true ? "bold" : "regular";
  const { lines, heightMm } = fitted(
    cell.value,
    b.widthMm - CELL_MARGINS_MM,
    b.heightMm - valueTopMm - 1.2,
    cell.heights ?? [TEXT.normal, TEXT.small],
    weight,
  );
  const value = lines
    .filter((t) => t !== "")
    .map((t, i) =>
      write(t, at(b.xMm + 1.2, b.yMm + valueTopMm + heightMm + i * leadingMm(heightMm)), {
        heightMm,
        weight,
      }),
    );
  return [
    rect(b, stroke("ink", LINE.thin)),
    tagged({ role: "P" }, [
      ...(cell.caption === ""
        ? []
        : [
            write(cell.caption, at(b.xMm + 1.2, b.yMm + captionBaseMm), {
              heightMm: TEXT.small,
              ink: "accent",
            }),
          ]),
      ...(cell.changing === true ? [changing(value)] : value),
    ]),
  ];
}

function rowMarks(cells: readonly Cell[], xMm: number, yMm: number, heightMm: number): Mark[] {
  const marks: Mark[] = [];
  let x = xMm;
  for (const cell of cells) {
    marks.push(...cellMarks(cell, box(x, yMm, cell.widthMm, heightMm)));
    x += cell.widthMm;
  }
  return marks;
}

function codeMarks(code: string, b: Box, sizeMm: number): Mark[] {
  const where = at(b.xMm + (b.widthMm - sizeMm) / 2, b.yMm + (b.heightMm - sizeMm) / 2);
  return [
    rect(b, stroke("ink", LINE.thin)),
    ...(code === "" ? [] : [changing([{ kind: "code", at: where, sizeMm, text: code, layer: "BORDER" }])]),
  ];
}

/** Frame and title block of one page: the full block on the first sheet, a strip on the others. */
export function frameMarks(
  identity: Identity,
  language: SheetLanguage,
  frame: Box,
  count: SheetCount,
): Mark[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const state = words((w) => (identity.state === "draft" ? w.titleBlock.draft : w.titleBlock.released));
  const sheet: Cell = {
    caption: words((w) => w.titleBlock.sheet),
    value: `${count.sheet} / ${count.of}`,
    widthMm: 24,
    bold: true,
    changing: true,
  };
  const number: Cell = { caption: words((w) => w.titleBlock.number), value: identity.number, widthMm: 62 };
  const revision: Cell = {
    caption: words((w) => w.titleBlock.revision),
    value: revisionText(identity.revision, language, REVISION_MM - CELL_MARGINS_MM),
    widthMm: REVISION_MM,
    bold: true,
    changing: true,
  };
  const date: Cell = {
    caption: words((w) => w.titleBlock.date),
    value: identity.date,
    widthMm: 36,
    changing: true,
  };
  const left = frame.xMm + frame.widthMm - TITLE_BLOCK_MM.width;
  const bottom = frame.yMm + frame.heightMm;
  const outer = rect(frame, stroke("ink", LINE.frame));
  if (count.sheet > 1) {
    const top = bottom - TITLE_BLOCK_MM.strip;
    const upper: Cell[] = [
      {
        caption: identity.documentType.split("\n").join(" · "),
        value: identity.title.split("\n").join(" · "),
        widthMm: 110,
        bold: true,
      },
      { caption: words((w) => w.titleBlock.state), value: state, widthMm: 48, changing: true },
    ];
    const lower: Cell[] = [number, revision, date, { ...sheet, widthMm: 36 }];
    return [
      outer,
      ...rowMarks(upper, left, top, 9.5),
      ...rowMarks(lower, left, top + 9.5, 9.5),
      ...codeMarks(count.code, box(left + 158, top, 22, 19), 15),
      rect(box(left, top, TITLE_BLOCK_MM.width, TITLE_BLOCK_MM.strip), stroke("ink", LINE.strong)),
    ];
  }
  const top = bottom - TITLE_BLOCK_MM.full;
  return [
    outer,
    ...rowMarks(
      [
        { caption: words((w) => w.titleBlock.owner), value: identity.owner, widthMm: 50 },
        {
          caption: words((w) => w.titleBlock.documentType),
          value: identity.documentType.split("\n").join(" · "),
          widthMm: 60,
          bold: true,
        },
        { caption: words((w) => w.titleBlock.state), value: state, widthMm: 36, bold: true, changing: true },
      ],
      left,
      top,
      9,
    ),
    ...rowMarks(
      [
        {
          caption: words((w) => w.titleBlock.title),
          value: identity.title,
          widthMm: 86,
          bold: true,
          heights: [TEXT.large, TEXT.normal, TEXT.small],
        },
        { caption: words((w) => w.titleBlock.machine), value: identity.supplement, widthMm: 60 },
      ],
      left,
      top + 9,
      14,
    ),
    ...rowMarks([number, revision, date, sheet], left, top + 23, 9),
    ...rowMarks(
      [
        { caption: words((w) => w.titleBlock.creator), value: identity.creator, widthMm: 36, changing: true },
        {
          caption: words((w) => w.titleBlock.approved),
          value: identity.approved,
          widthMm: 36,
          changing: true,
        },
        {
          caption: words((w) => w.titleBlock.scale),
          value: identity.scale === "" ? "—" : identity.scale,
          widthMm: 24,
        },
        { caption: words((w) => w.titleBlock.unit), value: "mm", widthMm: 50 },
      ],
      left,
      top + 32,
      9,
    ),
    ...codeBoxMarks(
      words((w) => w.titleBlock.code),
      count.code,
      box(left + 146, top, 34, TITLE_BLOCK_MM.full),
    ),
    rect(box(left, top, TITLE_BLOCK_MM.width, TITLE_BLOCK_MM.full), stroke("ink", LINE.frame)),
  ];
}

/** The code with its own text under it, for whoever has no reader. */
function codeBoxMarks(caption: string, code: string, b: Box): Mark[] {
  const inner = b.widthMm - 2.4;
  const captionLines = wrap(caption, inner, TEXT.small);
  const codeLines = code === "" ? [] : wrap(code, inner, TEXT.small);
  const captionStepMm = leadingMm(TEXT.small);
  // The code's text has no Chinese and may stand closer.
  const codeStepMm = captionStepMm - 0.5;
  const textMm = captionLines.length * captionStepMm + codeLines.length * codeStepMm + 1;
  const sizeMm = Math.min(23, b.heightMm - textMm - 3.5);
  const where = at(b.xMm + (b.widthMm - sizeMm) / 2, b.yMm + 2);
  const under = where.yMm + sizeMm + 0.8;
  const set = (lines: readonly string[], from: number, stepMm: number): Mark[] =>
    lines.map((t, i) => write(t, at(b.xMm + 1.2, from + (i + 1) * stepMm - 0.6), { heightMm: TEXT.small }));
  return [
    line(at(b.xMm, b.yMm), at(b.xMm, b.yMm + b.heightMm), stroke("ink", LINE.thin)),
    ...set(captionLines, under, captionStepMm),
    ...(code === ""
      ? []
      : [
          changing([
            { kind: "code", at: where, sizeMm, text: code, layer: "BORDER" },
            ...set(codeLines, under + captionLines.length * captionStepMm, codeStepMm),
          ]),
        ]),
  ];
}
