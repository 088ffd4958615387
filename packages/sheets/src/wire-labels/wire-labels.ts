import { type HarnessResult, type LineResult, type WireLabel, wireLabels } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { at, box, LINE, line, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import type { Mark } from "../compose/mark.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { emMm, leadingMm, textWidthMm } from "../compose/text.ts";
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

/** From line to line of a printed field. */
const PITCH_MM = 1.02 * emMm(TEXT.small);
/** White above the first line and below the last one of a field. */
const EDGE_MM = 0.35;

interface Field {
  readonly lines: readonly { readonly number: string; readonly rest: string }[];
  readonly heightMm: number;
}

/**
 * What is printed on a label: the number again and again round the wire, three lines at most and no more than one
 * turn of the wire shows; beside it, where the line has room, this end and then the other one. A wire too thin for
 * two lines has the number twice in one line.
 */
function fieldOf(wireLabel: WireLabel, widthMm: number): Field {
  const roundMm = Math.PI * wireLabel.odMm;
  const count = Math.max(1, Math.min(3, Math.floor((roundMm - 2 * EDGE_MM) / PITCH_MM)));
  const numberMm = textWidthMm(`${wireLabel.code}  `, TEXT.small, "bold");
  const rest = (text: string): string =>
    numberMm + textWidthMm(text, TEXT.small) <= widthMm - 2 ? text : "";
  const texts = [rest(wireLabel.here), rest(`→ ${wireLabel.there}`), ""];
  const lines = texts.slice(0, count).map((text) => ({ number: wireLabel.code, rest: text }));
  const single = [{ number: `${wireLabel.code}   ${wireLabel.code}`, rest: "" }];
  return { lines: count === 1 ? single : lines, heightMm: count * PITCH_MM + 2 * EDGE_MM };
}

function fieldMarks({ lines }: Field, xMm: number, yMm: number): Mark[] {
  return lines.flatMap(({ number, rest }, i): Mark[] => {
    const baseline = yMm + EDGE_MM + i * PITCH_MM + TEXT.small + 0.2 * (PITCH_MM - TEXT.small);
    const numberMm = textWidthMm(`${number}  `, TEXT.small, "bold");
    const marks = [write(number, at(xMm + 1, baseline), { heightMm: TEXT.small, weight: "bold" })];
    return rest === ""
      ? marks
      : [...marks, write(rest, at(xMm + 1 + numberMm, baseline), { heightMm: TEXT.small })];
  });
}

/** A row of labels, and below each one, beside the cut, the end that it goes on. */
function labelRow(labels: readonly WireLabel[], options: SheetOptions): Block {
  const { widthMm, tailMm } = options.label;
  const fields = labels.map((l) => fieldOf(l, widthMm));
  const heightMm = Math.max(...fields.map((f) => f.heightMm)) + tailMm;
  const captions = labels.map((l) => wrap(`${l.code} · ${l.here}`, widthMm, TEXT.small));
  const y = CUT_MM + 0.2;
  const marks = fields.flatMap((field, i) => {
    const x = i * (widthMm + GUTTER_MM) + GUTTER_MM / 2;
    return [
      ...cutMarks(x, y, widthMm, heightMm),
      rect(box(x, y, widthMm, field.heightMm), stroke("faint", LINE.hair)),
      ...fieldMarks(field, x, y),
      ...(captions[i] ?? []).map((text, n) =>
        write(text, at(x + 0.5, y + heightMm + CUT_MM + TEXT.small + 0.4 + n * leadingMm(TEXT.small)), {
          heightMm: TEXT.small,
        }),
      ),
    ];
  });
  const captionMm = Math.max(...captions.map((c) => c.length)) * leadingMm(TEXT.small);
  return { heightMm: heightMm + 2 * CUT_MM + captionMm + 2, marks };
}

/**
 * A sheet of wire labels: two for each wire, the number readable from any side, a clear tail that wraps over the
 * print, cut marks, and under each label the end that it goes on.
 */
export function composeWireLabels(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const labels = wireLabels(harness);
  const { widthMm, tailMm } = options.label;
  const words = (choose: Parameters<typeof say>[1]): string => say(options.language, choose);
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
      for (let i = 0; i < labels.length; i += perRow)
        rows.push(labelRow(labels.slice(i, i + perRow), options));
      return [
        paragraph(
          words((w) => `${w.labels.hint} ${w.labels.ends}`),
          bodyMm,
          TEXT.small,
        ),
        paragraph(
          words((w) => w.labels.size(shortMm(widthMm), shortMm(tailMm))),
          bodyMm,
          TEXT.small,
        ),
        ...rows,
      ];
    },
    grids: [labelGrid(labels, options)],
  });
}

function labelGrid(labels: readonly WireLabel[], { language }: SheetOptions): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  return {
    name: w.kinds["wire-labels"],
    header: [w.common.wire, w.labels.thisEnd, w.labels.otherEnd, "id"],
    rows: labels.map((l) => [l.code, l.here, l.there, l.wireId]),
  };
}
