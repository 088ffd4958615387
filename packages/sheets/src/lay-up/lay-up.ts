import { type HarnessResult, type LayUpStep, type LineResult, layUpOrder } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { colourKey } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import type { Grid } from "../compose/grid.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { gaugeText, pointText, wiresById } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

/** The order in which the wires of a harness are laid on its pinboard, holder by holder. */
export function composeLayUp(line: LineResult, harness: HarnessResult, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const steps = layUpOrder(line.machine, harness);
  const columns: TableColumn[] = [
    { header: "№", align: "end" },
    { whole: true, header: words((w) => w.common.wire), heightMm: TEXT.large, weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.common.colour), heightMm: TEXT.large, weight: "bold" },
    { whole: true, header: words((w) => w.common.gauge) },
    { whole: true, header: words((w) => w.layUp.from) },
    { header: words((w) => w.layUp.to), grow: true, detail: true },
    { whole: true, header: words((w) => w.common.cutMm), align: "end" },
    { header: words((w) => w.common.done), align: "middle" },
  ];
  let order = 0;
  const wires = wiresById(harness);
  const rows = steps.flatMap((step, n): TableRow[] => [
    groupRow(line, step, n + 1, language),
    ...step.wires.map((laid): TableRow => {
      order += 1;
      const wire = wires.get(laid.wireId);
      return {
        kind: "row",
        cells: [
          String(order),
          String(laid.number),
          laid.colour,
          wire === undefined ? "" : gaugeText(wire.wireType),
          endName(line, laid.from, language),
          farText(line, laid.to, language),
          shortMm(wire?.cutMm ?? 0),
          TICK,
        ],
      };
    }),
  ]);
  return composeHarnessListing(line, harness, options, {
    kind: "lay-up",
    paper: "a4-portrait",
    blocks: (widthMm) => [
      paragraph(
        words((w) => w.layUp.note),
        widthMm,
        TEXT.small,
      ),
      colourKey(harness, language, widthMm),
      ...table(
        columns,
        rows,
        widthMm,
        words((w) => w.common.continued),
      ),
    ],
    grids: [layUpGrid(harness, steps, language)],
  });
}

/** Cavity or terminal alone: the step's heading names the holder. */
function endName(line: LineResult, id: string, language: SheetLanguage): string {
  const point = line.machine.points.get(id);
  return point === undefined ? pointText(line, id, language) : String(point.pin ?? point.localId);
}

/** Where the other end goes, and in small letters what that is. */
function farText(line: LineResult, id: string, language: SheetLanguage): string {
  const point = line.machine.points.get(id);
  const item = point === undefined ? undefined : line.machine.items.get(point.itemId);
  const name = item === undefined ? "" : label(language, item.labels, "", " · ");
  return name === "" ? pointText(line, id, language) : `${pointText(line, id, language)}\n${name}`;
}

function groupRow(line: LineResult, step: LayUpStep, n: number, language: SheetLanguage): TableRow {
  const landing = line.machine.landings.get(step.landingId);
  const item = landing === undefined ? undefined : line.machine.items.get(landing.itemId);
  const title = say(language, (w) => w.layUp.step(n), " · ");
  if (item === undefined) {
    return { kind: "group", text: `${title} · ${say(language, (w) => w.layUp.betweenSplices, " · ")}` };
  }
  return {
    kind: "group",
    text: `${title} · ${step.landingId}`,
    detail: `${label(language, item.labels, "", " · ")}\n${say(language, (w) => w.layUp.fromRoot(shortMm(step.fromRootMm)), " · ")}`,
  };
}

function layUpGrid(harness: HarnessResult, steps: readonly LayUpStep[], language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  let order = 0;
  const wires = wiresById(harness);
  return {
    name: w.kinds["lay-up"],
    header: [
      "№",
      w.common.harness,
      w.layUp.from,
      w.common.wire,
      w.common.colour,
      w.common.from,
      w.common.to,
      w.common.cutMm,
    ],
    rows: steps.flatMap((step) =>
      step.wires.map((laid) => {
        order += 1;
        return [
          order,
          harness.harness.number,
          step.landingId,
          laid.number,
          laid.colour,
          laid.from,
          laid.to,
          wires.get(laid.wireId)?.cutMm ?? 0,
        ];
      }),
    ),
  };
}
