import type { FenceSetup, LineResult, SheetCutting } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { at, box, LINE, rect, line as stretch, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { leadingMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import {
  cuttings,
  goodsIds,
  goodsSlug,
  noPlanText,
  panelNames,
  sizeMm,
  thicknessText,
} from "../cutting-plan/panel-facts.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";

const PAPER = PAPERS["a4-portrait"];
/** Read from where the saw is worked: common practice, no source. */
const FENCE_TEXT_MM = 9;
const TICK_MM = 7;
const NUMBER_MM = 11;
const FENCE_MM = 52;

/** For each kind of sheet goods: how the fence is set, one after the other, and what is cut then. */
export function* composeCuttingOrders(
  line: LineResult,
  options: SheetOptions,
): Generator<SheetDocument, void> {
  for (const cutting of cuttings(line, options.machines)) yield composeOrder(line, cutting, options);
}

/** Names of the sheets that `composeCuttingOrders` makes. */
export const cuttingOrderNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  goodsIds(line).map((id) => assemblySheetName("cutting-order", goodsSlug(id), language));

function composeOrder(line: LineResult, cutting: SheetCutting, options: SheetOptions): SheetDocument {
  const { language, machines } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const name = goodsSlug(cutting.sheetPartId);
  const title = label(language, cutting.labels, cutting.sheetPartId);
  const none = noPlanText(line, cutting, language);
  return composeListing({
    identity: assemblyIdentity(
      line,
      { kind: "cutting-order", name, letters: name.toUpperCase(), title },
      options,
    ),
    language,
    paper: PAPER,
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["cutting-order"]),
      subtitle: title,
      facts: [
        words((w) => w.panels.machines(machines)),
        thicknessText(line, cutting, language),
        words((w) => w.panels.minutes(String(Math.ceil(cutting.sawMinutes)))),
      ],
    },
    cautions: [
      say(language, (w) => w.panels.caution.saw),
      say(language, (w) => w.panels.caution.sheet),
      say(language, (w) => w.panels.caution.dust),
    ],
    blocks: (widthMm) =>
      none !== ""
        ? [paragraph(none, widthMm, TEXT.large, true)]
        : [
            paragraph(
              words((w) => w.panels.order.total(cutting.setups.length, cutting.cutCount)),
              widthMm,
              TEXT.normal,
              true,
            ),
            paragraph(
              say(language, (w) => `${w.panels.order.hint} ${w.panels.order.trimHint}`),
              widthMm,
              TEXT.normal,
            ),
            ...splitBlocks(cutting, language, widthMm),
            gap(1),
            ...cutting.setups.map((setup) => setupBlock(line, cutting, setup, language, widthMm)),
          ],
    grids: gridsOf(line, cutting, language),
  });
}

/** A warning of sizes that mate and are not cut at one setting. */
function splitBlocks(
  { splitSettings }: SheetCutting,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  if (splitSettings.length === 0) return [];
  const text = say(language, (w) => w.panels.order.split(splitSettings.join(", ")));
  return [paragraph(text, widthMm, TEXT.normal, true)];
}

/** `rip 3, 4`: cuts of one sheet at one setting, those of a kind together. */
function cutsText(
  cutting: SheetCutting,
  work: FenceSetup["work"][number],
  language: Exclude<SheetLanguage, "both">,
): string {
  const w = sheetWords(language).panels.order;
  const own = (cutting.sheets[work.sheet]?.cuts ?? []).filter(({ number }) => work.cuts.includes(number));
  const kinds = [...new Set(own.map(({ kind }) => kind))];
  return kinds
    .map((kind) =>
      w.cuts(w.kinds[kind], own.flatMap((cut) => (cut.kind === kind ? [cut.number] : [])).join(", ")),
    )
    .join("; ");
}

function workTexts(
  line: LineResult,
  cutting: SheetCutting,
  setup: FenceSetup,
  language: SheetLanguage,
): readonly string[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const done = new Set(setup.doneIds);
  const finished = cutting.pieces.filter(({ panelIds }) => panelIds.some((id) => done.has(id)));
  return [
    ...alikeWork(cutting, setup).map((group) =>
      words((w, l) => w.panels.order.on(group.patterns, cutsText(cutting, group.work, l))),
    ),
    ...(finished.length === 0
      ? []
      : [
          words((w, l) =>
            w.panels.order.finished(finished.map(({ panelIds }) => panelNames(line, panelIds, l)).join("; ")),
          ),
        ]),
    ...(matesAt(line, setup).length < 2
      ? []
      : [words((w, l) => w.panels.order.mates(panelNames(line, matesAt(line, setup), l, ", ")))]),
  ];
}

/** Patterns of which the same cuts are made at one setting, together. */
function alikeWork(cutting: SheetCutting, setup: FenceSetup) {
  const groups = new Map<
    string,
    { work: FenceSetup["work"][number]; patterns: (readonly [number, number])[] }
  >();
  for (const work of setup.work) {
    const key = cutsText(cutting, work, "en");
    const known = groups.get(key) ?? { work, patterns: [] };
    known.patterns.push([work.sheet + 1, work.copies]);
    groups.set(key, known);
  }
  return [...groups.values()];
}

/** Panels that have a size of one of the settings' names. */
function matesAt(line: LineResult, setup: FenceSetup): readonly string[] {
  const names = new Set(setup.settings);
  return line.panels.cuts.flatMap(({ panelId, settingX, settingY }) =>
    [settingX, settingY].some((name) => name !== null && names.has(name)) ? [panelId] : [],
  );
}

/** One setting of the fence: its number, its figure read from the saw, what is cut, and a box to tick. */
function setupBlock(
  line: LineResult,
  cutting: SheetCutting,
  setup: FenceSetup,
  language: SheetLanguage,
  widthMm: number,
): Block {
  const from = NUMBER_MM + FENCE_MM;
  const textMm = widthMm - from - TICK_MM - 4;
  const texts = workTexts(line, cutting, setup, language).map((text) => wrap(text, textMm, TEXT.normal));
  const lines = texts.flat();
  const step = leadingMm(TEXT.normal);
  const heightMm = Math.max(FENCE_TEXT_MM + 6, lines.length * step + 5);
  return {
    heightMm,
    marks: [
      write(String(setup.number), at(0, 3 + FENCE_TEXT_MM), {
        heightMm: TEXT.head,
        weight: "bold",
        ink: "accent",
      }),
      write(sizeMm(setup.fenceMm), at(from - 6, 3 + FENCE_TEXT_MM), {
        heightMm: FENCE_TEXT_MM,
        weight: "bold",
        anchor: "end",
      }),
      ...lines.map((text, i) => write(text, at(from, 3 + TEXT.normal + i * step))),
      rect(box(widthMm - TICK_MM, 3, TICK_MM, TICK_MM), stroke("ink", LINE.medium)),
      stretch(at(0, heightMm), at(widthMm, heightMm), stroke("faint", LINE.thin)),
    ],
  };
}

function gridsOf(line: LineResult, cutting: SheetCutting, language: SheetLanguage): readonly Grid[] {
  const own = language === "both" ? "en" : language;
  const w = sheetWords(own);
  return [
    {
      name: w.kinds["cutting-order"],
      header: ["setting", "fence_mm", "pattern", "sheets", "cuts", "finished"],
      rows: cutting.setups.flatMap((setup) =>
        setup.work.map((work) => [
          setup.number,
          setup.fenceMm,
          work.sheet + 1,
          work.copies,
          cutsText(cutting, work, own),
          panelNames(line, setup.doneIds, own, ", "),
        ]),
      ),
    },
  ].filter((grid) => grid.rows.length > 0);
}
