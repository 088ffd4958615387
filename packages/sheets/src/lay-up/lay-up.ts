import {
  type HarnessResult,
  type LayUpEnd,
  type LayUpRun,
  type LayUpStep,
  type LineResult,
  layUpOrder,
} from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { colourKey } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import type { Grid } from "../compose/grid.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { gaugeText, pointText, wireNo, wiresById } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";
import { bundleBlocks, bundleGrid } from "./bundles.ts";

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
    groupRow(line, harness, step, n + 1, language),
    ...step.runs.flatMap((run) => {
      order += 1;
      const n = String(order);
      const cable = run.cable === null ? [] : [cableRow(run, n, language)];
      return [
        ...cable,
        ...run.wires.map((laid): TableRow => {
          const wire = wires.get(laid.wireId);
          return {
            kind: "row",
            cells: [
              run.cable === null ? n : "",
              wireNo(harness, laid.number),
              laid.colour,
              wire === undefined ? "" : gaugeText(wire.wireType),
              `${sign(laid.from)} ${endName(line, laid.from.id, language)}`,
              `${sign(laid.to)} ${farText(line, laid.to.id, language)}`,
              shortMm(wire?.cutMm ?? 0),
              run.cable === null ? TICK : "",
            ],
          };
        }),
      ];
    }),
  ]);
  const trim = shortMm(line.machine.shop.numbers.trim_mm);
  return composeHarnessListing(line, harness, options, {
    kind: "lay-up",
    paper: "a4-portrait",
    blocks: (widthMm) => [
      paragraph(
        words((w) => `${w.layUp.note} ${w.layUp.signs(trim)}`),
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
      ...bundleBlocks(line, harness, language, widthMm),
    ],
    grids: [layUpGrid(harness, steps, language), bundleGrid(harness, language)],
  });
}

/** `●`: the contact is on; `○`: trimmed and finished at the holder. */
const sign = (end: LayUpEnd): string => (end.crimpedFirst ? "●" : "○");

/** A cable: laid once, its cores in the rows below. */
function cableRow(run: LayUpRun, n: string, language: SheetLanguage): TableRow {
  const { cable } = run;
  const name = cable === null ? "" : label(language, { en: cable.label, zh: cable.label_zh }, "", " · ");
  return {
    kind: "row",
    cells: [
      n,
      "",
      "",
      "",
      say(language, (w) => w.cutList.cable),
      `${cable?.id ?? ""}\n${name}`,
      shortMm(run.cutMm),
      TICK,
    ],
  };
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

function groupRow(
  line: LineResult,
  harness: HarnessResult,
  step: LayUpStep,
  n: number,
  language: SheetLanguage,
): TableRow {
  const landing = line.machine.landings.get(step.landingId);
  const item = landing === undefined ? undefined : line.machine.items.get(landing.itemId);
  const title = say(language, (w) => w.layUp.step(n), " · ");
  if (item === undefined) {
    return { kind: "group", text: `${title} · ${say(language, (w) => w.layUp.betweenSplices, " · ")}` };
  }
  return {
    kind: "group",
    text: `${title} · ${step.landingId}`,
    detail: `${label(language, item.labels, "", " · ")}\n${say(language, (w) => w.layUp.fromRoot(shortMm(step.fromRootMm), rootName(harness)), " · ")}`,
  };
}

/** What distances are counted from: a waypoint, or the landing at the root. */
const rootName = ({ route }: HarnessResult): string => route.rootId.replace(/^landing:/u, "");

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
      "●○",
      w.common.to,
      "●○",
      w.common.cutMm,
      w.cutList.cable,
    ],
    rows: steps.flatMap((step) =>
      step.runs.flatMap((run) => {
        order += 1;
        return run.wires.map((laid) => [
          order,
          harness.harness.number,
          step.landingId,
          wireNo(harness, laid.number),
          laid.colour,
          laid.from.id,
          sign(laid.from),
          laid.to.id,
          sign(laid.to),
          wires.get(laid.wireId)?.cutMm ?? 0,
          run.cable?.id ?? "",
        ]);
      }),
    ),
  };
}
