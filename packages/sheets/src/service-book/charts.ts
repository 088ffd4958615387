import { colourKeyOf } from "../colour-key.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { say } from "../compose/say.ts";
import { anchored } from "../compose/tag.ts";
import { treeTable } from "../compose/tree-table.ts";
import { type Charted, chartColumns, chartLines, chartOf } from "../wiring-chart/wiring-chart.ts";
import { bookTable, hazardBlocks, note, prose, row } from "./blocks.ts";
import type { BookContext } from "./context.ts";

/** A circuit lower than this is not broken over two pages. */
const KEEP_MM = 60;

const known = new WeakMap<BookContext["facts"], readonly Charted[]>();

/** Circuits of a machine in the order of the charts. */
export function circuitsOfBook({ facts, line, language }: BookContext): readonly Charted[] {
  const own = known.get(facts) ?? chartOf(line, language);
  known.set(facts, own);
  return own;
}

const anchorOf = ({ number }: Charted): string => `circuit:${number}`;

/** Every circuit from its feed over fuse, pins and wires to what it works. */
export function chartBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, words, language } = context;
  const charted = circuitsOfBook(context);
  if (charted.length === 0) return [];
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  return [
    ...hazardBlocks(context, ["mains", "stored", "volts", "earth"], "charts", widthMm),
    prose(
      words((w) => w.charts.hint),
      widthMm,
    ),
    note(
      words((w) => w.charts.volts),
      widthMm,
    ),
    colourKeyOf(wires, language, widthMm),
    ...circuitList(context, charted, widthMm),
    gap(2),
    ...treeBlocks(context, charted, widthMm),
  ];
}

/** Circuits by their numbers, with the pages on which they begin. */
function circuitList(context: BookContext, charted: readonly Charted[], widthMm: number): readonly Block[] {
  const { words } = context;
  const half = Math.ceil(charted.length / 2);
  const cells = (own: Charted | undefined): readonly string[] =>
    own === undefined ? ["", "", ""] : [own.number, own.title, context.pageOf(anchorOf(own))];
  const rows = charted.slice(0, half).map((left, i) => {
    const right = charted[half + i];
    const link = context.linkTo(anchorOf(left));
    const other = right === undefined ? undefined : context.linkTo(anchorOf(right));
    return row([...cells(left), ...cells(right)], undefined, [link, link, link, other, other, other]);
  });
  const small = { heightMm: TEXT.small } as const;
  const columns = [
    { header: words((w) => w.charts.list), weight: "bold" as const, whole: true, ...small },
    { header: "", grow: true, ...small },
    { header: words((w) => w.page), align: "end" as const, whole: true, ...small },
  ];
  return bookTable(context, [...columns, ...columns], rows, widthMm);
}

function treeBlocks(context: BookContext, charted: readonly Charted[], widthMm: number): readonly Block[] {
  const lines = charted.flatMap(chartLines);
  // On upright paper all letters are small.
  const columns = chartColumns((choose) => say(context.language, choose)).map((column) => ({
    ...column,
    heightMm: TEXT.small,
  }));
  const anchors = charted.flatMap((own) => [
    anchorOf(own),
    ...own.rows.map((each) => (each.wire === null ? null : `wire:${each.wire.number}`)),
  ]);
  const blocks = treeTable(columns, lines, widthMm, {
    continued: context.sheet((w) => w.common.continued),
    keepMm: KEEP_MM,
  });
  // The first block is the header; then one for each line.
  return blocks.map((block, i) => {
    const anchor = anchors[i - 1] ?? null;
    return anchor === null ? block : { ...block, marks: [anchored(anchor, block.marks)] };
  });
}
