import { dayText, type Shortage, shortages } from "@pinwright/engine";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { runIdentity } from "./identity.ts";
import { cellNumber, quantityText, type RunSheetInput, runTitle, wordsOf } from "./texts.ts";

/** What each stage of a run lacks, to be ticked off as it comes. */
export function composeShortageList(input: RunSheetInput, runId: string): SheetDocument {
  const { line, plan, options } = input;
  const words = wordsOf(options);
  const short = shortages(line.machine, plan, runId);
  const run = plan.runs.find((own) => own.runId === runId);
  return composeListing({
    identity: runIdentity(line, "run-shortages", runId, runTitle(input, runId), options),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: words((w) => w.runs.kinds["run-shortages"]),
      subtitle: runTitle(input, runId),
      facts: [
        words((w) => w.runs.machines(run?.machines ?? 0)),
        words((w) => w.runs.shortages(new Set(short.map((own) => own.partId)).size)),
      ],
    },
    cautions: [],
    blocks: (widthMm) => blocks(input, short, widthMm),
    grids: [grid(input, short)],
  });
}

const END = { align: "end", whole: true } as const;

function blocks(input: RunSheetInput, short: readonly Shortage[], widthMm: number): readonly Block[] {
  const words = wordsOf(input.options);
  if (short.length === 0)
    return [
      paragraph(
        words((w) => w.runs.none),
        widthMm,
        TEXT.large,
      ),
    ];
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.runs.part), weight: "bold", detail: true, grow: true, heightMm: TEXT.small },
    { header: words((w) => w.runs.needed), ...END },
    { header: words((w) => w.runs.there), ...END },
    { header: words((w) => w.runs.ordered), ...END },
    { header: words((w) => w.runs.short), weight: "bold", ...END },
    { header: words((w) => w.runs.due), whole: true, heightMm: TEXT.small },
    { header: words((w) => w.runs.orderBy), whole: true, heightMm: TEXT.small },
    { header: words((w) => w.runs.ticked), align: "middle" },
  ];
  const rows: TableRow[] = [];
  let stage: string | null | undefined;
  for (const own of short) {
    if (own.stageId !== stage) rows.push({ kind: "group", text: stageTitle(input, own.stageId) });
    stage = own.stageId;
    const name = label(input.options.language, own.labels, own.partId, " · ");
    rows.push({
      kind: "row",
      cells: [
        `${own.partId}\n${own.colour === "" ? name : `${name}, ${own.colour}`}`,
        quantityText(own.needed),
        quantityText(own.onHand),
        quantityText(own.ordered),
        `${quantityText(own.short)} ${words((w) => w.runs.units[own.unit])}`,
        dayText(own.neededDay),
        own.orderDay === null ? "" : dayText(own.orderDay),
        TICK,
      ],
    });
  }
  return table(
    columns,
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}

function stageTitle({ line, options }: RunSheetInput, stageId: string | null): string {
  const words = wordsOf(options);
  const row = line.machine.shop.tables.stages.find((own) => own.id === stageId);
  if (row === undefined) return words((w) => w.runs.spares);
  return label(options.language, { en: row.label, zh: row.label_zh }, row.id, " · ");
}

function grid(input: RunSheetInput, short: readonly Shortage[]): Grid {
  const words = wordsOf(input.options);
  return {
    name: words((w) => w.runs.kinds["run-shortages"]),
    header: [
      words((w) => w.runs.stage),
      words((w) => w.runs.part),
      words((w) => w.parts.name),
      words((w) => w.runs.colour),
      words((w) => w.runs.unit),
      words((w) => w.runs.needed),
      words((w) => w.runs.there),
      words((w) => w.runs.ordered),
      words((w) => w.runs.short),
      words((w) => w.runs.due),
      words((w) => w.runs.orderBy),
    ],
    rows: short.map((own) => [
      own.stageId ?? "",
      own.partId,
      label(input.options.language, own.labels, own.partId, " · "),
      own.colour,
      own.unit,
      cellNumber(own.needed),
      cellNumber(own.onHand),
      cellNumber(own.ordered),
      cellNumber(own.short),
      dayText(own.neededDay),
      own.orderDay === null ? "" : dayText(own.orderDay),
    ]),
  };
}
