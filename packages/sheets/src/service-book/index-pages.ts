import type { Item } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { at, LINE, line as rule, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Mark } from "../compose/mark.ts";
import { linked, tagged } from "../compose/tag.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { harnessTitle } from "../identity.ts";
import { itemName, supplyName } from "../machine-facts.ts";
import { fuseName } from "../supply-schedule/fuses.ts";
import { sectionHead } from "./blocks.ts";
import { circuitsOfBook } from "./charts.ts";
import type { BookContext } from "./context.ts";
import { fuseAnchor } from "./power.ts";

interface Entry {
  readonly text: string;
  readonly anchor: string;
}

const COLUMNS = 3;
const GUTTER_MM = 6;
/** Height of the columns on a page that is theirs, and under the heading of the chapter or of a part. */
const PAGE_MM = 212;
const UNDER_CHAPTER_MM = 182;
const UNDER_PART_MM = 200;

/** What has a number, and what has a name, with their pages. */
export function indexBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  return [
    ...part(
      context,
      "index:number",
      words((w) => w.index.byNumber),
      byNumber(context),
      widthMm,
      UNDER_CHAPTER_MM,
    ),
    ...part(
      context,
      "index:name",
      words((w) => w.index.byName),
      byName(context),
      widthMm,
      UNDER_PART_MM,
    ),
  ];
}

function part(
  context: BookContext,
  anchor: string,
  title: string,
  entries: readonly Entry[],
  widthMm: number,
  firstMm: number,
): readonly Block[] {
  const found = entries.filter((entry) => context.pageOf(entry.anchor) !== "");
  // What is not set yet takes its room all the same.
  const shown = found.length === 0 ? entries : found;
  if (shown.length === 0) return [];
  const blocks = pagesOf(context, shown, widthMm, firstMm);
  return [sectionHead(title, anchor, widthMm, blocks[0]?.heightMm), ...blocks, gap(2)];
}

/** Entries in columns of the height of a page, down the first before the second; the last page is evened out. */
function pagesOf(
  context: BookContext,
  entries: readonly Entry[],
  widthMm: number,
  firstMm: number,
): readonly Block[] {
  const columnMm = (widthMm - (COLUMNS - 1) * GUTTER_MM) / COLUMNS;
  const heights = entries.map((entry) => entryMarks(context, entry, 0, 0, columnMm, false).heightMm);
  const blocks: Block[] = [];
  let from = 0;
  while (from < entries.length) {
    const mostMm = blocks.length === 0 ? firstMm : PAGE_MM;
    const evenMm = heights.slice(from).reduce((sum, h) => sum + h, 0) / COLUMNS;
    // An entry of several lines may stand a little over the even height.
    const highMm = Math.min(mostMm, evenMm + 6);
    const columns = columnsFrom(heights, from, highMm);
    const set = columns.map((count) => {
      const own = entries.slice(from, from + count);
      from += count;
      return own;
    });
    blocks.push(columnsBlock(context, set, columnMm, blocks.length === 0));
  }
  return blocks;
}

/** How many entries from a place on stand in each column of a height; at least one in the first. */
function columnsFrom(heights: readonly number[], from: number, highMm: number): readonly number[] {
  let next = from;
  return Array.from({ length: COLUMNS }, (_, c) => {
    let y = 0;
    const first = next;
    while (next < heights.length && (y + (heights[next] ?? 0) <= highMm || (c === 0 && next === first))) {
      y += heights[next] ?? 0;
      next++;
    }
    return next - first;
  });
}

/** Entries in columns side by side. */
function columnsBlock(
  context: BookContext,
  columns: readonly (readonly Entry[])[],
  columnMm: number,
  starts: boolean,
): Block {
  const marks: Mark[] = [];
  let heightMm = 0;
  for (const [c, own] of columns.entries()) {
    let y = 0;
    for (const [i, entry] of own.entries()) {
      const set = entryMarks(
        context,
        entry,
        c * (columnMm + GUTTER_MM),
        y,
        columnMm,
        starts && c === 0 && i === 0,
      );
      marks.push(...set.marks);
      y += set.heightMm;
    }
    heightMm = Math.max(heightMm, y);
  }
  return { heightMm: heightMm + 1, marks };
}

function entryMarks(
  context: BookContext,
  { text, anchor }: Entry,
  xMm: number,
  yMm: number,
  widthMm: number,
  starts: boolean,
): { readonly marks: readonly Mark[]; readonly heightMm: number } {
  const heightMm = TEXT.small;
  const step = leadingMm(heightMm) + 0.4;
  const page = context.pageOf(anchor);
  const pageMm = textWidthMm("000", heightMm) + 2;
  const texts = wrap(text, widthMm - pageMm, heightMm);
  const base = (i: number): number => yMm + (i + 0.75) * step;
  const last = texts.length - 1;
  const from = xMm + textWidthMm(texts[last] ?? "", heightMm) + 1.2;
  const to = xMm + widthMm - textWidthMm(page, heightMm) - 1.2;
  const written = [
    ...texts.map((t, i) => write(t, at(xMm, base(i)), { heightMm })),
    write(page, at(xMm + widthMm, base(last)), { heightMm, anchor: "end" }),
  ];
  const link = context.linkTo(anchor);
  return {
    heightMm: texts.length * step,
    marks: [
      ...(to - from > 2
        ? [
            rule(
              at(from, base(last) - 0.2),
              at(to, base(last) - 0.2),
              stroke("faint", LINE.thin, [0.25, 1.1]),
            ),
          ]
        : []),
      tagged({ role: "LI", ...(starts ? { starts: true } : {}) }, [
        link === undefined ? tagged({ role: "P" }, written) : linked(link, written),
      ]),
    ],
  };
}

/** Where the book tells most of an item. */
function anchorOf(item: Item): string {
  if (item.kind === "inline") return `pins:${item.id}:a`;
  const classes = ["switch", "button", "sensor", "lamp", "coil", "motor", "speaker"];
  if (item.kind === "device" && !classes.includes(item.type.class)) return `replace:${item.id}`;
  return `item:${item.id}`;
}

function byNumber(context: BookContext): readonly Entry[] {
  const { line, words, language, options } = context;
  const numbered = [...line.machine.items.values()].flatMap((item) =>
    item.kind === "device" && item.number !== null ? [{ item, number: item.number }] : [],
  );
  const kinds = {
    switch: ["switch", "button"],
    sensor: ["sensor"],
    lamp: ["lamp"],
    coil: ["coil"],
    motor: ["motor"],
    speaker: ["speaker"],
  } as const;
  const known: readonly string[] = Object.values(kinds).flat();
  const devices = (["switch", "sensor", "lamp", "coil", "motor", "speaker", "device"] as const).flatMap(
    (kind): readonly Entry[] =>
      numbered
        .filter(({ item }) =>
          kind === "device"
            ? !known.includes(item.type.class)
            : (kinds[kind] as readonly string[]).includes(item.type.class),
        )
        .sort((a, b) => a.number - b.number)
        .map(({ item, number }) => ({
          text: `${words((w) => w.index[kind](String(number)))} ${itemName(line, item.id, language)}`,
          anchor: `item:${item.id}`,
        })),
  );
  const boards = [...line.machine.items.values()]
    .flatMap((item) =>
      item.kind === "board" && item.address !== null ? [{ item, address: item.address }] : [],
    )
    .sort((a, b) => a.address - b.address)
    .map(
      ({ item, address }): Entry => ({
        text: `${words((w) => w.index.board(String(address)))} ${itemName(line, item.id, language)}`,
        anchor: `item:${item.id}`,
      }),
    );
  const harnesses = [...line.harnesses.values()].map(
    (harness): Entry => ({
      text: `${words((w) => w.index.harness(String(harness.harness.number)))} ${harnessTitle(harness, options)}`,
      anchor: `harness:${harness.harness.id}`,
    }),
  );
  const circuits = circuitsOfBook(context).map(
    ({ number, title }): Entry => ({
      text: `${words((w) => w.index.circuit(number))} ${title}`,
      anchor: `circuit:${number}`,
    }),
  );
  return [...devices, ...boards, ...harnesses, ...circuits];
}

function byName(context: BookContext): readonly Entry[] {
  const { line, language, facts } = context;
  const items = [...line.machine.items.values()].flatMap((item): readonly Entry[] =>
    item.kind === "fastener" ? [] : [{ text: itemName(line, item.id, language), anchor: anchorOf(item) }],
  );
  const supplies = facts.power.supplies.map(
    ({ supply }): Entry => ({ text: supplyName(line, supply.id, language), anchor: `supply:${supply.id}` }),
  );
  const fuses = facts.fuses.map(
    (fuse): Entry => ({ text: fuseName(line, fuse, language), anchor: fuseAnchor(fuse) }),
  );
  const collator = (a: Entry, b: Entry): number =>
    compareText(a.text.toLowerCase(), b.text.toLowerCase()) || compareText(a.anchor, b.anchor);
  return [...items, ...supplies, ...fuses].sort(collator);
}
