import {
  type ContinuityList,
  connectorLoading,
  continuityList,
  type HarnessResult,
  type LineResult,
  type LoadedLanding,
  type ProbeSpot,
} from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { netName, pointText, wireNo } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

type Say = (choose: Parameters<typeof say>[1]) => string;

/** What the blocks of a continuity list are made from. */
interface Test {
  readonly line: LineResult;
  readonly harness: HarnessResult;
  readonly list: ContinuityList;
  /** Housings whose contacts latch. */
  readonly latched: readonly LoadedLanding[];
  readonly language: SheetLanguage;
  readonly words: Say;
}

/** The continuity list of a harness: tug, then what is joined and open on the bench, then the joints made in the machine. */
export function composeContinuity(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const list = continuityList(line.machine, harness);
  const latched = connectorLoading(line.machine, harness, line.keys).filter(
    (l) => l.connector !== null && l.family?.latch === true && wiredCount(l) > 0,
  );
  const test: Test = { line, harness, list, latched, language, words: (choose) => say(language, choose) };
  return composeHarnessListing(line, harness, options, {
    kind: "continuity",
    paper: "a4-portrait",
    facts: [
      say(language, (w) => w.continuity.nets(list.joined.length), " · "),
      say(language, (w) => w.continuity.pairs(list.open.length), " · "),
    ],
    blocks: (widthMm) =>
      [tugBlocks, joinedBlocks, openBlocks, fittedBlocks]
        .map((make) => make(test, widthMm))
        .filter((blocks) => blocks.length > 0)
        .flatMap((blocks, i) => [gap(i === 0 ? 0 : 5), ...heading(blocks, i + 1, widthMm)]),
    grids: [continuityGrid(test)],
  });
}

/** A numbered section: its title, what to do, its table. */
interface Section {
  readonly title: string;
  readonly text: string;
  readonly blocks: readonly Block[];
}

/** A contact in a housing by its point; `loose end 4-12` and in small letters the terminal that it is for. */
function spotText({ line, harness, language }: Test, spot: ProbeSpot): string {
  const place = pointText(line, spot.pointId, language);
  if (!spot.loose) return place;
  const labels = spot.wires.map((n) => wireNo(harness, n)).join(", ");
  return `${say(language, (w) => w.continuity.loose(labels), " · ")}\n${place}`;
}
function heading(section: readonly Section[], n: number, widthMm: number): readonly Block[] {
  return section.flatMap(({ title, text, blocks }) => [
    { ...paragraph(`${n}  ${title}`, widthMm, TEXT.large, true), keepMm: 30 },
    { ...paragraph(text, widthMm, TEXT.small), keepMm: 20 },
    ...blocks,
  ]);
}

const wiredCount = (landing: LoadedLanding): number =>
  landing.cavities.reduce((sum, c) => sum + c.wires.length, 0);

function tugBlocks({ latched, language, words }: Test, widthMm: number): readonly Section[] {
  if (latched.length === 0) return [];
  const rows = latched.map(
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
  const columns: TableColumn[] = [
    { header: words((w) => w.loading.housing), detail: true },
    { header: words((w) => w.common.cavity), grow: true },
    { header: words((w) => w.continuity.tugCount), align: "end", heightMm: TEXT.large, weight: "bold" },
    { header: words((w) => w.common.done), align: "middle" },
  ];
  return [
    {
      title: say(language, (w) => w.continuity.tugTitle, " · "),
      text: words((w) => w.continuity.tug),
      blocks: table(
        columns,
        rows,
        widthMm,
        words((w) => w.common.continued),
      ),
    },
  ];
}

/** Net, its name, and which part of it this is. */
function netText({ line, language }: Test, netId: string, part: number, parts: number): string {
  const name = netName(line, netId, language);
  return parts === 1
    ? `${netId}\n${name}`
    : `${netId}\n${name}\n${say(language, (w) => w.continuity.part(part, parts), " · ")}`;
}

function joinedBlocks(test: Test, widthMm: number): readonly Section[] {
  const { list, language, words } = test;
  const rows = list.joined.flatMap((part): TableRow[] => {
    const [first, ...others] = part.spots;
    if (first === undefined) return [];
    return others.map((spot, i) => ({
      kind: "row",
      cells: [
        i === 0 ? netText(test, part.netId, part.part, part.parts) : "",
        i === 0 ? spotText(test, first) : "″",
        spotText(test, spot),
        TICK,
      ],
    }));
  });
  const columns: TableColumn[] = [
    { header: words((w) => w.common.net), detail: true, grow: true },
    { header: words((w) => w.common.from), grow: true, detail: true },
    { header: words((w) => w.common.to), grow: true, detail: true, weight: "bold" },
    { header: words((w) => w.continuity.expectJoined), align: "middle" },
  ];
  return [
    {
      title: say(language, (w) => w.continuity.joinedTitle, " · "),
      text: words((w) => w.continuity.joined),
      blocks: table(
        columns,
        rows,
        widthMm,
        words((w) => w.common.continued),
      ),
    },
  ];
}

function openBlocks(test: Test, widthMm: number): readonly Section[] {
  const { list, language, words } = test;
  if (list.open.length === 0) return [];
  const rows = list.open.map(
    (pair): TableRow => ({
      kind: "row",
      cells: [
        spotText(test, pair.a),
        spotText(test, pair.b),
        say(language, (w) => w.continuity.reasons[pair.reason], " · "),
        TICK,
      ],
    }),
  );
  const columns: TableColumn[] = [
    { header: words((w) => w.continuity.between), grow: true, detail: true },
    { header: words((w) => w.continuity.and), grow: true, detail: true, weight: "bold" },
    { header: words((w) => w.continuity.why) },
    { header: words((w) => w.continuity.expectOpen), align: "middle" },
  ];
  return [
    {
      title: say(language, (w) => w.continuity.openTitle, " · "),
      text: words((w) => w.continuity.open),
      blocks: table(
        columns,
        rows,
        widthMm,
        words((w) => w.common.continued),
      ),
    },
  ];
}

function fittedBlocks({ line, list, language, words }: Test, widthMm: number): readonly Section[] {
  if (list.fitted.length === 0) return [];
  const rows = list.fitted.map(
    (pair): TableRow => ({
      kind: "row",
      cells: [
        pointText(line, pair.at, language),
        pointText(line, pair.a, language),
        pointText(line, pair.b, language),
        TICK,
      ],
    }),
  );
  const columns: TableColumn[] = [
    { header: words((w) => w.continuity.joint), grow: true, weight: "bold" },
    { header: words((w) => w.common.from), grow: true },
    { header: words((w) => w.common.to), grow: true },
    { header: words((w) => w.continuity.expectFitted), align: "middle" },
  ];
  return [
    {
      title: say(language, (w) => w.continuity.fittedTitle, " · "),
      text: words((w) => w.continuity.fitted),
      blocks: table(
        columns,
        rows,
        widthMm,
        words((w) => w.common.continued),
      ),
    },
  ];
}

function continuityGrid(test: Test): Grid {
  const { harness, latched, list, language } = test;
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const h = harness.harness.number;
  const spot = (s: ProbeSpot): readonly string[] => [
    s.pointId,
    s.loose ? s.wires.map((n) => wireNo(harness, n)).join(" ") : "",
  ];
  return {
    name: w.kinds.continuity,
    header: [
      w.common.harness,
      w.continuity.test,
      w.common.from,
      w.continuity.looseEnd,
      w.common.to,
      w.continuity.looseEnd,
      w.common.net,
      w.continuity.why,
    ],
    rows: [
      ...latched.flatMap((l) =>
        l.cavities
          .filter((c) => c.wires.length > 0)
          .map((c) => [h, w.continuity.expectTug, c.pointId, "", "", "", c.netId ?? "", ""]),
      ),
      ...list.joined.flatMap((part) =>
        part.spots.slice(1).flatMap((s) => {
          const [first] = part.spots;
          const name = part.parts === 1 ? "" : w.continuity.part(part.part, part.parts);
          return first === undefined
            ? []
            : [[h, w.continuity.expectJoined, ...spot(first), ...spot(s), part.netId, name]];
        }),
      ),
      ...list.open.map((pair) => [
        h,
        w.continuity.expectOpen,
        ...spot(pair.a),
        ...spot(pair.b),
        "",
        w.continuity.reasons[pair.reason],
      ]),
      ...list.fitted.map((pair) => [
        h,
        w.continuity.expectFitted,
        pair.a,
        "",
        pair.b,
        "",
        pair.netId,
        pair.at,
      ]),
    ],
  };
}
