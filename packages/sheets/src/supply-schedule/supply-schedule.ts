import type { ElectricRatings, LineResult, SupplyBudget } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { powerOf, type SupplyNode } from "../circuits/index.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { treeTable } from "../compose/tree-table.ts";
import { ampsText, itemName, someOf, supplyName, supplyTitle } from "../machine-facts.ts";
import { composeMachineListing } from "../machine-listing.ts";
import type { SheetOptions } from "../options.ts";
import {
  type FuseFacts,
  fuseName,
  fusePlace,
  fusesOf,
  protectsText,
  pulseText,
  ratingText,
  steadyText,
} from "./fuses.ts";
import { fuseGrid, supplyGrid } from "./grids.ts";
import { powerLines } from "./power-lines.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** A heading is kept with so much of its table. */
const KEEP_MM = 20;

/**
 * Every supply with what it gives and what is asked of it, every fuse with its place, rating, load and spare, and
 * the tree from mains to each fuse.
 */
export function composeSupplySchedule(line: LineResult, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words: Say = (choose) => say(language, choose);
  const { ratings } = line;
  const { supplies } = powerOf(line);
  const fuses = supplies.map((supply) => fusesOf(supply, ratings.fuses));
  const count = fuses.reduce((sum, list) => sum + list.length, 0);
  const continued = words((w) => w.common.continued);
  return composeMachineListing(line, options, {
    kind: "supply-schedule",
    paper: "a4-landscape",
    facts: [
      say(language, (w) => w.machine.supplies(supplies.length), " · "),
      say(language, (w) => w.machine.fuses(count), " · "),
    ],
    blocks: (widthMm) => {
      const heading = (text: string) => ({ ...paragraph(text, widthMm, TEXT.large, true), keepMm: KEEP_MM });
      const note = (text: string) => ({ ...paragraph(text, widthMm, TEXT.small), keepMm: KEEP_MM });
      return [
        heading(words((w) => w.machine.schedule.suppliesTitle)),
        note(words((w) => `${w.machine.schedule.hint} ${w.machine.corners}`)),
        ...table(
          supplyColumns(words),
          supplies.map((s) => ({ kind: "row", cells: supplyCells(line, s, ratings, language) })),
          widthMm,
          continued,
        ),
        gap(5),
        heading(words((w) => w.machine.schedule.tree)),
        ...treeTable([{ header: "", grow: true }], powerLines(line, supplies, ratings, language), widthMm, {
          continued,
          keepMm: 0,
        }),
        gap(5),
        heading(words((w) => w.machine.schedule.fusesTitle)),
        note(words((w) => `${w.machine.schedule.fuseHint} ${w.machine.schedule.pulseHint}`)),
        ...table(
          fuseColumns(words),
          supplies.flatMap((s, i): TableRow[] => {
            const own = fuses[i] ?? [];
            if (own.length === 0) return [];
            return [
              {
                kind: "group",
                text: supplyTitle(line, s.supply.id, language),
                detail: s.supply.id,
              },
              ...own.map((f): TableRow => ({ kind: "row", cells: fuseCells(line, f, language) })),
            ];
          }),
          widthMm,
          continued,
        ),
      ];
    },
    // The fuses come first: CSV holds the first list alone.
    grids: [
      fuseGrid(
        line,
        supplies.map((s, i) => [s, fuses[i] ?? []] as const),
        language,
      ),
      supplyGrid(line, supplies, ratings, language),
    ],
  });
}

function supplyColumns(words: Say): TableColumn[] {
  const right = { align: "end", whole: true } as const;
  return [
    { header: words((w) => w.machine.schedule.supply), weight: "bold", detail: true, grow: true },
    { ...right, header: words((w) => w.machine.schedule.volts), weight: "bold", detail: true },
    { header: words((w) => w.machine.schedule.points), detail: true },
    { ...right, header: words((w) => w.machine.schedule.rated), weight: "bold" },
    { header: words((w) => w.machine.schedule.overload), detail: true },
    { ...right, header: words((w) => w.machine.schedule.steady) },
    { ...right, header: words((w) => w.machine.schedule.rms) },
    { ...right, header: words((w) => w.machine.schedule.hold) },
    { header: words((w) => w.machine.schedule.worst), detail: true, grow: true },
    { ...right, header: words((w) => w.machine.schedule.headroom), weight: "bold" },
    { ...right, header: words((w) => w.machine.schedule.stored) },
  ];
}

/** Names of what draws most in a supply's worst moment. */
function mostly(line: LineResult, budget: SupplyBudget, language: SheetLanguage): string {
  if (budget.parts.length === 0) return "";
  return say(language, (w, l) => {
    const names = budget.parts.map(({ loadId }) =>
      itemName(line, line.electric.loads.get(loadId)?.itemId ?? loadId, l),
    );
    return w.machine.schedule.mostly(someOf(names, 4, l));
  });
}

function supplyCells(
  line: LineResult,
  { supply, fromSupplyId }: SupplyNode,
  ratings: ElectricRatings,
  language: SheetLanguage,
): readonly string[] {
  const budget = line.electric.supplies.get(supply.id);
  const rating = ratings.supplies.get(supply.id);
  const amps = (value: number | undefined): string => (value === undefined ? "–" : ampsText(value));
  const from =
    fromSupplyId === null
      ? ""
      : `\n${say(language, (w, l) => w.machine.schedule.madeFrom(supplyName(line, fromSupplyId, l)))}`;
  const { limit_a: limit } = supply;
  const overload = [
    say(language, (w) => w.machine.schedule.modes[supply.limit_mode]),
    limit === null ? "" : say(language, (w) => w.machine.schedule.at(shortNumber(limit, 2)), " · "),
  ].filter((t) => t !== "");
  return [
    `${supplyName(line, supply.id, language, " · ")}\n${supply.id}${from}`,
    `${shortNumber(supply.volts, 1)} V\n± ${shortNumber(supply.tolerance_pct, 1)} %`,
    `${supply.positive ?? "–"}\n${supply.negative ?? "–"}`,
    shortNumber(supply.rated_a, 2),
    overload.join("\n"),
    amps(budget?.steadyA.most),
    amps(budget?.rmsA.most),
    amps(budget?.holdA.most),
    budget === undefined ? "–" : `${ampsText(budget.worstA.most)}\n${mostly(line, budget, language)}`,
    amps(rating?.headroomA),
    supply.stored_j === null ? "–" : shortNumber(supply.stored_j, 2),
  ];
}

function fuseColumns(words: Say): TableColumn[] {
  const right = { align: "end", whole: true, detail: true } as const;
  return [
    { header: words((w) => w.machine.schedule.fuse), weight: "bold", detail: true, grow: true },
    { header: words((w) => w.machine.schedule.place), detail: true },
    { header: words((w) => w.machine.schedule.rating), weight: "bold", detail: true },
    { header: words((w) => w.machine.schedule.size), heightMm: TEXT.small, whole: true },
    { header: words((w) => w.machine.schedule.protects), heightMm: TEXT.small, grow: true },
    { ...right, header: words((w) => w.machine.schedule.steadyShare) },
    { ...right, header: words((w) => w.machine.schedule.peak) },
    { header: words((w) => w.machine.schedule.part), detail: true },
  ];
}

function fuseCells(line: LineResult, fuse: FuseFacts, language: SheetLanguage): readonly string[] {
  const { row, element } = fuse.node;
  const breaks = row?.breaking_a ?? null;
  const melts = row?.melting_a2s ?? null;
  const size =
    row === null
      ? ""
      : [
          row.size,
          breaks === null
            ? ""
            : say(language, (w) => w.machine.schedule.breaks(shortNumber(breaks, 0)), " · "),
          melts === null
            ? ""
            : say(language, (w) => w.machine.schedule.meltingA2s(shortNumber(melts, 1)), " · "),
        ]
          .filter((t) => t !== "")
          .join("\n");
  return [
    `${fuseName(line, fuse, language)}\n${row?.id ?? element.id}`,
    `${fusePlace(line, fuse)}\n${element.itemId}`,
    ratingText(fuse, language),
    size,
    protectsText(line, fuse, 6, language),
    steadyText(fuse, line),
    pulseText(fuse, line),
    row === null ? say(language, (w) => w.machine.schedule.resettable) : (row.part ?? "–"),
  ];
}
