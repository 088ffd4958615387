import { colourKeyOf } from "../colour-key.ts";
import { cautionBlock } from "../compose/caution.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, beside, gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { bookTable, hazardText, listed, prose, row, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";

/** White between two columns. */
const GUTTER_MM = 8;

/** How the book is used, the hazards of the machine, and where the owner's work ends. */
export function useBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words, line } = context;
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  const say = (choose: Parameters<typeof words>[0]): Block => prose(words(choose), widthMm);
  const section = (choose: Parameters<typeof words>[0], anchor: string): Block =>
    sectionHead(words(choose), anchor, widthMm);
  return [
    say((w) => w.use.who),
    say((w) => w.use.order),
    section((w) => w.use.findTitle, "find"),
    ...findBlocks(context, widthMm),
    section((w) => w.use.readsTitle, "written"),
    say((w) => w.use.ids),
    say((w) => w.use.colours),
    ...(wires.length === 0 ? [] : [colourKeyOf(wires, context.language, widthMm)]),
    say((w) => w.use.ohms),
    ...safetyBlocks(context, widthMm),
    ...limitBlocks(context, widthMm),
  ];
}

/** What the owner has in hand, and where the book goes on. */
function findBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const ways = [
    ["symptom", "chapter:faults", words((w) => w.chapters.faults)],
    ["number", "index:number", words((w) => w.index.byNumber)],
    ["place", "chapter:where", words((w) => w.chapters.where)],
    ["wire", "harnesses", context.sheet((w) => w.parts.kinds.harness)],
    ["fuse", "fuses", words((w) => w.power.fuses)],
    ["part", "chapter:parts", words((w) => w.chapters.parts)],
  ] as const;
  const rows = ways.flatMap(([way, anchor, title]) => {
    const page = context.pageOf(anchor);
    if (page === "") return [];
    const link = { anchor };
    return [row([words((w) => w.use.find2[way]), title, page], undefined, [undefined, link, link])];
  });
  return bookTable(
    context,
    [
      { header: words((w) => w.use.have), weight: "bold" },
      { header: words((w) => w.use.goTo), grow: true },
      { header: words((w) => w.page), align: "end", weight: "bold" },
    ],
    rows,
    widthMm,
  );
}

/** Every hazard of the machine with its caution, and the pages on which it bites. */
function safetyBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words, hazards } = context;
  if (hazards.length === 0) return [];
  const rows = hazards.map(({ id, names }) => {
    const { title, says } = hazardText(words, id);
    return row(
      [title, names === "" ? says : `${says}\n${names}`, context.pagesOf(`hazard:${id}@`)],
      `safety:${id}`,
    );
  });
  return [
    {
      ...sectionHead(
        words((w) => w.safety.title),
        "safety",
        widthMm,
      ),
      keepMm: 160,
    },
    prose(
      words((w) => w.safety.hint),
      widthMm,
    ),
    cautionBlock([words((w) => w.safety.defer)], context.language, widthMm),
    ...bookTable(
      context,
      [
        { header: words((w) => w.safety.hazard), weight: "bold", minMm: 32 },
        { header: context.sheet((w) => w.caution.heading), detail: true, minMm: 96 },
        { header: words((w) => w.page), align: "end", heightMm: TEXT.small },
      ],
      rows,
      widthMm,
    ),
    gap(3),
  ];
}

/** What the owner may do beside what is work for a licensed electrician. */
function limitBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const columnMm = (widthMm - GUTTER_MM) / 2;
  const column = (title: string, texts: readonly string[]): Block =>
    [paragraph(title, columnMm, TEXT.normal, true), ...listed(texts, columnMm, false)].reduce(
      (upper, lower): Block => ({
        heightMm: upper.heightMm + lower.heightMm,
        marks: [
          ...upper.marks,
          { kind: "group", marks: lower.marks, dxMm: 0, dyMm: upper.heightMm, clip: null, part: "body" },
        ],
      }),
    );
  const list = (key: "mayList" | "mayNotList"): readonly string[] => context.list((w) => w.safety[key]);
  return [
    sectionHead(
      words((w) => w.safety.mayTitle),
      "limits",
      widthMm,
      60,
    ),
    beside(
      column(
        words((w) => w.safety.may),
        list("mayList"),
      ),
      column(
        words((w) => w.safety.mayNot),
        list("mayNotList"),
      ),
      columnMm + GUTTER_MM,
    ),
  ];
}
