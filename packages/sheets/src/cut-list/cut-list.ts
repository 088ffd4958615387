import {
  type CutGroup,
  type CutRow,
  cutList,
  type HarnessResult,
  type LineResult,
  type ListEnd,
} from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { colourKey } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid, GridValue } from "../compose/grid.ts";
import { shortMm, shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { gaugeText } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** `● p.contact-25`: what is done to an end at the cutting bench, and its contact. */
function endText(end: ListEnd, place: string): string {
  const sign = end.crimpedFirst ? "●" : "○";
  return `${sign} ${end.contactPartId ?? "—"}\n${place}`;
}

/** The cut list of a harness: every reel once, the longest wire first, totals for each reel. */
export function composeCutList(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const words: Say = (choose) => say(language, choose);
  const list = cutList(line.machine, harness);
  return composeHarnessListing(line, harness, options, {
    kind: "cut-list",
    paper: "a4-portrait",
    facts: [
      say(language, (w) => w.common.wires(harness.wires.length), " · "),
      say(language, (w) => w.cutList.reels(list.groups.length), " · "),
      say(language, (w) => w.cutList.minutes(shortNumber(list.minutes, 0)), " · "),
    ],
    blocks: (widthMm) => [
      paragraph(
        words((w) => w.cutList.note),
        widthMm,
        TEXT.small,
      ),
      colourKey(harness, language, widthMm),
      ...table(
        columns(words),
        list.groups.flatMap((group) => groupRows(group, language)),
        widthMm,
        words((w) => w.common.continued),
      ),
      ...cableBlocks(list.cables, language, widthMm),
    ],
    grids: [wireGrid(harness, list.groups, language), reelGrid(harness, list.groups, language)],
  });
}

function columns(words: Say): TableColumn[] {
  return [
    { whole: true, header: words((w) => w.common.wire), heightMm: TEXT.large, weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.common.cutMm), heightMm: TEXT.large, weight: "bold", align: "end" },
    { header: words((w) => w.cutList.strip), align: "end" },
    { header: words((w) => w.cutList.aEnd), grow: true, detail: true },
    { header: words((w) => w.cutList.strip), align: "end" },
    { header: words((w) => w.cutList.bEnd), grow: true, detail: true },
    { header: words((w) => w.common.done), align: "middle" },
  ];
}

function place(end: ListEnd, language: SheetLanguage): string {
  if (end.kind === "splice") return say(language, (w) => `${w.common.splice} ${end.localId}`, " · ");
  return `${end.landingId ?? ""} ${end.pin ?? end.localId}`;
}

function rowCells(row: CutRow, language: SheetLanguage): readonly string[] {
  const cable = row.cableId;
  const a = endText(row.a, place(row.a, language));
  return [
    String(row.number),
    shortMm(row.cutMm),
    shortMm(row.a.stripMm),
    cable === null ? a : `${a}\n${say(language, (w) => w.cutList.bundleWith(cable), " · ")}`,
    shortMm(row.b.stripMm),
    endText(row.b, place(row.b, language)),
    TICK,
  ];
}

function groupRows(group: CutGroup, language: SheetLanguage): TableRow[] {
  const { wireType } = group;
  const name = label(language, { en: wireType.label, zh: wireType.label_zh }, wireType.id, " · ");
  const total = say(language, (w) => w.cutList.total(group.count, group.metres.toFixed(2)), " · ");
  return [
    {
      kind: "group",
      text: `${group.colour} · ${gaugeText(wireType)}`,
      detail: `${name}, Ø ${shortNumber(wireType.od_mm, 2)} mm\n${total}`,
    },
    ...group.rows.map((row): TableRow => ({ kind: "row", cells: rowCells(row, language) })),
  ];
}

/** Bought cables, cut as a whole. */
function cableBlocks(
  cables: ReturnType<typeof cutList>["cables"],
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  if (cables.length === 0) return [];
  const words: Say = (choose) => say(language, choose);
  const rows = cables.map(({ cable, cutMm, cores }): TableRow => {
    const name = label(language, { en: cable.label, zh: cable.label_zh }, "", " · ");
    const ends = cores.map((c) => `${c.number}: ${place(c.a, language)} – ${place(c.b, language)}`);
    return {
      kind: "row",
      cells: [
        `${cable.part ?? cable.id}\n${[cable.id, name].filter((t) => t !== "").join(" · ")}`,
        shortMm(cutMm),
        ends.join("\n"),
        TICK,
      ],
    };
  });
  return [
    gap(6),
    {
      ...paragraph(
        words((w) => w.cutList.cables),
        widthMm,
        TEXT.large,
        true,
      ),
      keepMm: 20,
    },
    ...table(
      [
        { header: words((w) => w.cutList.cable), detail: true },
        {
          whole: true,
          header: words((w) => w.common.cutMm),
          heightMm: TEXT.large,
          weight: "bold",
          align: "end",
        },
        { header: words((w) => w.cutList.cores), grow: true },
        { header: words((w) => w.common.done), align: "middle" },
      ],
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function wireGrid(harness: HarnessResult, groups: readonly CutGroup[], language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const end = (e: ListEnd): GridValue[] => [
    e.id,
    e.stripMm,
    e.contactPartId ?? "",
    e.crimpedFirst ? w.cutList.first : w.cutList.later,
  ];
  return {
    name: w.kinds["cut-list"],
    header: [
      w.common.harness,
      w.common.gauge,
      w.common.colour,
      w.common.wire,
      w.common.cutMm,
      w.cutList.aEnd,
      w.cutList.strip,
      w.common.contact,
      w.common.remark,
      w.cutList.bEnd,
      w.cutList.strip,
      w.common.contact,
      w.common.remark,
    ],
    rows: groups.flatMap((g) =>
      g.rows.map((row) => [
        harness.harness.number,
        gaugeText(g.wireType),
        g.colour,
        row.number,
        row.cutMm,
        ...end(row.a),
        ...end(row.b),
      ]),
    ),
  };
}

function reelGrid(harness: HarnessResult, groups: readonly CutGroup[], language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  return {
    name: w.common.total,
    header: [w.common.harness, w.common.gauge, w.common.colour, w.common.count, w.common.metres],
    rows: groups.map((g) => [harness.harness.number, gaugeText(g.wireType), g.colour, g.count, g.metres]),
  };
}
