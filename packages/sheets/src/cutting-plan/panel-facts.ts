import { cuttingPlan, type LineResult, type SheetCutting } from "@pinwright/engine";
import { SharedMemory } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import { stepSlug } from "../assembly/step-facts.ts";
import { shortNumber } from "../compose/number.ts";
import { label, say } from "../compose/say.ts";

const memory = new SharedMemory<LineResult["panels"], readonly SheetCutting[]>();

/** The cutting plans of a run, found once for all of its sheets. */
export const cuttings = (line: LineResult, machines: number): readonly SheetCutting[] =>
  memory.ask(line.panels, [line.machine.shop, machines], () => cuttingPlan(line, { machines }));

/** Sheet goods that panels are cut from, in the order of the book's panels; the shop stocks them. */
export function goodsIds(line: LineResult): readonly string[] {
  const stocked = new Set(line.machine.shop.tables.stock_sheets.map(({ part }) => part));
  const used = line.panels.cuts.flatMap(({ sheetPartId }) => sheetPartId ?? []);
  return [...new Set(used)].filter((id) => stocked.has(id));
}

/** What stands for sheet goods in names of files. */
export const goodsSlug = (partId: string): string => stepSlug(partId);

/** `1335.2`: a size as the fence is set to it. */
export const sizeMm = (mm: number): string => shortNumber(mm, 1);

/** Name of a panel, a line for each language. */
export function panelName(line: LineResult, panelId: string, language: SheetLanguage, joint = "\n"): string {
  const cut = line.panels.cuts.find((own) => own.panelId === panelId);
  const row = line.machine.panels.get(panelId);
  const labels = cut?.labels ?? { en: row?.label ?? "", zh: row?.label_zh ?? "" };
  return label(language, labels, panelId, joint);
}

/** Names of several panels in one line, those of one size together: `A / B`. */
export const panelNames = (
  line: LineResult,
  ids: readonly string[],
  language: SheetLanguage,
  joint = " / ",
): string => ids.map((id) => panelName(line, id, language, " · ")).join(joint);

/** `18 (nominal), 17.6 measured` of the goods that a plan cuts. */
export function thicknessText(line: LineResult, cutting: SheetCutting, language: SheetLanguage): string {
  const cut = line.panels.cuts.find(({ sheetPartId }) => sheetPartId === cutting.sheetPartId);
  if (cut === undefined) return "";
  return say(
    language,
    (w) => w.panels.thickness(shortNumber(cut.thicknessMm, 2), shortNumber(cut.nominalThicknessMm, 2)),
    " · ",
  );
}

/** What there is to say when no plan was found; blank: there is one. */
export function noPlanText(line: LineResult, cutting: SheetCutting, language: SheetLanguage): string {
  if (cutting.plan !== null) return "";
  const names = (ids: readonly string[]): string => panelNames(line, ids, language, ", ");
  return say(language, (w) =>
    [
      cutting.tooLargeIds.length === 0 ? "" : w.panels.plan.tooLarge(names(cutting.tooLargeIds)),
      cutting.unplacedIds.length === 0 ? "" : w.panels.plan.unplaced(names(cutting.unplacedIds)),
    ]
      .filter((text) => text !== "")
      .join(" "),
  );
}
