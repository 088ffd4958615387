import { languagesOf, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { FIELD, type TableRow, table } from "../compose/table.ts";
import type { SheetOptions } from "../options.ts";
import { type ChangeAbout, changeIdentity, fromToText, type Labels } from "./about.ts";

/** What a change note says. Texts come in both languages; the sheet sets those that it is made in. */
export interface ChangeNote extends ChangeAbout {
  /** What the designer wrote when the revision was released; blank: nothing. */
  readonly why: string;
  readonly subjects: readonly { readonly subject: Labels; readonly sentences: readonly Labels[] }[];
  /** Sheets that say something else. */
  readonly sheets: readonly {
    readonly number: string;
    readonly title: Labels;
    readonly what: "changed" | "new" | "gone";
    /** From 1; of a sheet that is changed. */
    readonly pages: readonly number[];
  }[];
  readonly harnesses: readonly {
    readonly harness: string;
    readonly labels: Labels;
    readonly does: Labels;
    /** Units of it that are in no machine: in stock or in work. */
    readonly loose: number;
  }[];
  readonly tools: readonly Labels[];
  /** Units that were begun to an earlier revision, as ranges of serial numbers. */
  readonly units: readonly { readonly revision: string; readonly list: string }[];
}

/** `1–3, 5`: numbers of pages, those in a row as a range. */
export function rangesText(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const ranges: [number, number][] = [];
  for (const n of sorted) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] === n - 1) last[1] = n;
    else ranges.push([n, n]);
  }
  return ranges.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a}–${b}`)).join(", ");
}

/** The change note of two revisions: what changed, why, and what it means for sheets, stock, units and tools. */
export function composeChangeNote(note: ChangeNote, options: SheetOptions): SheetDocument {
  const { language } = options;
  const count = note.subjects.reduce((sum, { sentences }) => sum + sentences.length, 0);
  return composeListing({
    identity: changeIdentity(note, "change-note", options),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(language, (w) => w.change.note.title),
      subtitle: fromToText(note, language),
      facts: [
        say(language, (w) => w.change.note.changes(count), " · "),
        say(language, (w) => w.change.note.sheetCount(note.sheets.length), " · "),
      ],
    },
    cautions: [],
    blocks: (widthMm) => noteBlocks(note, options, widthMm),
    grids: [changesGrid(note, options), sheetsGrid(note, options)],
  });
}

function noteBlocks(note: ChangeNote, options: SheetOptions, widthMm: number): readonly Block[] {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1], joint = "\n"): string => say(language, choose, joint);
  const continued = words((w) => w.common.continued, " · ");
  const text = (labels: Labels): string => label(language, labels, "");
  const heading = (choose: Parameters<typeof say>[1]): Block[] => [
    gap(4),
    { ...paragraph(words(choose, " · "), widthMm, TEXT.large, true), keepMm: 14 },
  ];
  const none = paragraph(
    words((w) => w.change.none, " · "),
    widthMm,
    TEXT.normal,
  );
  const of = (columns: Parameters<typeof table>[0], rows: readonly TableRow[]): Block[] =>
    rows.length === 0 ? [none] : table(columns, rows, widthMm, continued);
  return [
    ...heading((w) => w.change.note.what),
    ...of(
      [{ header: "", grow: true }],
      note.subjects.flatMap(({ subject, sentences }): TableRow[] => [
        { kind: "group", text: label(language, subject, "", " · ") },
        ...sentences.map((sentence): TableRow => ({ kind: "row", cells: [text(sentence)] })),
      ]),
    ),
    ...heading((w) => w.change.note.why),
    paragraph(note.why === "" ? words((w) => w.change.note.noWhy) : note.why, widthMm, TEXT.normal),
    ...heading((w) => w.change.note.sheets),
    ...of(
      [
        { header: words((w) => w.change.note.sheet), grow: true, detail: true },
        { header: "", minMm: 24 },
        { header: "", minMm: 30 },
      ],
      note.sheets.map((sheet) => ({
        kind: "row",
        cells: [
          `${sheet.number}\n${label(language, sheet.title, sheet.number)}`,
          words((w) => w.change.note.state[sheet.what]),
          sheet.pages.length === 0 ? "" : words((w) => w.change.note.pages(rangesText(sheet.pages))),
        ],
      })),
    ),
    ...heading((w) => w.change.note.stock),
    ...of(
      [
        { header: words((w) => w.change.note.harness), detail: true, minMm: 30 },
        { header: words((w) => w.change.note.means), grow: true },
        { header: words((w) => w.change.note.loose), align: "end", heightMm: TEXT.large, minMm: 20 },
      ],
      note.harnesses.map((harness) => ({
        kind: "row",
        cells: [`${harness.harness}\n${text(harness.labels)}`, text(harness.does), String(harness.loose)],
      })),
    ),
    ...heading((w) => w.change.note.units),
    ...(note.units.length === 0
      ? [
          paragraph(
            words((w) => w.change.note.noUnits),
            widthMm,
            TEXT.normal,
          ),
        ]
      : of(
          [
            { header: "", grow: true },
            { header: "", minMm: 50 },
          ],
          note.units.map(({ revision, list }) => ({
            kind: "row",
            cells: [list, words((w) => w.change.note.keep(revision))],
          })),
        )),
    ...heading((w) => w.change.note.tools),
    ...of(
      [{ header: "", grow: true }],
      note.tools.map((tool) => ({ kind: "row", cells: [text(tool)] })),
    ),
    gap(6),
    ...signatures(language, widthMm, continued),
  ];
}

/** Who answers for it, as ISO 7200 names the fields: creator, checker, approval person, each with a date. */
function signatures(
  language: SheetOptions["language"],
  widthMm: number,
  continued: string,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const who = [
    words((w) => w.change.note.prepared),
    words((w) => w.change.note.checked),
    words((w) => w.change.note.approved),
  ];
  const date = words((w) => w.change.note.date);
  return table(
    who.flatMap((header) => [
      { header, heightMm: TEXT.head, grow: true },
      { header: date, heightMm: TEXT.head, minMm: 24 },
    ]),
    [{ kind: "row", cells: who.flatMap(() => [FIELD, FIELD]) }],
    widthMm,
    continued,
  );
}

function changesGrid(note: ChangeNote, { language }: SheetOptions): Grid {
  const [first = "en"] = languagesOf(language);
  const w = sheetWords(first).change.note;
  return {
    name: w.what,
    header: ["", w.what],
    rows: note.subjects.flatMap(({ subject, sentences }) =>
      sentences.map((sentence) => [label(first, subject, ""), label(first, sentence, "")]),
    ),
  };
}

function sheetsGrid(note: ChangeNote, { language }: SheetOptions): Grid {
  const [first = "en"] = languagesOf(language);
  const w = sheetWords(first).change.note;
  return {
    name: w.sheet,
    header: [w.sheet, "", "", w.pages("")],
    rows: note.sheets.map((sheet) => [
      sheet.number,
      label(first, sheet.title, ""),
      w.state[sheet.what],
      rangesText(sheet.pages),
    ]),
  };
}
