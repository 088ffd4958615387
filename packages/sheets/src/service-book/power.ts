import { bookTerm } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { treeTable } from "../compose/tree-table.ts";
import { itemName, supplyName, supplyTitle } from "../machine-facts.ts";
import { type FuseFacts, fuseName, fusePlace, protectsText, ratingText } from "../supply-schedule/fuses.ts";
import { powerLines } from "../supply-schedule/power-lines.ts";
import { type BookRow, bookTable, hazardBlocks, note, row, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { partNumber } from "./part-text.ts";

/** Supplies with their test points, the tree of the fuses, and every fuse with what stops when it is open. */
export function powerBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { facts, words, line, language } = context;
  const { supplies } = facts.power;
  if (supplies.length === 0) return [];
  return [
    ...hazardBlocks(context, ["mains", "stored", "volts", "earth"], "power", widthMm),
    sectionHead(
      words((w) => w.power.supplies),
      "supplies",
      widthMm,
    ),
    note(
      words((w) => w.power.suppliesHint),
      widthMm,
    ),
    ...supplyTable(context, widthMm),
    gap(2),
    sectionHead(
      words((w) => w.power.tree),
      "power:tree",
      widthMm,
    ),
    ...treeTable([{ header: "", grow: true }], powerLines(line, supplies, line.ratings, language), widthMm, {
      continued: context.sheet((w) => w.common.continued),
      keepMm: 0,
    }),
    gap(2),
    ...fuseBlocks(context, widthMm),
  ];
}

function supplyTable(context: BookContext, widthMm: number): readonly Block[] {
  const { facts, words, line, language } = context;
  const rows = facts.power.supplies.map(({ supply, fromSupplyId }) => {
    const from =
      fromSupplyId === null
        ? ""
        : `\n${context.sheet((w) => w.machine.schedule.madeFrom(supplyName(line, fromSupplyId, language)))}`;
    const limit = supply.limit_a;
    const overload = [
      context.sheet((w) => w.machine.schedule.modes[supply.limit_mode]),
      limit === null ? "" : context.sheet((w) => w.machine.schedule.at(shortNumber(limit, 2))),
    ].filter((t) => t !== "");
    return row(
      [
        `${supplyName(line, supply.id, language)}\n${supply.id}${from}`,
        `${shortNumber(supply.volts, 1)} V\n± ${shortNumber(supply.tolerance_pct, 1)} %`,
        `${shortNumber(supply.rated_a, 2)} A`,
        `${supply.positive ?? "–"}\n${supply.negative ?? "–"}`,
        overload.join(", "),
        supply.stored_j === null || supply.stored_j === 0 ? "–" : `${shortNumber(supply.stored_j, 2)} J`,
      ],
      `supply:${supply.id}`,
    );
  });
  const right = { align: "end", whole: true, detail: true } as const;
  return bookTable(
    context,
    [
      { header: context.sheet((w) => w.machine.schedule.supply), weight: "bold", detail: true, grow: true },
      { ...right, header: context.sheet((w) => w.machine.schedule.volts), weight: "bold" },
      { ...right, header: context.sheet((w) => w.machine.schedule.rated) },
      { header: words((w) => w.power.testPoints), heightMm: TEXT.small },
      { header: words((w) => w.power.overload), heightMm: TEXT.small },
      { ...right, header: words((w) => w.power.stored) },
    ],
    rows,
    widthMm,
  );
}

/** Name by which a fuse is led to. */
export const fuseAnchor = ({ node }: FuseFacts): string => `fuse:${node.row?.id ?? node.element.id}`;

function fuseBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { facts, words, line, language } = context;
  if (facts.fuses.length === 0) return [];
  const rows = facts.power.supplies.flatMap(({ supply }): readonly BookRow[] => {
    const own = facts.fuses.filter((fuse) => fuse.node.supplyId === supply.id);
    if (own.length === 0) return [];
    return [
      { kind: "group", text: supplyTitle(line, supply.id, language), detail: supply.id },
      ...own.map((fuse) => fuseRow(context, fuse)),
    ];
  });
  return [
    sectionHead(
      words((w) => w.power.fuses),
      "fuses",
      widthMm,
    ),
    note(
      words((w) => w.power.fusesHint),
      widthMm,
    ),
    ...bookTable(
      context,
      [
        {
          header: context.sheet((w) => w.machine.schedule.fuse),
          weight: "bold",
          detail: true,
          heightMm: TEXT.small,
          minMm: 34,
        },
        { header: context.sheet((w) => w.machine.schedule.rating), weight: "bold", detail: true, minMm: 32 },
        { header: words((w) => w.power.dark), heightMm: TEXT.small, grow: true },
        { header: words((w) => w.power.ends), heightMm: TEXT.small, whole: true },
        { header: words((w) => w.power.spare), heightMm: TEXT.small, minMm: 19 },
        { header: words((w) => w.page), heightMm: TEXT.small, align: "end", whole: true },
      ],
      rows,
      widthMm,
    ),
  ];
}

function fuseRow(context: BookContext, fuse: FuseFacts): BookRow {
  const { line, language, words } = context;
  const { row: own, element } = fuse.node;
  const name = fuseName(line, fuse, language);
  const board = itemName(line, element.itemId, language);
  const onBoard = bookTerm(language, fusePlace(line, fuse));
  // Most fuses are called by their place.
  const place = name === `${board} ${onBoard}` ? "" : `${board}, ${onBoard}`;
  const page = context.pageOf(`item:${element.itemId}`);
  const breaks = own?.breaking_a ?? null;
  const size = [
    own?.size ?? "",
    breaks === null ? "" : context.sheet((w) => w.machine.schedule.breaks(shortNumber(breaks, 0))),
  ].filter((t) => t !== "");
  return row(
    [
      [...new Set([name, place, own?.id ?? ""])].filter((t) => t !== "").join("\n"),
      [ratingText(fuse, language), ...size].join("\n"),
      protectsText(line, fuse, 24, language),
      `${element.fromPointId}\n${element.toPointId}`,
      own === null ? words((w) => w.boards.resets) : partNumber(context, own.part ?? ""),
      page,
    ],
    fuseAnchor(fuse),
    [undefined, undefined, undefined, undefined, undefined, context.linkTo(`item:${element.itemId}`)],
  );
}
