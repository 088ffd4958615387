import {
  connectorLoading,
  endKind,
  type HarnessResult,
  type LineResult,
  type LoadedLanding,
} from "@pinwright/engine";
import { type SheetLanguage, type SheetWords, sheetWords } from "@pinwright/words";
import { colourKey } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, beside, gap, stacked } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { gaugeText, pointText, wireNo } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";
import { housingBlock } from "./housing.ts";

/** A housing with its table is kept on one page up to this height. */
const TOGETHER_MM = 165;

/** Name, housing and crimp of a landing stand beside its drawing where this width is left for them. */
const BESIDE_MM = 85;

/** Connector loading of a harness: each housing from the wire-entry side, then the ends without a housing. */
export function composeConnectorLoading(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const landings = connectorLoading(line.machine, harness, line.keys);
  const housings = landings.filter((l) => l.connector !== null);
  const bare = landings.filter((l) => l.connector === null);
  const intro = say(language, (w) =>
    [
      w.loading.view,
      w.loading.slide,
      housings.some((l) => l.half === "b") ? w.loading.halfB : "",
      w.loading.tug,
    ]
      .filter((t) => t !== "")
      .join(" "),
  );
  return composeHarnessListing(line, harness, options, {
    kind: "connector-loading",
    paper: "a4-portrait",
    blocks: (widthMm) => [
      paragraph(intro, widthMm, TEXT.small),
      colourKey(harness, language, widthMm),
      gap(2),
      ...housings.flatMap((l) => housingBlocks(line, harness, l, language, widthMm)),
      ...(bare.length === 0 ? [] : bareBlocks(line, harness, bare, language, widthMm)),
    ],
    grids: [loadingGrid(line, harness, landings, language)],
  });
}

/** Housing, how much of it is loaded, and its keys: a line each. */
function factsOf(landing: LoadedLanding, language: SheetLanguage): readonly string[] {
  const { connector, keyPartId, housingPartId } = landing;
  const used = landing.cavities.filter((c) => c.wires.length > 0).length;
  const keys = landing.cavities.filter((c) => c.state === "key").map((c) => c.name);
  return [
    housingPartId === null ? "" : `${say(language, (w) => w.loading.housing, " · ")} ${housingPartId}`,
    connector === null ? "" : say(language, (w) => w.loading.waysOf(used, connector.ways), " · "),
    keys.length === 0
      ? ""
      : `${say(language, (w) => w.loading.keyPlug, " · ")} ${keyPartId ?? ""}: ${keys.join(", ")}`,
  ].filter((t) => t !== "");
}

/** Name of a landing, big; under it what it is, its housing and how it is crimped. */
function nameBlock(landing: LoadedLanding, language: SheetLanguage, widthMm: number): Block {
  const about = [label(language, landing.labels, landing.itemId, " · "), landing.connector?.label ?? ""]
    .filter((t) => t !== "")
    .join(": ");
  return [
    paragraph(landing.landingId, widthMm, TEXT.large, true),
    paragraph(about, widthMm, TEXT.normal),
    paragraph([...factsOf(landing, language), crimpText(landing, language)].join("\n"), widthMm, TEXT.small),
  ].reduce((a, b) => stacked(a, b));
}

function columnsFor(language: SheetLanguage): TableColumn[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  return [
    {
      whole: true,
      header: words((w) => w.common.cavity),
      heightMm: TEXT.large,
      weight: "bold",
      align: "end",
    },
    { whole: true, header: words((w) => w.common.colour), heightMm: TEXT.large, weight: "bold" },
    { whole: true, header: words((w) => w.common.wire), heightMm: TEXT.large, weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.common.gauge) },
    { header: words((w) => w.common.contact), detail: true },
    { header: words((w) => w.common.to), grow: true },
    { header: words((w) => w.common.net), grow: true },
    { header: words((w) => w.common.done), align: "middle" },
  ];
}

/** A row for each wire of a landing, cavities in their order. */
function wireRows(
  line: LineResult,
  harness: HarnessResult,
  landing: LoadedLanding,
  language: SheetLanguage,
): TableRow[] {
  const work = (w: SheetWords): string =>
    landing.family === null ? "" : w.ends.work[endKind(landing.family)];
  return landing.cavities.flatMap((cavity) =>
    cavity.wires.map((wire, i): TableRow => {
      const type = line.machine.wireTypes.get(wire.wireTypeId);
      const place = wire.crimpedFirst ? "" : say(language, (w) => w.loading.here(work(w)), " · ");
      return {
        kind: "row",
        cells: [
          i === 0 ? cavity.name : "",
          wire.colour,
          wireNo(harness, wire.number),
          type === undefined ? wire.wireTypeId : gaugeText(type),
          [
            i === 0
              ? (cavity.contactPartId ?? say(language, work, " · "))
              : say(language, (w) => w.loading.double, " · "),
            place,
          ]
            .filter((t) => t !== "")
            .join("\n"),
          pointText(line, wire.otherEnd, language),
          cavity.netId ?? "",
          TICK,
        ],
      };
    }),
  );
}

/** Strip length of a family, how its ends are made and with which tools, in one line for each language. */
function crimpText(landing: LoadedLanding, language: SheetLanguage): string {
  const { family } = landing;
  if (family === null) return "";
  const made = endKind(family);
  const tool = (w: SheetWords): string =>
    family.tool === "" && made === "solder" ? w.ends.iron : family.tool;
  return say(language, (w) =>
    [
      w.loading.strip(shortMm(family.strip_mm)),
      w.ends.done[made],
      tool(w) === "" ? "" : `${w.loading.tool}: ${tool(w)}`,
      family.extraction_tool === "" ? "" : `${w.loading.extraction}: ${family.extraction_tool}`,
    ]
      .filter((t) => t !== "")
      .join("; "),
  );
}

function housingBlocks(
  line: LineResult,
  harness: HarnessResult,
  landing: LoadedLanding,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const drawing = housingBlock(landing, language, widthMm);
  const besideMm = widthMm - drawing.widthMm - 6;
  const head =
    besideMm >= BESIDE_MM
      ? beside(nameBlock(landing, language, besideMm), drawing, besideMm + 6)
      : stacked(nameBlock(landing, language, widthMm), drawing);
  const rows = table(
    columnsFor(language),
    wireRows(line, harness, landing, language),
    widthMm,
    say(language, (w) => w.common.continued),
  );
  const whole = [head, ...rows].reduce((sum, b) => sum + b.heightMm, 0);
  if (whole <= TOGETHER_MM) return [[head, ...rows].reduce((a, b) => stacked(a, b)), gap(7)];
  return [{ ...head, keepMm: 25 }, ...rows, gap(7)];
}

/** One table for all ends that go on tabs, studs, lugs and screws. */
function bareBlocks(
  line: LineResult,
  harness: HarnessResult,
  bare: readonly LoadedLanding[],
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const rows = bare.flatMap((landing): TableRow[] => {
    const { family } = landing;
    const kind =
      family === null ? "" : label(language, { en: family.label, zh: family.label_zh }, family.id, " · ");
    const name = label(language, landing.labels, "", " · ");
    return [
      {
        kind: "group",
        text: name === "" ? landing.landingId : `${landing.landingId} · ${name}`,
        detail: [kind, crimpText(landing, language)].filter((t) => t !== "").join("\n"),
      },
      ...wireRows(line, harness, landing, language),
    ];
  });
  const title = paragraph(
    say(language, (w) => w.loading.terminals, " · "),
    widthMm,
    TEXT.large,
    true,
  );
  const columns = columnsFor(language).map((c, i) =>
    i === 0 ? { ...c, header: say(language, (w) => w.loading.terminal), align: "start" as const } : c,
  );
  return [
    { ...title, keepMm: 25 },
    ...table(
      columns,
      rows,
      widthMm,
      say(language, (w) => w.common.continued),
    ),
  ];
}

function loadingGrid(
  line: LineResult,
  harness: HarnessResult,
  landings: readonly LoadedLanding[],
  language: SheetLanguage,
): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const states = { wired: "", key: w.common.key, spare: w.common.spare, empty: w.loading.noWire } as const;
  return {
    name: w.kinds["connector-loading"],
    header: [
      w.common.harness,
      w.loading.housing,
      w.common.cavity,
      w.common.remark,
      w.common.wire,
      w.common.colour,
      w.common.gauge,
      w.common.contact,
      w.common.to,
      w.common.net,
    ],
    rows: landings.flatMap((landing) =>
      landing.cavities.flatMap((cavity) => {
        const place = [
          harness.harness.number,
          landing.landingId,
          cavity.pin ?? cavity.name,
          states[cavity.state],
        ];
        if (cavity.wires.length === 0) return [[...place, "", "", "", "", "", ""]];
        return cavity.wires.map((wire) => {
          const type = line.machine.wireTypes.get(wire.wireTypeId);
          return [
            ...place,
            wireNo(harness, wire.number),
            wire.colour,
            type === undefined ? wire.wireTypeId : gaugeText(type),
            cavity.contactPartId ?? "",
            wire.otherEnd,
            cavity.netId ?? "",
          ];
        });
      }),
    ),
  };
}
