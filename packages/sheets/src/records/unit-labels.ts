import { languagesOf, sheetWords } from "@pinwright/words";
import { bodyHashes } from "../compose/body-hash.ts";
import { codeSquares } from "../compose/code.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { at, box, group, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { Grid } from "../compose/grid.ts";
import { roomOf } from "../compose/listing.ts";
import type { Mark, Page } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { recordIdentity } from "./identity.ts";
import { nameOfType, type RecordSheetInput, type UnitKind } from "./texts.ts";

/** A roll label that label printers take: common practice, no source. */
const UNIT_LABEL_MM = { widthMm: 62, heightMm: 29 } as const;
/** Nothing is printed nearer to the edge of a label: common practice, no source. */
const EDGE_MM = 1.5;
/** A code larger than this is no easier to read at a bench. */
const CODE_MM = 18;
/** Modules that stay white round a code: ISO/IEC 18004, 4 for a QR code. */
const QUIET_MODULES = 4;
/** Dots of label printers, per inch: squares of a code are whole dots of the coarser, so that none is thinner than another. */
const DOTS = 203;
const DOT_MM = 25.4 / DOTS;
/** A square of fewer dots is not read any more once the print is a dot too fat: tried with two readers of codes. */
const LEAST_DOTS = 3;
const SERIAL_MM = [5.5, TEXT.head, 4.5, 4, TEXT.large, 3, TEXT.normal, 2.1] as const;
const SHEET = PAPERS["a4-landscape"];

/** Size of a label. */
interface LabelSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** What a label is printed of; what is not known is blank. */
export interface LabelledUnit {
  readonly unit: string;
  readonly what: UnitKind | "";
  readonly type: string;
  readonly book: string;
  readonly revision: string;
}

/** Where labels go. */
export type LabelPaper =
  /** Sheets to be cut, with a title block; places before `start`, from 1 and row by row, stay empty on the first. */
  | { readonly kind: "a4"; readonly start: number }
  /** A page for each label, for a label printer. */
  | { readonly kind: "roll"; readonly size: LabelSize };

/** A roll of the usual size. */
export const USUAL_ROLL: LabelPaper = { kind: "roll", size: UNIT_LABEL_MM };

/** What labels are made from. */
export type LabelInput = Pick<RecordSheetInput, "line" | "bookId" | "options">;

/**
 * Labels of units: a code that holds the serial number alone, so that a scanner types it, and beside it the same in large
 * letters, what the unit is and the revision that it was built to. A label with little room keeps code and serial number,
 * and leaves out from the bottom.
 */
export function composeUnitLabels(
  input: LabelInput,
  paper: LabelPaper,
  units: readonly LabelledUnit[],
): SheetDocument {
  const size = paper.kind === "roll" ? paper.size : UNIT_LABEL_MM;
  const labels = units.map((unit) => labelMarks(input, unit, size));
  const [only] = units.length === 1 ? units : [];
  const { language } = input.options;
  const name = [only?.unit ?? "", paper.kind === "roll" ? "roll" : ""]
    .filter((text) => text !== "")
    .join("-");
  const title = only?.unit ?? say(language, (w) => w.records.labels.count(units.length));
  const identity = recordIdentity(input.line, { kind: "unit-labels", name, title }, input.options);
  const grids = [gridOf(input, units)];
  if (paper.kind === "a4")
    return assemble(identity, language, sheetBodies(input, labels, paper.start), grids);
  const pages = labels.map((marks): Page => ({ ...size, marks }));
  const hashes = bodyHashes(pages);
  return {
    id: identity.sheetId,
    fileName: identity.fileName,
    title: identity.documentTitle,
    language,
    pages,
    bodyHash: hashes.all,
    pageHashes: hashes.pages,
    code: "",
    grids,
    identity,
    drawing: null,
  };
}

/**
 * Lines of a text in the largest of some heights at which all of it fits; where it does not fit in two languages, in the
 * first; at the smallest, what fits of that, or nothing.
 */
function fitted(
  text: string,
  widthMm: number,
  roomMm: number,
): { readonly lines: readonly string[]; readonly heightMm: number } {
  const [first = ""] = text.split("\n");
  for (const own of [text, first])
    for (const heightMm of [TEXT.normal, 2.1, TEXT.small]) {
      const lines = wrap(own, widthMm, heightMm);
      if (lines.length * leadingMm(heightMm) <= roomMm) return { lines, heightMm };
    }
  const lines = wrap(first, widthMm, TEXT.small);
  const most = Math.floor(roomMm / leadingMm(TEXT.small));
  if (most < 1) return { lines: [], heightMm: TEXT.small };
  const last = lines[most - 1] ?? "";
  return {
    lines: lines.length <= most ? lines : [...lines.slice(0, most - 1), `${last.slice(0, -1)}…`],
    heightMm: TEXT.small,
  };
}

/** Side of a code: as large as the label has room for, its squares whole dots of a label printer. */
function codeSide(
  text: string,
  { widthMm, heightMm }: LabelSize,
): { readonly sideMm: number; readonly quietMm: number } {
  const { modules } = codeSquares(text);
  const most = Math.min(CODE_MM, widthMm / 2) / modules;
  const fits = Math.min(most, heightMm / (modules + 2 * QUIET_MODULES));
  const moduleMm = Math.max(LEAST_DOTS, Math.floor(fits / DOT_MM)) * DOT_MM;
  return { sideMm: modules * moduleMm, quietMm: QUIET_MODULES * moduleMm };
}

/** A label, its origin at its own top left corner. */
function labelMarks(input: LabelInput, labelled: LabelledUnit, size: LabelSize): Mark[] {
  const { options } = input;
  const { unit, what, type, book, revision } = labelled;
  const { sideMm, quietMm } = codeSide(unit, size);
  const textMm = quietMm + sideMm + quietMm;
  const widthMm = size.widthMm - textMm - EDGE_MM;
  const serialMm = SERIAL_MM.find((high) => textWidthMm(unit, high, "bold") <= widthMm) ?? TEXT.small;
  const topMm = Math.min(EDGE_MM, (size.heightMm - serialMm) / 2);
  const serial = wrap(unit, widthMm, serialMm, "bold").slice(0, 3);
  const footMm = size.heightMm - EDGE_MM - 0.8;
  const serialFootMm = topMm + serialMm + (serial.length - 1) * leadingMm(serialMm) + 0.2 * serialMm;
  const [language = "en"] = languagesOf(options.language);
  const footText = [
    what === "" ? "" : say(options.language, (w) => w.records.units[what], " · "),
    revision === "" ? "" : sheetWords(language).records.revision(revision),
  ]
    .filter((text) => text !== "")
    .join("\n");
  const roomMm = footMm - serialFootMm - 1;
  const foot = fitted(footText, widthMm, Math.min(roomMm, 2 * leadingMm(TEXT.small) + 0.01));
  const footTopMm = footMm - foot.lines.length * leadingMm(foot.heightMm);
  const name = fitted(nameText(input, { what, type, book }), widthMm, footTopMm - serialFootMm - 1);
  return [
    {
      kind: "code",
      // On whole dots as well, or every dark square is a dot wider than every light one.
      at: at(quietMm, Math.round((size.heightMm - sideMm) / 2 / DOT_MM) * DOT_MM),
      sizeMm: sideMm,
      text: unit,
      layer: "TEXT",
    },
    ...serial.map((text, i) =>
      write(text, at(textMm, topMm + serialMm + i * leadingMm(serialMm)), {
        heightMm: serialMm,
        weight: "bold",
      }),
    ),
    ...name.lines.map((text, i) =>
      write(text, at(textMm, serialFootMm + 1 + name.heightMm + 0.5 + i * leadingMm(name.heightMm)), {
        heightMm: name.heightMm,
      }),
    ),
    ...foot.lines.map((text, i) =>
      write(text, at(textMm, footMm - (foot.lines.length - 1 - i) * leadingMm(foot.heightMm)), {
        heightMm: foot.heightMm,
      }),
    ),
  ];
}

const nameText = (
  input: LabelInput,
  { what, type, book }: Pick<LabelledUnit, "what" | "type" | "book">,
): string =>
  what === ""
    ? say(input.options.language, (w) => w.records.unknownUnit)
    : nameOfType(input, { what, type, book }, "\n");

/** Pages of labels to be cut. */
function sheetBodies(
  { options }: LabelInput,
  labels: readonly (readonly Mark[])[],
  start: number,
): PageBody[] {
  const { widthMm, heightMm } = UNIT_LABEL_MM;
  const hint = say(options.language, (w) => w.records.labels.hint);
  const bodies: PageBody[] = [];
  for (let next = 0; next < labels.length || bodies.length === 0; ) {
    const room = roomOf(SHEET, bodies.length);
    const lines = wrap(hint, room.widthMm, TEXT.small);
    const topMm = lines.length * leadingMm(TEXT.small) + 1;
    const columns = Math.floor(room.widthMm / widthMm);
    const places = columns * Math.floor((room.heightMm - topMm) / heightMm);
    // A sheet has places before the first label only if it was begun; one that is used up is a new one.
    const used = bodies.length === 0 ? Math.min(start, places) - 1 : 0;
    const own = labels.slice(next, next + places - used);
    next += Math.max(1, own.length);
    bodies.push({
      paper: SHEET,
      marks: [
        ...lines.map((text, i) =>
          write(text, at(room.xMm, room.yMm + TEXT.small + i * leadingMm(TEXT.small)), {
            heightMm: TEXT.small,
          }),
        ),
        ...own.map((marks, i) =>
          group(
            [rect(box(0, 0, widthMm, heightMm), stroke("faint", LINE.thin, [3, 2])), ...marks],
            room.xMm + ((used + i) % columns) * widthMm,
            room.yMm + topMm + Math.floor((used + i) / columns) * heightMm,
          ),
        ),
      ],
    });
  }
  return bodies;
}

function gridOf(input: LabelInput, units: readonly LabelledUnit[]): Grid {
  const [language = "en"] = languagesOf(input.options.language);
  const w = sheetWords(language).records;
  return {
    name: w.kinds["unit-labels"],
    header: [w.serial, w.type, w.what, w.certificate.revision, w.book],
    rows: units.map((one) => [
      one.unit,
      one.type,
      nameText(input, one).split("\n").join(" · "),
      one.revision,
      one.book,
    ]),
  };
}
