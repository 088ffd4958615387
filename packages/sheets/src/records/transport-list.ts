import { contentsOf, type UnitState } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { languagesOf, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { FIELD, type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { recordIdentity } from "./identity.ts";
import {
  headsOf,
  kindText,
  minuteText,
  type RecordSheetInput,
  SOURCE_MM,
  siteText,
  sourceText,
  typeText,
  wordsOf,
} from "./texts.ts";

/** Lines to write on what is missing or damaged. */
const REMARK_LINES = 3;

/** A unit that was sent off and not yet counted in. */
interface Sent {
  readonly state: UnitState;
  readonly way: NonNullable<UnitState["onTheWay"]>;
}

/** In the order of the list: by transport, from where, to where, serial number. */
function sentUnits({ units }: RecordSheetInput, transport: string | null): readonly Sent[] {
  return [...units.values()]
    .flatMap((state) => (state.onTheWay === null ? [] : [{ state, way: state.onTheWay }]))
    .filter(({ way }) => transport === null || way.transport === transport)
    .sort(
      (a, b) =>
        compareText(a.way.transport, b.way.transport) ||
        compareText(a.state.site, b.state.site) ||
        compareText(a.way.to, b.way.to) ||
        compareText(a.state.unit, b.state.unit),
    );
}

/**
 * What is on the way from site to site, with a box to tick as it is loaded and one as it is counted in. A unit that went
 * inside another is counted with it.
 * @param transport one transport; null: all
 */
export function composeTransportList(
  input: RecordSheetInput,
  transport: string | null = null,
): SheetDocument {
  const { line, options } = input;
  const words = wordsOf(options);
  const sent = sentUnits(input, transport);
  const subtitle = transport ?? say(options.language, (w) => w.records.transport.all);
  return composeListing({
    identity: recordIdentity(
      line,
      { kind: "transport-list", name: transport ?? "", title: subtitle },
      options,
    ),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(options.language, (w) => w.records.kinds["transport-list"]),
      subtitle,
      facts: [words((w) => w.records.transport.onTheWay(sent.length))],
    },
    cautions: [say(options.language, (w) => w.records.transport.caution)],
    blocks: (widthMm) => blocksOf(input, sent, widthMm),
    grids: [gridOf(input, sent)],
  });
}

function blocksOf(input: RecordSheetInput, sent: readonly Sent[], widthMm: number): readonly Block[] {
  const { options } = input;
  const words = wordsOf(options);
  const heads = headsOf(options);
  const continued = words((w) => w.common.continued);
  if (sent.length === 0)
    return [
      paragraph(
        words((w) => w.records.transport.none),
        widthMm,
        TEXT.large,
        true,
      ),
    ];
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.serial), heightMm: TEXT.large, weight: "bold", whole: true },
    { header: heads((w) => w.records.what), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.revision), whole: true },
    { header: heads((w) => w.records.transport.sent), detail: true, minMm: SOURCE_MM },
    { header: heads((w) => w.records.transport.loaded), heightMm: 4, align: "middle", whole: true },
    { header: heads((w) => w.records.transport.counted), heightMm: 4, align: "middle", whole: true },
  ];
  return [
    paragraph(
      say(options.language, (w) => w.records.transport.hint),
      widthMm,
      TEXT.small,
    ),
    gap(1),
    ...table(columns, rowsOf(input, sent), widthMm, continued),
    gap(4),
    ...footBlocks(input, widthMm),
  ];
}

function rowsOf(input: RecordSheetInput, sent: readonly Sent[]): readonly TableRow[] {
  const words = wordsOf(input.options);
  const groups = new Map<string, Sent[]>();
  for (const one of sent) {
    const way = `${siteText(input, one.state.site)} → ${siteText(input, one.way.to)}`;
    const heading = `${one.way.transport}: ${way}`;
    groups.set(heading, [...(groups.get(heading) ?? []), one]);
  }
  return [...groups].flatMap(([text, own]): TableRow[] => [
    { kind: "group", text, detail: words((w) => w.records.transport.sum(own.length)) },
    ...own.map(({ state, way }): TableRow => {
      const inside = contentsOf(input.units, state.unit).length;
      const details = [
        kindText(state, input.options),
        state.begun?.type ?? "",
        inside === 0 ? "" : words((w) => w.records.transport.inside(inside)),
        state.stage,
      ].filter((detail) => detail !== "");
      return {
        kind: "row",
        cells: [
          state.unit,
          `${typeText(input, state)}\n${details.join(" · ")}`,
          state.begun?.revision ?? "",
          sourceText(input, way.source),
          TICK,
          TICK,
        ],
      };
    }),
  ]);
}

/** What is written by hand: boxes, who loaded and counted, what was wrong. */
function footBlocks({ options }: RecordSheetInput, widthMm: number): readonly Block[] {
  const words = wordsOf(options);
  const heads = headsOf(options);
  const continued = words((w) => w.common.continued);
  const field = (choose: Parameters<typeof words>[0]): TableColumn => ({
    header: heads(choose),
    heightMm: 5,
    grow: true,
  });
  const blocks = [
    ...table(
      [
        field((w) => w.records.transport.boxesInAll),
        field((w) => w.records.transport.loadedBy),
        field((w) => w.records.transport.countedBy),
      ],
      [{ kind: "row", cells: [FIELD, FIELD, FIELD] }],
      widthMm,
      continued,
    ),
    gap(2),
    ...table(
      [field((w) => w.records.transport.remarks)],
      Array.from({ length: REMARK_LINES }, (): TableRow => ({ kind: "row", cells: [FIELD] })),
      widthMm,
      continued,
    ),
  ];
  const [first, ...others] = blocks;
  if (first === undefined) return [];
  return [{ ...first, keepMm: others.reduce((sum, { heightMm }) => sum + heightMm, 0) }, ...others];
}

function gridOf(input: RecordSheetInput, sent: readonly Sent[]): Grid {
  const [language = "en"] = languagesOf(input.options.language);
  const w = sheetWords(language);
  return {
    name: w.records.kinds["transport-list"],
    header: [
      w.records.kinds["transport-list"],
      w.common.from,
      w.common.to,
      w.records.serial,
      w.records.what,
      w.records.certificate.revision,
      w.records.transport.sent,
      w.records.when,
    ],
    rows: sent.map(({ state, way }) => [
      way.transport,
      state.site,
      way.to,
      state.unit,
      typeText(input, state),
      state.begun?.revision ?? "",
      way.source.person,
      minuteText(way.source.at),
    ]),
  };
}
