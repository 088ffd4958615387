import { type LineResult, type PaintPlan, shopPaintPlan } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableRow, TICK, table } from "../compose/table.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { rackChart } from "./rack-chart.ts";

const DAY_HOURS = 24;
/** More batches than this are told in the table alone. */
const MOST_DRAWN = 24;

/** Batches of cabinets on the paint rack; none without coats or cabinets. */
export function* composePaintPlans(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  if (paintPlanNames(line, options.language).length === 0) return;
  const plan = shopPaintPlan(line.machine, Math.max(1, options.machines));
  if (plan !== null) yield composePaint(line, plan, options);
}

/** Names of the sheets that `composePaintPlans` makes. */
export function paintPlanNames(line: LineResult, language: SheetLanguage): readonly string[] {
  const { shop } = line.machine;
  const isPainted =
    shop.tables.coats.length > 0 && shop.numbers.rack_cabinets >= 1 && line.panels.cuts.length > 0;
  return isPainted ? [assemblySheetName("paint-plan", "", language)] : [];
}

/** Day and time of an hour of the clock that is counted from the beginning of the first working day: `2`, `1:05`. */
function clock(hour: number): readonly [day: string, time: string] {
  const minutes = Math.round(hour * 60);
  const day = Math.floor(minutes / (DAY_HOURS * 60));
  const rest = minutes - day * DAY_HOURS * 60;
  return [String(day + 1), `${Math.floor(rest / 60)}:${String(rest % 60).padStart(2, "0")}`];
}

const clockText = (hour: number): string => clock(hour).join(" / ");

function composePaint(line: LineResult, plan: PaintPlan, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const cabinets = plan.batches.reduce((sum, batch) => sum + batch.cabinets, 0);
  return composeListing({
    identity: assemblyIdentity(line, { kind: "paint-plan", name: "", letters: "" }, options),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["paint-plan"]),
      subtitle: say(language, (w) => w.panels.paint.cabinets(cabinets)),
      facts: [
        words((w) => w.panels.paint.batches(plan.batches.length)),
        words((w) => w.panels.paint.rack(plan.rackCabinets)),
      ],
    },
    cautions: [say(language, (w) => w.panels.caution.solvent), say(language, (w) => w.panels.caution.rags)],
    blocks: (widthMm) => [
      paragraph(
        say(language, (w) => w.panels.paint.ends(...clock(plan.endHour))),
        widthMm,
        TEXT.large,
        true,
      ),
      paragraph(
        words((w) => w.panels.paint.hours(shortNumber(plan.hoursDay, 1))),
        widthMm,
        TEXT.normal,
      ),
      gap(2),
      ...(plan.batches.length > MOST_DRAWN ? [] : [rackChart(plan, language, widthMm), gap(3)]),
      ...batchTable(line, plan, language, widthMm),
    ],
    grids: [gridOf(line, plan, language)],
  });
}

function coatName(line: LineResult, coatId: string, language: SheetLanguage): string {
  const coat = line.machine.shop.tables.coats.find(({ id }) => id === coatId);
  return label(language, { en: coat?.label ?? "", zh: coat?.label_zh ?? "" }, coatId, " · ");
}

function batchTable(line: LineResult, plan: PaintPlan, language: SheetLanguage, widthMm: number) {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const rows = plan.batches.flatMap((batch): TableRow[] => [
    {
      kind: "group",
      text: `${words((w) => w.panels.paint.batch)} ${batch.number}`,
      detail: words((w) => w.panels.paint.cabinets(batch.cabinets)),
    },
    ...batch.coats.map(
      (coat): TableRow => ({
        kind: "row",
        cells: [
          TICK,
          coatName(line, coat.coatId, language),
          clockText(coat.startHour),
          clockText(coat.workEndHour),
          clockText(coat.dryHour),
        ],
      }),
    ),
  ]);
  return table(
    [
      { header: words((w) => w.panels.paint.done), align: "middle", whole: true },
      { header: words((w) => w.panels.paint.coat), grow: true },
      { header: words((w) => w.panels.paint.start), weight: "bold", whole: true },
      { header: words((w) => w.panels.paint.end), whole: true },
      { header: words((w) => w.panels.paint.dry), weight: "bold", whole: true },
    ],
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}

function gridOf(line: LineResult, plan: PaintPlan, language: SheetLanguage): Grid {
  const own = language === "both" ? "en" : language;
  return {
    name: sheetWords(own).kinds["paint-plan"],
    header: ["batch", "cabinets", "coat", "start_hour", "work_end_hour", "dry_hour"],
    rows: plan.batches.flatMap((batch) =>
      batch.coats.map((coat) => [
        batch.number,
        batch.cabinets,
        coatName(line, coat.coatId, own),
        Number(coat.startHour.toFixed(3)),
        Number(coat.workEndHour.toFixed(3)),
        Number(coat.dryHour.toFixed(3)),
      ]),
    ),
  };
}
