import {
  cuttingPlan,
  type Finding,
  type FitResult,
  type Machine,
  type PanelCut,
  type PanelsResult,
  PanelsSolver,
  resolveMachine,
  type SheetCutting,
  shopPaintPlan,
} from "@pinwright/engine";
import { findingWords } from "@pinwright/words";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook } from "../load.ts";
import { countOption } from "../number-option.ts";
import { STATUS } from "../terminal.ts";
import { textTable } from "../text-table.ts";

const mm = (value: number): string => String(Math.round(value * 100) / 100);
const squareMetres = (value: number): string => value.toFixed(2);

/** What a size follows and which others are cut with it. */
const notesOf = ({ settingX, settingY }: PanelCut): string =>
  [settingX === null ? "" : `x: ${settingX}`, settingY === null ? "" : `y: ${settingY}`]
    .filter((text) => text !== "")
    .join(", ");

function cutList({ cuts }: PanelsResult): string {
  const rows = cuts.map((cut) => [
    cut.panelId,
    mm(cut.widthMm),
    mm(cut.heightMm),
    mm(cut.thicknessMm),
    cut.grain,
    cut.sheetPartId ?? "no sheet",
    notesOf(cut),
  ]);
  const heads = ["panel", "x mm", "y mm", "thick mm", "grain", "sheet goods", "fence settings"];
  return textTable([heads, ...rows], new Set([1, 2, 3]));
}

function slotList({ slots }: PanelsResult): string {
  const rows = slots.map((slot) => [
    slot.cutoutId,
    slot.panelId,
    slot.takesId,
    mm(slot.drawnMm),
    mm(slot.widthMm),
  ]);
  return textTable([["slot", "in", "takes", "drawn mm", "cut mm"], ...rows], new Set([3, 4]));
}

function fitList({ fits }: PanelsResult): string {
  const range = (low: number | null, high: number | null): string =>
    `${low === null ? "–" : mm(low)} … ${high === null ? "–" : mm(high)}`;
  const rows = fits.map((fit: FitResult) => [
    fit.fitId,
    mm(fit.nominalMm),
    range(fit.rssMinMm, fit.rssMaxMm),
    range(fit.worstMinMm, fit.worstMaxMm),
    range(fit.minMm, fit.maxMm),
  ]);
  return textTable([["fit", "mm", "likely", "at worst", "asked for"], ...rows], new Set([1]));
}

/** `ply-18 × 16: cab.left cab.right | keep 356 × 1210` */
function patternLines(cutting: SheetCutting): readonly string[] {
  return cutting.sheets.map(({ stockId, copies, panels, offcuts }, i) => {
    const counts = new Map<string, number>();
    for (const { panelIds } of panels) {
      const name = panelIds.join("/");
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
    const what = [...counts].map(([name, n]) => (n === 1 ? name : `${n} ${name}`)).join(", ");
    const kept = offcuts.map(({ widthMm, heightMm }) => `${mm(widthMm)} × ${mm(heightMm)}`).join(", ");
    return `  pattern ${i + 1}: ${stockId} × ${copies}: ${what}${kept === "" ? "" : `; keep ${kept}`}`;
  });
}

function cuttingText(cutting: SheetCutting): string {
  const name = cutting.sheetPartId;
  if (cutting.plan === null) {
    const [ids, why] =
      cutting.tooLargeIds.length > 0
        ? [cutting.tooLargeIds, "larger than any sheet"]
        : [cutting.unplacedIds, "the shop's sheets are too few"];
    return `${name}: no plan: ${ids.join(", ")}: ${why}\n`;
  }
  const offcuts = cutting.offcutSheets === 0 ? "" : `, and ${cutting.offcutSheets} from stock`;
  const areas = `${squareMetres(cutting.usedAreaM2)} m² of ${squareMetres(cutting.sheetAreaM2)} m², ${squareMetres(cutting.offcutAreaM2)} m² to keep`;
  const lines = [
    `${name}: new sheets: ${cutting.newSheets}${offcuts}; no plan needs fewer than ${cutting.fewestNewSheets}; ${areas}`,
    ...(cutting.sheetsForMates === 0
      ? []
      : [`  ${cutting.sheetsForMates} of them so that panels that mate are cut at one setting`]),
    ...patternLines(cutting),
    `  different fence settings: ${cutting.settings.length}; no plan needs fewer than ${cutting.fewestSettings}`,
    `  fence set, trims too: ${cutting.setups.map(({ fenceMm }) => mm(fenceMm)).join(", ")} mm; cuts: ${cutting.cutCount}; about ${Math.ceil(cutting.sawMinutes)} min`,
    ...(cutting.splitSettings.length === 0
      ? []
      : [`  set again, though panels mate: ${cutting.splitSettings.join(", ")}`]),
  ];
  return `${lines.join("\n")}\n`;
}

function paintText(machine: Machine, machines: number): string {
  const plan = shopPaintPlan(machine, machines);
  if (plan === null) return "";
  const last = (hours: number): string => `day ${Math.max(1, Math.ceil(hours / 24))}`;
  return `paint: rack for ${plan.rackCabinets}; ${plan.batches.length} batches of ${plan.batchSize}; done on ${last(plan.endHour)}, never before ${last(plan.earliestEndHour)}\n`;
}

const findingLines = (findings: readonly Finding[]): string =>
  findings
    .map(
      (finding) => `${finding.severity}: ${finding.rule}: ${findingWords("en", finding.rule).say(finding)}\n`,
    )
    .join("");

function report(
  machine: Machine,
  panels: PanelsResult,
  findings: readonly Finding[],
  machines: number,
): string {
  const cuttings = cuttingPlan({ machine, panels }, { machines });
  return [
    `${cutList(panels)}\n`,
    ...(panels.slots.length === 0 ? [] : [`${slotList(panels)}\n`]),
    ...(panels.fits.length === 0 ? [] : [`${fitList(panels)}\n`]),
    ...cuttings.map(cuttingText),
    paintText(machine, machines),
    findingLines(findings),
  ]
    .filter((part) => part !== "")
    .join("\n");
}

function asJson(
  machine: Machine,
  panels: PanelsResult,
  findings: readonly Finding[],
  machines: number,
): string {
  const { id, revision } = machine.book.machine;
  const cutting = cuttingPlan({ machine, panels }, { machines }).map(({ plan: _, ...told }) => told);
  const paint = shopPaintPlan(machine, machines);
  return `${JSON.stringify({ machine: id, revision, machines, ...panels, cutting, paint, findings }, null, 2)}\n`;
}

async function runPanels(
  call: CommandCall,
): Promise<{ readonly out: string; readonly err: string; readonly fatal: boolean }> {
  const loaded = await loadBook(call);
  const err = loaded.faults.map((fault) => `${faultText(fault)}\n`).join("");
  if (fatalFaults(loaded.faults).length > 0) return { out: "", err, fatal: true };
  const machines = countOption(call, "machines") ?? 1;
  // Panels need nothing of the wiring.
  const machine = resolveMachine(loaded.book, loaded.shop, loaded.options);
  const { panels, findings } = new PanelsSolver().solve(machine);
  const tell = call.flag("json") ? asJson : report;
  return { out: tell(machine, panels, findings, machines), err, fatal: false };
}

/** Tells the sizes that panels are cut to, the fits of their box, and how sheets are cut for one machine or a run. */
export const panelsCommand: Command = {
  name: "panels",
  operands: "BOOK",
  about: "list the panels' cut sizes and fits, and how they are cut from the fewest sheets",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    machines: { type: "string", value: "N", about: "machines that are cut together; else 1" },
    json: { type: "boolean", about: "write all of it as JSON, every cut with its fence setting" },
  },
  run: async (call, terminal) => {
    const { out, err, fatal } = await runPanels(call);
    terminal.err(err);
    terminal.out(out);
    return fatal ? STATUS.failed : STATUS.good;
  },
};
