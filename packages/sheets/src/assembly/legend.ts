import type { LineResult, ScrewSymbol } from "@pinwright/engine";
import type { SheetLanguage, SheetWords } from "@pinwright/words";
import { at, box, group, LINE, line, rect, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Ink, Mark, Stroke } from "../compose/mark.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, TICK } from "../compose/table.ts";
import { leadingMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import type { ScrewGroup } from "./step-facts.ts";
import { howText, momentsText, screwText } from "./step-texts.ts";
import { symbolMark } from "./symbol-mark.ts";
import { type SymbolRow, symbolTable } from "./symbol-table.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** A table narrower than this has screw and tool in one column. */
const NARROW_MM = 112;

/** `1–4, 7`: numbers in the order of driving, runs drawn together. */
export function numbersText(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b);
  const runs: { from: number; to: number }[] = [];
  for (const n of sorted) {
    const last = runs[runs.length - 1];
    if (last !== undefined && n === last.to + 1) last.to = n;
    else runs.push({ from: n, to: n });
  }
  return runs.map(({ from, to }) => (from === to ? `${from}` : `${from}–${to}`)).join(", ");
}

/**
 * The screws of a step as a table: symbol, letter, what it is, how many, how it is driven and what goes on with it.
 * @param ticked whether each line has a box to be ticked
 */
export function screwTable(
  line: LineResult,
  groups: readonly ScrewGroup[],
  numbers: ReadonlyMap<string, number>,
  language: SheetLanguage,
  widthMm: number,
  ticked = false,
): Block[] {
  const words: Say = (choose) => say(language, choose);
  const c = (choose: (w: Parameters<Parameters<typeof say>[1]>[0]["steps"]["columns"]) => string): string =>
    words((w) => choose(w.steps.columns));
  const narrow = widthMm < NARROW_MM;
  const symbolMm = Math.max(TEXT.head, line.machine.shop.numbers.symbol_mm);
  const letters = groups.map((g) => g.symbol.letter);
  const isSplit = new Set(letters).size < letters.length;
  const columns: TableColumn[] = [
    { header: c((w) => w.letter), heightMm: TEXT.head, weight: "bold", whole: true },
    { header: c((w) => w.count), heightMm: TEXT.head, weight: "bold", align: "end", whole: true },
    ...(narrow
      ? [{ header: c((w) => `${w.screw}; ${w.tool}`), grow: true }]
      : [
          { header: c((w) => w.screw), grow: true },
          { header: c((w) => w.tool), grow: true },
        ]),
    ...(isSplit ? [{ header: c((w) => w.numbers) }] : []),
    ...(ticked ? [{ header: words((w) => w.common.done), align: "middle" as const, whole: true }] : []),
  ];
  const rows = groups.map((g): SymbolRow => {
    const own = g.fastenerIds.flatMap((id) => numbers.get(id) ?? []);
    return {
      symbol: g.symbol,
      row: {
        kind: "row",
        cells: [
          g.symbol.letter,
          `${g.count}`,
          ...(narrow
            ? [`${screwText(g, language)}\n${howText(line, g, language)}`]
            : [screwText(g, language), howText(line, g, language)]),
          ...(isSplit ? [numbersText(own)] : []),
          ...(ticked ? [TICK] : []),
        ],
      },
    };
  });
  return symbolTable(
    c((w) => w.symbol),
    columns,
    rows,
    widthMm,
    words((w) => w.common.continued),
    symbolMm,
  );
}

/** Moments of driving, once for all screws that have the same ones. */
export function momentBlocks(
  groups: readonly ScrewGroup[],
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const byMoments = new Map<string, ScrewGroup[]>();
  for (const g of groups) {
    if (g.moments.length < 2) continue;
    const key = g.moments.join(" ");
    byMoments.set(key, [...(byMoments.get(key) ?? []), g]);
  }
  return [...byMoments.values()].map((own) => {
    const all = own.length === groups.length;
    const letters = [...new Set(own.map((g) => g.symbol.letter))].join(", ");
    const moments = own[0]?.moments ?? [];
    const text = say(language, (w) => `${all ? w.steps.allOf : letters}: ${momentsText(moments, w)}`);
    return paragraph(text, widthMm, TEXT.normal, true);
  });
}

function signRow(sign: readonly Mark[], text: string, widthMm: number): Block {
  const lines = wrap(text, widthMm - 14, TEXT.small);
  const step = leadingMm(TEXT.small);
  const heightMm = Math.max(6.4, lines.length * step + 1.6);
  const top = heightMm / 2 - (lines.length * step) / 2;
  return {
    heightMm,
    marks: [
      group(sign, 5.5, heightMm / 2),
      ...lines.map((t, i) => write(t, at(14, top + (i + 0.75) * step), { heightMm: TEXT.small })),
    ],
  };
}

/** What is shown on a map, so that only signs that are there are explained. */
export interface MapSigns {
  readonly again: boolean;
  readonly dots: boolean;
  readonly items: boolean;
  readonly earlier: boolean;
  readonly later: boolean;
}

const dot = (radiusMm: number, pen: Stroke | null, fill: Ink | null, x = 0): Mark => ({
  kind: "circle",
  at: at(x, 0),
  radiusMm,
  stroke: pen,
  fill,
  layer: "HOLES",
});

/** What the signs on a screw map mean, of those that are on it. @param sample a symbol of the map */
export function signBlocks(
  symbolMm: number,
  sample: ScrewSymbol | null,
  shown: MapSigns,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const frame = box(-4.5, -2.2, 9, 4.4);
  const faint = stroke("faint", LINE.hair);
  const rows: readonly (readonly [
    shown: boolean,
    sign: readonly Mark[],
    text: (words: SheetWords) => string,
  ])[] = [
    [
      sample !== null,
      sample === null
        ? []
        : [
            symbolMark(sample, at(-2.6, 0), symbolMm),
            write(`${sample.letter} 1`, at(0.4, TEXT.normal / 2), { weight: "bold" }),
          ],
      (w) => (shown.again ? w.steps.map.nowAgain : w.steps.map.now),
    ],
    [
      shown.dots,
      [dot(0.6, null, "ink", -3), line(at(-2.4, 0), at(2, 0), stroke("ink", LINE.hair), "TEXT")],
      (w) => w.steps.map.dot,
    ],
    [shown.items, [rect(frame, stroke("ink", LINE.strong))], (w) => w.steps.map.item],
    [
      shown.earlier,
      [rect(frame, stroke("faint", LINE.thin)), dot(1.1, faint, "tint")],
      (w) => w.steps.map.earlier,
    ],
    [shown.later, [dot(0.7, faint, null)], (w) => w.steps.map.later],
  ];
  return [
    paragraph(
      say(language, (w) => w.steps.map.signs, " · "),
      widthMm,
      TEXT.normal,
      true,
    ),
    ...rows
      .filter(([is]) => is)
      .map(([, sign, text]) =>
        signRow(
          sign,
          say(language, (w) => text(w)),
          widthMm,
        ),
      ),
    gap(1),
  ];
}
