import {
  type CheckedDimension,
  dimensionsOf,
  type JudgedDimension,
  type JudgedSample,
  judgeDimension,
  judgeSample,
  labelsOf,
  type Machine,
} from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { at, LINE, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { FIELD, type TableColumn, TICK, table } from "../compose/table.ts";
import { textWidthMm } from "../compose/text.ts";
import type { SheetOptions } from "../options.ts";
import { outsideIdentity } from "./identity.ts";

type Say = (choose: Parameters<typeof say>[1], joint?: string) => string;

const BALLOON_MM = 9;
/** Room above the first line of a cell, and at its left: as tables set them. */
const ABOVE_MM = 1.5;
const LEFT_MM = 1.2;

/** Lettering of readings: a field to write in is 1.7 times as high. */
const READING_MM = 5;

/** Lettering of the field for remarks. */
const REMARK_MM = 7;

/** `±0.1`, `+0.1 −0.2`, `+0.1 0`; a dash for what is only looked at. */
export function toleranceText({ nominal, minus, plus }: CheckedDimension): string {
  if (nominal === null) return "—";
  if (minus === plus) return `±${shortNumber(plus, 4)}`;
  const signed = (sign: string, value: number): string =>
    value === 0 ? "0" : `${sign}${shortNumber(value, 4)}`;
  return `${signed("+", plus)} ${signed("−", minus)}`;
}

/**
 * The first-article check of a part: its marked dimensions by their balloons with tolerance and limits, and boxes for
 * the readings; of a sample that was measured the readings stand in them.
 * @param sampleId sample that is checked; null: a blank sheet to be filled in by hand
 * @returns null when the book has no such part, or the shop no such sample of it
 */
export function composeCheckSheet(
  machine: Machine,
  partId: string,
  sampleId: string | null,
  options: SheetOptions,
): SheetDocument | null {
  const part = machine.book.tables.parts.find(({ id }) => id === partId);
  const sample = sampleId === null ? null : judgeSample(machine, sampleId);
  if (part === undefined || (sampleId !== null && sample?.row.part !== partId)) return null;
  const { language } = options;
  const words: Say = (choose, joint) => say(language, choose, joint);
  const title = words((w) => w.outside.check.title);
  const revision = sample?.row.revision ?? part.revision;
  const name = label(language, labelsOf(part, partId), partId, " · ");
  const dimensions =
    sample?.dimensions ?? dimensionsOf(machine, partId).map((dimension) => judgeDimension(dimension, null));
  return composeListing({
    identity: outsideIdentity(
      machine,
      {
        name: `first-article-${sampleId ?? partId}`,
        number: `FA-${partId}`,
        documentType: title,
        title: `${partId}\n${name}`,
        revision,
      },
      options,
    ),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: revision,
      title,
      subtitle: name === partId ? partId : `${partId} · ${name}`,
      facts: sampleFacts(machine, sample, words),
    },
    cautions: [],
    blocks: (widthMm) => checkBlocks(dimensions, sample, words, language, widthMm),
    grids: [checkGrid(dimensions, language === "zh" ? "zh" : "en")],
  });
}

function sampleFacts(machine: Machine, sample: JudgedSample | null, words: Say): readonly string[] {
  if (sample === null) return [words((w) => w.outside.check.noSample, " · ")];
  const { row } = sample;
  const supplier = machine.shop.tables.suppliers.find(({ id }) => id === row.supplier);
  return [
    `${words((w) => w.outside.check.sample, " · ")} ${row.id}`,
    row.made === "" ? "" : words((w) => w.outside.check.made(row.made), " · "),
    supplier === undefined
      ? ""
      : words((w) => w.outside.check.supplier(supplier.label || supplier.id), " · "),
  ].filter((fact) => fact !== "");
}

/** A balloon as it stands on the drawing. */
function balloon(mark: string): readonly Mark[] {
  const middle = at(LEFT_MM + BALLOON_MM / 2, ABOVE_MM + BALLOON_MM / 2);
  const heightMm =
    [TEXT.head, TEXT.large, TEXT.normal].find((size) => textWidthMm(mark, size, "bold") < BALLOON_MM - 2) ??
    TEXT.small;
  return [
    {
      kind: "circle",
      at: middle,
      radiusMm: BALLOON_MM / 2,
      stroke: stroke("ink", LINE.strong),
      fill: null,
      layer: "BORDER",
    },
    write(mark, at(middle.xMm, middle.yMm + heightMm / 2), { heightMm, weight: "bold", anchor: "middle" }),
  ];
}

function readingText(dimension: JudgedDimension, isSample: boolean): string {
  if (!isSample || dimension.verdict === "open") return FIELD;
  if (dimension.nominal === null) return "—";
  return dimension.reading === null ? FIELD : shortNumber(dimension.reading, 4);
}

/** The cell of one verdict: ticked, left open, or to be ticked. */
const verdictText = (dimension: JudgedDimension, verdict: "pass" | "fail"): string =>
  dimension.verdict === "open" ? TICK : dimension.verdict === verdict ? "×" : "";

function checkBlocks(
  dimensions: readonly JudgedDimension[],
  sample: JudgedSample | null,
  words: Say,
  language: SheetOptions["language"],
  widthMm: number,
): readonly Block[] {
  const continued = words((w) => w.common.continued, " · ");
  const unit = (dimension: CheckedDimension): string =>
    dimension.nominal === null ? "" : ` ${dimension.unit}`;
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.outside.check.balloon), minMm: BALLOON_MM, heightMm: BALLOON_MM },
    { header: words((w) => w.outside.check.dimension), grow: true, detail: true },
    {
      header: words((w) => w.outside.check.nominal),
      heightMm: TEXT.large,
      weight: "bold",
      align: "end",
      whole: true,
    },
    { header: words((w) => w.outside.check.tolerance), align: "end", whole: true },
    { header: words((w) => w.outside.check.limits), align: "end", whole: true },
    {
      header: words((w) => w.outside.check.reading),
      heightMm: READING_MM,
      weight: "bold",
      align: "end",
      minMm: 26,
      whole: true,
    },
    { header: words((w) => w.outside.check.pass), heightMm: READING_MM, align: "middle", whole: true },
    { header: words((w) => w.outside.check.fail), heightMm: READING_MM, align: "middle", whole: true },
  ];
  const rows = dimensions.map((dimension) => ({
    kind: "row" as const,
    cells: [
      "",
      [
        label(language, dimension.labels, dimension.mark, " · "),
        dimension.how.en === ""
          ? ""
          : `${words((w) => w.outside.check.how, " · ")}: ${label(language, dimension.how, "", " · ")}`,
      ]
        .filter((text) => text !== "")
        .join("\n"),
      dimension.nominal === null
        ? words((w) => w.outside.check.look, " · ")
        : `${shortNumber(dimension.nominal, 4)}${unit(dimension)}`,
      toleranceText(dimension),
      dimension.min === null || dimension.max === null
        ? "—"
        : `${shortNumber(dimension.min, 4)} … ${shortNumber(dimension.max, 4)}`,
      readingText(dimension, sample !== null),
      verdictText(dimension, "pass"),
      verdictText(dimension, "fail"),
    ],
  }));
  const list = table(columns, rows, widthMm, continued).map((block, i) => {
    const mark = dimensions[i - 1]?.mark;
    return mark === undefined ? block : { ...block, marks: [...block.marks, ...balloon(mark)] };
  });
  return [
    paragraph(
      words((w) => w.outside.check.hint),
      widthMm,
      TEXT.normal,
    ),
    gap(2),
    ...(dimensions.length === 0
      ? [
          paragraph(
            words((w) => w.outside.check.none),
            widthMm,
            TEXT.large,
            true,
          ),
        ]
      : list),
    gap(5),
    ...together(decisionBlocks(sample, words, widthMm, continued)),
  ];
}

/** Blocks that stand on one page. */
function together(blocks: readonly Block[]): readonly Block[] {
  const [first, ...others] = blocks;
  if (first === undefined) return [];
  return [{ ...first, keepMm: others.reduce((sum, { heightMm }) => sum + heightMm, 0) }, ...others];
}

function decisionBlocks(
  sample: JudgedSample | null,
  words: Say,
  widthMm: number,
  continued: string,
): Block[] {
  const row = sample?.row;
  const isDecided = row?.state === "approved" || row?.state === "sent-back";
  const tick = (state: string): string => (isDecided ? (row?.state === state ? "×" : "") : TICK);
  const field = (text: string | undefined): string => (text === undefined || text === "" ? FIELD : text);
  const measured = [...new Set(sample?.dimensions.map(({ by }) => by).filter(Boolean) ?? [])].join(", ");
  return [
    ...table(
      [
        { header: "", heightMm: READING_MM, align: "middle", minMm: 10 },
        { header: words((w) => w.outside.check.decision), heightMm: TEXT.large, weight: "bold", grow: true },
      ],
      [
        { kind: "row", cells: [tick("approved"), words((w) => w.outside.check.approve, " · ")] },
        { kind: "row", cells: [tick("sent-back"), words((w) => w.outside.check.back, " · ")] },
      ],
      widthMm,
      continued,
    ),
    gap(2),
    ...table(
      [
        {
          header: words((w) => w.outside.check.remark),
          heightMm: row?.remark ? TEXT.normal : REMARK_MM,
          grow: true,
        },
      ],
      [{ kind: "row", cells: [field(row?.remark)] }],
      widthMm,
      continued,
    ),
    gap(2),
    ...table(
      [
        { header: words((w) => w.outside.check.by), heightMm: TEXT.large, grow: true },
        { header: words((w) => w.outside.check.decidedBy), heightMm: TEXT.large, grow: true },
        { header: words((w) => w.outside.check.on), heightMm: TEXT.large, minMm: 35 },
      ],
      [{ kind: "row", cells: [field(measured), field(row?.by), field(row?.decided)] }],
      widthMm,
      continued,
    ),
  ];
}

function checkGrid(dimensions: readonly JudgedDimension[], language: "en" | "zh"): Grid {
  const w = sheetWords(language).outside.check;
  return {
    name: w.title,
    header: [w.balloon, w.dimension, w.nominal, "−", "+", "min", "max", "unit", w.reading, w.pass],
    rows: dimensions.map((d) => [
      d.mark,
      label(language, d.labels, d.mark),
      d.nominal ?? w.look,
      d.minus,
      d.plus,
      d.min ?? "",
      d.max ?? "",
      d.unit,
      d.reading ?? "",
      d.verdict === "pass" ? w.pass : d.verdict === "fail" ? w.failed : "",
    ]),
  };
}
