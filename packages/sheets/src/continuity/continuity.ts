import {
  type ContinuityList,
  connectorLoading,
  continuityList,
  type HarnessResult,
  type LineResult,
  type LoadedLanding,
} from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableRow, TICK, table } from "../compose/table.ts";
import { netName, pointText } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

/** The continuity list of a harness: tug, then what is joined, then which neighbours are open. */
export function composeContinuity(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const list = continuityList(line.machine, harness);
  const landings = connectorLoading(line.machine, harness, line.keys);
  return composeHarnessListing(line, harness, options, {
    kind: "continuity",
    paper: "a4-portrait",
    facts: [
      say(language, (w) => w.continuity.nets(list.joined.length), " · "),
      say(language, (w) => w.continuity.pairs(list.open.length), " · "),
    ],
    blocks: (widthMm) => [
      ...tugBlocks(landings, language, widthMm),
      gap(5),
      ...joinedBlocks(line, list, language, widthMm),
      gap(5),
      ...openBlocks(line, list, language, widthMm),
    ],
    grids: [continuityGrid(harness, landings, list, language)],
  });
}

function section(
  title: (w: ReturnType<typeof sheetWords>) => string,
  text: (w: ReturnType<typeof sheetWords>) => string,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  return [
    { ...paragraph(say(language, title, " · "), widthMm, TEXT.large, true), keepMm: 30 },
    { ...paragraph(say(language, text), widthMm, TEXT.small), keepMm: 20 },
  ];
}

const wiredCount = (landing: LoadedLanding): number =>
  landing.cavities.reduce((sum, c) => sum + c.wires.length, 0);

function tugBlocks(landings: readonly LoadedLanding[], language: SheetLanguage, widthMm: number): Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const rows = landings.map(
    (landing): TableRow => ({
      kind: "row",
      cells: [
        `${landing.landingId}\n${label(language, landing.labels, "", " · ")}`,
        landing.cavities
          .filter((c) => c.wires.length > 0)
          .map((c) => c.name)
          .join(", "),
        String(wiredCount(landing)),
        TICK,
      ],
    }),
  );
  return [
    ...section(
      (w) => w.continuity.tugTitle,
      (w) => w.continuity.tug,
      language,
      widthMm,
    ),
    ...table(
      [
        { header: words((w) => w.loading.housing), detail: true },
        { header: words((w) => w.common.cavity), grow: true },
        { header: words((w) => w.continuity.tugCount), align: "end", heightMm: TEXT.large, weight: "bold" },
        { header: words((w) => w.common.done), align: "middle" },
      ],
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function joinedBlocks(
  line: LineResult,
  list: ContinuityList,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const rows = list.joined.flatMap((part): TableRow[] => {
    const [first, ...others] = part.points;
    const net = `${part.netId}\n${netName(line, part.netId, language)}`;
    if (first === undefined) return [];
    return others.map((point, i) => ({
      kind: "row",
      cells: [
        i === 0 ? net : "",
        i === 0 ? pointText(line, first, language) : "″",
        pointText(line, point, language),
        TICK,
      ],
    }));
  });
  return [
    ...section(
      (w) => w.continuity.joinedTitle,
      (w) => w.continuity.joined,
      language,
      widthMm,
    ),
    ...table(
      [
        { header: words((w) => w.common.net), detail: true, grow: true },
        { header: words((w) => w.common.from), grow: true },
        { header: words((w) => w.common.to), grow: true, weight: "bold" },
        { header: words((w) => w.continuity.expectJoined), align: "middle" },
      ],
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

/** Pairs by housing: cavities 1 and 2, 2 and 3 … with a box to tick for each. */
function openBlocks(
  line: LineResult,
  list: ContinuityList,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const name = (id: string): string => {
    const point = line.machine.points.get(id);
    return String(point?.pin ?? point?.localId ?? id);
  };
  const byLanding = new Map<string, string[]>();
  for (const pair of list.open) {
    const text = `${name(pair.a)}–${name(pair.b)}`;
    const pairs = byLanding.get(pair.landingId);
    if (pairs === undefined) byLanding.set(pair.landingId, [text]);
    else pairs.push(text);
  }
  const PER_ROW = 4;
  const rows = [...byLanding].flatMap(([landingId, pairs]): TableRow[] => {
    const lines: TableRow[] = [];
    for (let i = 0; i < pairs.length; i += PER_ROW) {
      const cells = Array.from({ length: PER_ROW }, (_, k) => pairs[i + k]);
      lines.push({
        kind: "row",
        cells: [i === 0 ? landingId : "", ...cells.flatMap((t) => (t === undefined ? ["", ""] : [t, TICK]))],
      });
    }
    return lines;
  });
  const pairColumns = Array.from({ length: PER_ROW }, () => [
    { header: words((w) => w.continuity.pair), align: "end" as const, grow: true },
    { header: words((w) => w.continuity.expectOpen), align: "middle" as const },
  ]).flat();
  return [
    ...section(
      (w) => w.continuity.openTitle,
      (w) => w.continuity.open,
      language,
      widthMm,
    ),
    ...table(
      [{ header: words((w) => w.loading.housing), weight: "bold" }, ...pairColumns],
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function continuityGrid(
  harness: HarnessResult,
  landings: readonly LoadedLanding[],
  list: ContinuityList,
  language: SheetLanguage,
): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const h = harness.harness.number;
  return {
    name: w.kinds.continuity,
    header: [w.common.harness, w.continuity.test, w.common.from, w.common.to, w.common.net],
    rows: [
      ...landings.flatMap((l) =>
        l.cavities
          .filter((c) => c.wires.length > 0)
          .map((c) => [h, w.continuity.expectTug, c.pointId, "", c.netId ?? ""]),
      ),
      ...list.joined.flatMap((part) =>
        part.points.slice(1).map((p) => [h, w.continuity.expectJoined, part.points[0] ?? "", p, part.netId]),
      ),
      ...list.open.map((pair) => [h, w.continuity.expectOpen, pair.a, pair.b, ""]),
    ],
  };
}
