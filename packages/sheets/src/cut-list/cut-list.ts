import {
  type CableCut,
  type CutGroup,
  type CutRow,
  cutList,
  type HarnessResult,
  type LineResult,
  type ListEnd,
} from "@pinwright/engine";
import { type SheetLanguage, type SheetWords, sheetWords } from "@pinwright/words";
import { colourKey } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import type { Grid, GridValue } from "../compose/grid.ts";
import { shortMm, shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { gaugeText, metresUp, wireNo, wiresById } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";
import { kitBlocks } from "./kit.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** `● p.contact-25` or `○ solder`: when an end is made and with what, then where it goes and how. */
function endText(end: ListEnd, language: SheetLanguage): string {
  const work = say(language, (w) => w.ends.work[end.made], " · ");
  const place =
    end.kind === "splice" ? say(language, (w) => `${w.common.splice} ${end.localId}`, " · ") : end.id;
  return `${end.crimpedFirst ? "●" : "○"} ${end.contactPartId ?? work}\n${place}${end.contactPartId === null ? "" : ` · ${work}`}`;
}

/** The cut list of a harness: what to fetch, then every reel once, the longest wire first, totals for each reel. */
export function composeCutList(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const words: Say = (choose) => say(language, choose);
  const list = cutList(line.machine, harness);
  const { trim_mm, cut_step_mm } = line.machine.shop.numbers;
  const rule = (w: SheetWords): string => w.cutList.cutRule(shortMm(trim_mm), shortMm(cut_step_mm));
  return composeHarnessListing(line, harness, options, {
    kind: "cut-list",
    paper: "a4-portrait",
    facts: [
      say(language, (w) => w.common.wires(harness.wires.length), " · "),
      say(language, (w) => w.cutList.reels(list.groups.length), " · "),
      say(language, (w) => w.cutList.minutes(shortNumber(list.minutes, 0)), " · "),
    ],
    blocks: (widthMm) => [
      ...kitBlocks(line, harness, language, widthMm),
      gap(4),
      paragraph(
        words((w) => `${w.cutList.note} ${rule(w)} ${w.cutList.minutesNote}`),
        widthMm,
        TEXT.small,
      ),
      colourKey(harness, language, widthMm),
      ...table(
        columns(words),
        [
          ...list.groups.flatMap((group) => groupRows(harness, group, language)),
          ...list.cables.flatMap((cable) => cableRows(harness, cable, language)),
        ],
        widthMm,
        words((w) => w.common.continued),
      ),
    ],
    grids: [wireGrid(harness, list, language), reelGrid(harness, list.groups, language)],
  });
}

function columns(words: Say): TableColumn[] {
  return [
    { whole: true, header: words((w) => w.common.wire), heightMm: TEXT.large, weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.common.colour), weight: "bold" },
    { whole: true, header: words((w) => w.common.cutMm), heightMm: TEXT.large, weight: "bold", align: "end" },
    { header: words((w) => w.cutList.strip), align: "end" },
    { header: words((w) => w.cutList.aEnd), grow: true, detail: true },
    { header: words((w) => w.cutList.strip), align: "end" },
    { header: words((w) => w.cutList.bEnd), grow: true, detail: true },
    { header: words((w) => w.common.done), align: "middle" },
  ];
}

function rowCells(
  harness: HarnessResult,
  row: CutRow,
  language: SheetLanguage,
  isCore: boolean,
): readonly string[] {
  const cable = row.cableId;
  const a = endText(row.a, language);
  return [
    wireNo(harness, row.number),
    row.colour,
    isCore ? "″" : shortMm(row.cutMm),
    shortMm(row.a.stripMm),
    cable === null || isCore ? a : `${a}\n${say(language, (w) => w.cutList.bundleWith(cable), " · ")}`,
    shortMm(row.b.stripMm),
    endText(row.b, language),
    TICK,
  ];
}

/** The sheath comes off now where every core is finished now; else after the cable is trimmed at its holder. */
const sheathSign = (cores: readonly CutRow[], side: "a" | "b"): "●" | "○" =>
  cores.every((core) => core[side].crimpedFirst) ? "●" : "○";

/** A bought cable: a row to cut it and take its sheath off, then its cores as ordinary rows. */
function cableRows(harness: HarnessResult, cut: CableCut, language: SheetLanguage): TableRow[] {
  const { cable, cutMm, sheathStripMm, cores } = cut;
  const name = label(language, { en: cable.label, zh: cable.label_zh }, cable.id, " · ");
  const strip = shortMm(sheathStripMm);
  const sheath = (side: "a" | "b"): string =>
    `${sheathSign(cores, side)} ${say(language, (w) => w.cutList.sheath, " · ")}`;
  return [
    {
      kind: "group",
      text: `${say(language, (w) => w.cutList.cable, " · ")} · ${cable.part ?? cable.id}`,
      detail: [
        `${name}, Ø ${shortNumber(cable.od_mm, 2)} mm`,
        say(language, (w) => w.cutList.sheathRule(strip)),
      ].join("\n"),
    },
    {
      kind: "row",
      cells: ["", "", shortMm(cutMm), strip, `${sheath("a")}\n${cable.id}`, strip, sheath("b"), TICK],
    },
    ...cores.map((row): TableRow => ({ kind: "row", cells: rowCells(harness, row, language, true) })),
  ];
}

function groupRows(harness: HarnessResult, group: CutGroup, language: SheetLanguage): TableRow[] {
  const { wireType } = group;
  const name = label(language, { en: wireType.label, zh: wireType.label_zh }, wireType.id, " · ");
  const total = say(language, (w) => w.cutList.total(group.count, metresUp(group.metres)), " · ");
  return [
    {
      kind: "group",
      text: `${group.colour} · ${gaugeText(wireType)}`,
      detail: `${name}, Ø ${shortNumber(wireType.od_mm, 2)} mm\n${total}`,
    },
    ...group.rows.map((row): TableRow => ({ kind: "row", cells: rowCells(harness, row, language, false) })),
  ];
}

function wireGrid(harness: HarnessResult, list: ReturnType<typeof cutList>, language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const end = (e: ListEnd): GridValue[] => [
    e.id,
    e.stripMm,
    e.contactPartId ?? "",
    w.ends.work[e.made],
    e.crimpedFirst ? w.cutList.first : w.cutList.later,
  ];
  const endHeader = (name: string): string[] => [
    name,
    w.cutList.strip,
    w.common.contact,
    w.ends.how,
    w.common.remark,
  ];
  const cells = (gauge: string, row: CutRow): GridValue[] => [
    harness.harness.number,
    gauge,
    row.colour,
    wireNo(harness, row.number),
    row.cutMm,
    row.cableId ?? "",
    ...end(row.a),
    ...end(row.b),
  ];
  const wires = wiresById(harness);
  const gaugeOf = (row: CutRow): string => {
    const wire = wires.get(row.wireId);
    return wire === undefined ? "" : gaugeText(wire.wireType);
  };
  const sheath = (cores: readonly CutRow[], side: "a" | "b", mm: number): GridValue[] => [
    "",
    mm,
    "",
    w.cutList.sheath,
    sheathSign(cores, side) === "●" ? w.cutList.first : w.cutList.later,
  ];
  return {
    name: w.kinds["cut-list"],
    header: [
      w.common.harness,
      w.common.gauge,
      w.common.colour,
      w.common.wire,
      w.common.cutMm,
      w.cutList.cable,
      ...endHeader(w.cutList.aEnd),
      ...endHeader(w.cutList.bEnd),
    ],
    rows: [
      ...list.groups.flatMap((g) => g.rows.map((row) => cells(gaugeText(g.wireType), row))),
      ...list.cables.flatMap(({ cable, cutMm, sheathStripMm, cores }) => [
        [
          harness.harness.number,
          cable.part ?? "",
          "",
          "",
          cutMm,
          cable.id,
          ...sheath(cores, "a", sheathStripMm),
          ...sheath(cores, "b", sheathStripMm),
        ],
        ...cores.map((row) => cells(gaugeOf(row), row)),
      ]),
    ],
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
