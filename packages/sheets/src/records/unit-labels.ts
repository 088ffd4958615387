import { compareText } from "@pinwright/kernel";
import { languagesOf, sheetWords } from "@pinwright/words";
import { bodyHash } from "../compose/body-hash.ts";
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
import { kindText, type RecordSheetInput, typeText } from "./texts.ts";

/** A roll label that label printers take: common practice, no source. */
const UNIT_LABEL_MM = { widthMm: 62, heightMm: 29 } as const;
/** Nothing is printed nearer to the edge of a label: common practice, no source. */
const EDGE_MM = 2;
const CODE_MM = 18;
/** Modules that stay white round a code: ISO/IEC 18004, 4 for a QR code. */
const QUIET_MODULES = 4;
const SERIAL_MM = [5.5, TEXT.head, 4.5, 4, TEXT.large, 3, TEXT.normal] as const;
const SHEET = PAPERS["a4-landscape"];

/**
 * Labels of units: a code that holds the serial number alone, so that a scanner types it, and beside it the same in large
 * letters, what the unit is and the revision that it was built to.
 * @param unitIds units to label, in this order; those that no record names are left out; absent: all, by serial number
 * @param paper `a4`: sheets to be cut, with a title block; `roll`: a page of 62 × 29 mm for each, for a label printer
 */
export function composeUnitLabels(
  input: RecordSheetInput,
  paper: "a4" | "roll",
  unitIds: readonly string[] = [...input.units.keys()].sort(compareText),
): SheetDocument {
  const ids = unitIds.filter((id) => input.units.has(id));
  const labels = ids.map((id) => labelMarks(input, id));
  const [only] = ids.length === 1 ? ids : [];
  const { language } = input.options;
  const name = [only ?? "", paper === "roll" ? paper : ""].filter((text) => text !== "").join("-");
  const title = only ?? say(language, (w) => w.records.labels.count(ids.length));
  const identity = recordIdentity(input.line, { kind: "unit-labels", name, title }, input.options);
  const grids = [gridOf(input, ids)];
  if (paper === "a4") return assemble(identity, language, sheetBodies(input, labels), grids);
  const pages = labels.map((marks): Page => ({ ...UNIT_LABEL_MM, marks }));
  return {
    id: identity.sheetId,
    fileName: identity.fileName,
    title: identity.documentTitle,
    language,
    pages,
    bodyHash: bodyHash(pages),
    code: "",
    grids,
    identity,
    drawing: null,
  };
}

/** Lines of a text in the largest of some heights at which all of it fits; at the smallest, what fits. */
function fitted(
  text: string,
  widthMm: number,
  roomMm: number,
): { readonly lines: readonly string[]; readonly heightMm: number } {
  for (const heightMm of [TEXT.normal, 2.1, TEXT.small]) {
    const lines = wrap(text, widthMm, heightMm);
    if (lines.length * leadingMm(heightMm) <= roomMm) return { lines, heightMm };
  }
  const lines = wrap(text, widthMm, TEXT.small);
  const most = Math.max(1, Math.floor(roomMm / leadingMm(TEXT.small)));
  const last = lines[most - 1] ?? "";
  return {
    lines: lines.length <= most ? lines : [...lines.slice(0, most - 1), `${last.slice(0, -1)}…`],
    heightMm: TEXT.small,
  };
}

/** A label, its origin at its own top left corner. */
function labelMarks(input: RecordSheetInput, unit: string): Mark[] {
  const { options, units } = input;
  const state = units.get(unit);
  const quietMm = (QUIET_MODULES * CODE_MM) / codeSquares(unit).modules;
  const leftMm = Math.max(EDGE_MM, quietMm);
  const textMm = leftMm + CODE_MM + quietMm;
  const widthMm = UNIT_LABEL_MM.widthMm - textMm - EDGE_MM;
  const serialMm = SERIAL_MM.find((size) => textWidthMm(unit, size, "bold") <= widthMm) ?? TEXT.small;
  const serial = wrap(unit, widthMm, serialMm, "bold").slice(0, 3);
  const footMm = UNIT_LABEL_MM.heightMm - EDGE_MM - 0.8;
  const revision = state?.begun?.revision ?? "";
  const foot = fitted(
    [
      state === undefined ? "" : kindText(state, options),
      revision === "" ? "" : say(options.language, (w) => w.records.revision(revision), " · "),
    ]
      .filter((text) => text !== "")
      .join("\n"),
    widthMm,
    2 * leadingMm(TEXT.small) + 0.01,
  );
  const serialFootMm = EDGE_MM + serialMm + (serial.length - 1) * leadingMm(serialMm) + 0.2 * serialMm;
  const footTopMm = footMm - foot.lines.length * leadingMm(foot.heightMm);
  const name = fitted(
    state === undefined ? "" : typeText(input, state, "\n"),
    widthMm,
    footTopMm - serialFootMm - 1,
  );
  return [
    {
      kind: "code",
      at: at(leftMm, (UNIT_LABEL_MM.heightMm - CODE_MM) / 2),
      sizeMm: CODE_MM,
      text: unit,
      layer: "TEXT",
    },
    ...serial.map((text, i) =>
      write(text, at(textMm, EDGE_MM + serialMm + i * leadingMm(serialMm)), {
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

/** Pages of labels to be cut. */
function sheetBodies({ options }: RecordSheetInput, labels: readonly (readonly Mark[])[]): PageBody[] {
  const { widthMm, heightMm } = UNIT_LABEL_MM;
  const hint = say(options.language, (w) => w.records.labels.hint);
  const bodies: PageBody[] = [];
  for (let next = 0; next < labels.length || bodies.length === 0; ) {
    const room = roomOf(SHEET, bodies.length);
    const lines = wrap(hint, room.widthMm, TEXT.small);
    const topMm = lines.length * leadingMm(TEXT.small) + 1;
    const columns = Math.floor(room.widthMm / widthMm);
    const own = labels.slice(next, next + columns * Math.floor((room.heightMm - topMm) / heightMm));
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
            room.xMm + (i % columns) * widthMm,
            room.yMm + topMm + Math.floor(i / columns) * heightMm,
          ),
        ),
      ],
    });
  }
  return bodies;
}

function gridOf(input: RecordSheetInput, ids: readonly string[]): Grid {
  const [language = "en"] = languagesOf(input.options.language);
  const w = sheetWords(language).records;
  return {
    name: w.kinds["unit-labels"],
    header: [w.serial, w.type, w.what, w.certificate.revision, w.book],
    rows: ids.map((id) => {
      const state = input.units.get(id);
      const begun = state?.begun;
      return [
        id,
        begun?.type ?? "",
        state === undefined ? "" : typeText(input, state),
        begun?.revision ?? "",
        begun?.book ?? "",
      ];
    }),
  };
}
