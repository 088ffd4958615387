import { type HarnessResult, type LineResult, type WireLabel, wireLabels } from "@pinwright/engine";
import type { SheetDocument } from "../compose/document.ts";
import { at, box, LINE, line, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import type { Mark } from "../compose/mark.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { emMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

/** Between labels, for the knife. */
const GUTTER_MM = 3;
const CUT_MM = 1.6;

/** Cut marks outside the four corners of a label. */
function cutMarks(xMm: number, yMm: number, widthMm: number, heightMm: number): Mark[] {
  const pen = stroke("ink", LINE.hair);
  const marks: Mark[] = [];
  for (const x of [xMm, xMm + widthMm]) {
    for (const y of [yMm, yMm + heightMm]) {
      const outX = x === xMm ? -1 : 1;
      const outY = y === yMm ? -1 : 1;
      marks.push(
        line(at(x + outX * 0.2, y), at(x + outX * (GUTTER_MM / 2 - 0.1), y), pen),
        line(at(x, y + outY * 0.2), at(x, y + outY * CUT_MM), pen),
      );
    }
  }
  return marks;
}

/** Where this end goes, and where the other one does. */
function fieldLines(wireLabel: WireLabel, options: SheetOptions): string[] {
  const width = options.label.widthMm - 2;
  return [...wrap(wireLabel.here, width, TEXT.small), ...wrap(`→ ${wireLabel.there}`, width, TEXT.small)];
}

/**
 * The code in big figures, where this end goes below it, and where the wire comes from.
 */
function fieldMarks(wireLabel: WireLabel, xMm: number, yMm: number, options: SheetOptions): Mark[] {
  const { widthMm } = options.label;
  const numberMm = textWidthMm(wireLabel.code, TEXT.normal, "bold") <= widthMm - 2 ? TEXT.normal : TEXT.small;
  const lines = fieldLines(wireLabel, options);
  const step = 1.02 * emMm(TEXT.small);
  const marks: Mark[] = [];
  let baseline = yMm + 0.9 + numberMm;
  marks.push(write(wireLabel.code, at(xMm + 1, baseline), { heightMm: numberMm, weight: "bold" }));
  for (const text of lines) {
    baseline += step;
    marks.push(write(text, at(xMm + 1, baseline), { heightMm: TEXT.small }));
  }
  return marks;
}

function labelRow(labels: readonly WireLabel[], options: SheetOptions): Block {
  const { widthMm, fieldMm, tailMm } = options.label;
  const heightMm = fieldMm + tailMm;
  const marks = labels.flatMap((l, i) => {
    const x = i * (widthMm + GUTTER_MM) + GUTTER_MM / 2;
    const y = CUT_MM + 0.2;
    return [
      ...cutMarks(x, y, widthMm, heightMm),
      rect(box(x, y, widthMm, fieldMm), stroke("faint", LINE.hair)),
      ...fieldMarks(l, x, y, options),
    ];
  });
  return { heightMm: heightMm + 2 * CUT_MM + 0.6, marks };
}

/** Height of the printed field that a label needs for its texts. */
function needsMm(l: WireLabel, options: SheetOptions): number {
  const lines = fieldLines(l, options).length;
  return 0.9 + TEXT.normal + lines * 1.02 * emMm(TEXT.small) + 0.7;
}

/** A sheet of wire labels: two for each wire, with a clear tail that wraps over the print, and cut marks. */
export function composeWireLabels(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const labels = wireLabels(harness);
  // A text that does not fit makes all fields higher: nothing is cut off, and a sheet is cut in straight lines.
  const fieldMm = Math.max(options.label.fieldMm, ...labels.map((l) => needsMm(l, options)));
  const own: SheetOptions = { ...options, label: { ...options.label, fieldMm } };
  const { widthMm, tailMm } = own.label;
  const words = (choose: Parameters<typeof say>[1]): string => say(options.language, choose);
  const sizes = words(
    (w) =>
      `${w.labels.size(shortMm(widthMm), shortMm(fieldMm), shortMm(tailMm))}. ${w.labels.fits(shortMm(Math.floor((tailMm / Math.PI) * 10) / 10))}.`,
  );
  return composeHarnessListing(line, harness, options, {
    kind: "wire-labels",
    paper: "a4-portrait",
    facts: [
      say(options.language, (w) => w.labels.count(labels.length), " · "),
      say(options.language, (w) => w.common.wires(harness.wires.length), " · "),
    ],
    blocks: (bodyMm) => {
      const perRow = Math.max(1, Math.floor(bodyMm / (widthMm + GUTTER_MM)));
      const rows: Block[] = [];
      for (let i = 0; i < labels.length; i += perRow) rows.push(labelRow(labels.slice(i, i + perRow), own));
      return [
        paragraph(
          words((w) => w.labels.hint),
          bodyMm,
          TEXT.small,
        ),
        paragraph(sizes, bodyMm, TEXT.small),
        ...rows,
      ];
    },
    grids: [labelGrid(labels, words)],
  });
}

function labelGrid(labels: readonly WireLabel[], words: (choose: Parameters<typeof say>[1]) => string): Grid {
  const first = (text: string): string => text.split("\n")[0] ?? text;
  return {
    name: first(words((w) => w.kinds["wire-labels"])),
    header: [
      first(words((w) => w.common.wire)),
      first(words((w) => w.common.to)),
      first(words((w) => w.common.from)),
      "id",
    ],
    rows: labels.map((l) => [l.code, l.here, l.there, l.wireId]),
  };
}
