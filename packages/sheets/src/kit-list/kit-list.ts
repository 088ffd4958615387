import { type LineResult, type StationKit, stationKits } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { numbersText } from "../assembly/legend.ts";
import { usualPlan } from "../assembly/plan.ts";
import { stepSlug } from "../assembly/step-facts.ts";
import { rowLabel } from "../assembly/step-texts.ts";
import { type SymbolRow, symbolTable } from "../assembly/symbol-table.ts";
import { assemble, type SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { listingBodies } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { assemblyIdentity, assemblySheetName, badgeOf } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { labelBodies } from "./box-labels.ts";

const PAPER = PAPERS["a4-portrait"];

/** What each place on the line needs, of the places that have work. */
function kitsOf(line: LineResult): readonly StationKit[] {
  return stationKits(line, usualPlan(line)).filter((kit) => kit.stepIds.length > 0);
}

const placeSlug = (kit: StationKit): string => stepSlug(kit.placeId);

/** A kit list with box labels for each place on the line. */
export function* composeKitLists(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  for (const kit of kitsOf(line)) yield composeKit(line, kit, options);
}

/** Names of the sheets that `composeKitLists` makes. */
export function kitListNames(line: LineResult, language: SheetLanguage): readonly string[] {
  return kitsOf(line).map((kit) => assemblySheetName("kit-list", placeSlug(kit), language));
}

function composeKit(line: LineResult, kit: StationKit, options: SheetOptions): SheetDocument {
  const { language } = options;
  const title = label(language, kit.labels, kit.placeId);
  const identity = assemblyIdentity(
    line,
    { kind: "kit-list", name: placeSlug(kit), letters: kit.placeId.toUpperCase(), title },
    options,
  );
  const pieces = kit.fasteners.reduce((sum, f) => sum + f.count, 0);
  const list = listingBodies({
    identity,
    language,
    paper: PAPER,
    heading: {
      badge: "",
      title: say(language, (w) => w.steps.kit.title),
      subtitle: title,
      facts: [
        say(language, (w) => w.steps.steps(kit.stepIds.length), " · "),
        say(language, (w) => w.steps.pieces(pieces), " · "),
      ],
    },
    cautions: [],
    blocks: (widthMm) => kitBlocks(line, kit, language, widthMm),
  });
  const labels = labelBodies(line, kit, title, language, PAPER, list.length);
  return assemble(identity, language, [...list, ...labels], kitGrids(line, kit, language));
}

/** Numbers of steps as text. */
function stepNumbers(line: LineResult, ids: readonly string[]): string {
  const own = new Set(ids);
  return numbersText(line.steps.steps.filter((s) => own.has(s.id)).map((s) => s.number));
}

/** Steps of a kit that a fastener type is used in. */
function stepsOfType(line: LineResult, kit: StationKit, typeId: string): string {
  const own = new Set(kit.stepIds);
  const steps = line.steps.steps.filter(
    (step) =>
      own.has(step.id) &&
      step.fastenerIds.some((id) => {
        const item = line.machine.items.get(id);
        return (
          item?.kind === "fastener" &&
          (item.type.id === typeId || item.washer?.id === typeId || item.nut?.id === typeId)
        );
      }),
  );
  return numbersText(steps.map((s) => s.number));
}

function kitBlocks(
  line: LineResult,
  kit: StationKit,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const continued = words((w) => w.common.continued);
  const head = (text: string): Block => ({ ...paragraph(text, widthMm, TEXT.large, true), keepMm: 12 });
  const station = line.machine.book.tables.stations.find((s) => s.id === kit.stationId);
  const harnesses = kit.parts.filter((p) => p.kind === "harness");
  const parts = kit.parts.filter((p) => p.kind !== "harness");
  const tools = station === undefined || station.tools === "" ? [] : [station.tools];
  const stepsText = `${words((w) => w.steps.kit.forSteps)}: ${stepNumbers(line, kit.stepIds)}`;
  return [
    paragraph(stepsText, widthMm, TEXT.normal, true),
    ...tools.map((t) => paragraph(`${words((w) => w.steps.kit.tools)}: ${t}`, widthMm, TEXT.normal)),
    gap(2),
    ...(kit.fasteners.length === 0
      ? []
      : [
          head(words((w) => w.steps.kit.boxes)),
          ...boxTable(line, kit, language, widthMm, continued),
          gap(3),
        ]),
    ...(parts.length === 0
      ? []
      : [
          head(words((w) => w.steps.kit.parts)),
          ...table(
            [
              { header: words((w) => w.common.done), align: "middle", whole: true },
              {
                header: words((w) => w.steps.columns.count),
                heightMm: TEXT.large,
                weight: "bold",
                align: "end",
                whole: true,
              },
              { header: words((w) => w.steps.columns.part), grow: true },
              { header: words((w) => w.steps.kit.forSteps) },
            ],
            parts.map(
              (p): TableRow => ({
                kind: "row",
                cells: [
                  TICK,
                  `${p.count}`,
                  label(language, p.labels, p.typeId, " · "),
                  stepNumbers(line, p.stepIds),
                ],
              }),
            ),
            widthMm,
            continued,
          ),
          gap(3),
        ]),
    ...(harnesses.length === 0
      ? []
      : [
          head(words((w) => w.steps.kit.harnesses)),
          ...table(
            [
              { header: words((w) => w.common.done), align: "middle", whole: true },
              { header: words((w) => w.common.harness), weight: "bold", whole: true },
              { header: "", grow: true },
              { header: words((w) => w.steps.kit.forSteps) },
            ],
            harnesses.map((p): TableRow => {
              const harness = line.harnesses.get(p.typeId);
              return {
                kind: "row",
                cells: [
                  TICK,
                  harness === undefined ? "" : badgeOf(harness),
                  label(language, p.labels, p.typeId, " · "),
                  stepNumbers(line, p.stepIds),
                ],
              };
            }),
            widthMm,
            continued,
          ),
        ]),
  ];
}

function boxTable(
  line: LineResult,
  kit: StationKit,
  language: SheetLanguage,
  widthMm: number,
  continued: string,
): Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const columns: TableColumn[] = [
    {
      header: words((w) => w.steps.columns.letter),
      heightMm: TEXT.head,
      weight: "bold",
      whole: true,
    },
    {
      header: words((w) => w.steps.columns.count),
      heightMm: TEXT.head,
      weight: "bold",
      align: "end",
      whole: true,
    },
    { header: words((w) => w.steps.columns.screw), grow: true },
    { header: words((w) => w.steps.columns.drive) },
    { header: words((w) => w.steps.kit.forSteps) },
    { header: words((w) => w.common.done), align: "middle", whole: true },
  ];
  const types = new Map(line.machine.book.tables.fastener_types.map((t) => [t.id, t]));
  const rows = kit.fasteners.map((f): SymbolRow => {
    const type = types.get(f.typeId);
    const aside = f.driven === 0 ? `\n${words((w) => w.steps.kit.washerOrNut)}` : "";
    return {
      symbol: f.symbol,
      row: {
        kind: "row",
        cells: [
          f.symbol?.letter ?? "",
          `${f.count}`,
          `${rowLabel(type, f.typeId, language, "\n")}${aside}`,
          type?.drive ?? "",
          stepsOfType(line, kit, f.typeId),
          TICK,
        ],
      },
    };
  });
  return symbolTable(
    words((w) => w.steps.columns.symbol),
    columns,
    rows,
    widthMm,
    continued,
    Math.max(TEXT.head, line.machine.shop.numbers.symbol_mm),
  );
}

function kitGrids(line: LineResult, kit: StationKit, language: SheetLanguage): readonly Grid[] {
  const w = sheetWords(language === "both" ? "en" : language).steps;
  const own = language === "both" ? "en" : language;
  const boxes: Grid = {
    name: w.kit.boxes,
    header: [w.columns.letter, w.columns.screw, w.columns.count, w.kit.forSteps],
    rows: kit.fasteners.map((f) => [
      f.symbol?.letter ?? "",
      label(own, f.labels, f.typeId),
      f.count,
      stepsOfType(line, kit, f.typeId),
    ]),
  };
  const parts: Grid = {
    name: w.kit.parts,
    header: [w.columns.part, w.columns.names, w.columns.count, w.kit.forSteps],
    rows: kit.parts.map((p) => [
      label(own, p.labels, p.typeId),
      p.typeId,
      Number(shortNumber(p.count, 3)),
      stepNumbers(line, p.stepIds),
    ]),
  };
  return [boxes, parts].filter((grid) => grid.rows.length > 0);
}
