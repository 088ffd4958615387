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

/** From line to line of a printed field: lines of figures are staggered and stand closer than those with names. */
const FIGURES_MM = TEXT.small + 0.3;
const NAMES_MM = 1.02 * emMm(TEXT.small);
/** White beside the first and the last line of a field, both together. */
const EDGES_MM = 0.15;
const MOST_LINES = 3;

interface Field {
  readonly lines: readonly { readonly number: string; readonly rest: string; readonly xMm: number }[];
  readonly pitchMm: number;
  readonly heightMm: number;
}

/**
 * What is printed on a label: the number again and again round the wire, three lines at most and no more than one
 * turn of the wire shows. Where the turn and the line have room, this end and then the other one stand beside it;
 * on thinner wires the numbers stand by turns at the left and at the right.
 */
function fieldOf(wireLabel: WireLabel, widthMm: number): Field {
  const roundMm = Math.PI * wireLabel.odMm - EDGES_MM;
  const count = Math.max(1, Math.min(MOST_LINES, Math.floor(roundMm / FIGURES_MM)));
  const hasNames = count > 1 && count * NAMES_MM <= roundMm;
  const pitchMm = hasNames ? NAMES_MM : FIGURES_MM;
  const numberMm = textWidthMm(`${wireLabel.code}  `, TEXT.small, "bold");
  const fits = (text: string): boolean => numberMm + textWidthMm(text, TEXT.small) <= widthMm - 2;
  const names = hasNames ? [wireLabel.here, `→ ${wireLabel.there}`] : [];
  const twice = `${wireLabel.code}   ${wireLabel.code}`;
  const lines = Array.from({ length: count }, (_, i) => {
    const name = names[i] ?? "";
    if (name !== "" && fits(name)) return { number: wireLabel.code, rest: name, xMm: 0 };
    if (hasNames || count === 1) return { number: twice, rest: "", xMm: 0 };
    return { number: wireLabel.code, rest: "", xMm: i % 2 === 0 ? 0 : widthMm / 2 };
  });
  return { lines, pitchMm, heightMm: count * pitchMm + EDGES_MM };
}

function fieldMarks({ lines, pitchMm }: Field, xMm: number, yMm: number): Mark[] {
  return lines.flatMap(({ number, rest, xMm: inMm }, i): Mark[] => {
    const baseline = yMm + EDGES_MM / 2 + i * pitchMm + (pitchMm + TEXT.small) / 2;
    const numberMm = textWidthMm(`${number}  `, TEXT.small, "bold");
    const marks = [write(number, at(xMm + 1 + inMm, baseline), { heightMm: TEXT.small, weight: "bold" })];
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
