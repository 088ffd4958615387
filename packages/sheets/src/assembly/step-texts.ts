import type { FastenerMoment, LineResult, Side, WorkStep } from "@pinwright/engine";
import type { SheetLanguage, SheetWords } from "@pinwright/words";
import { shortNumber } from "../compose/number.ts";
import { label, say } from "../compose/say.ts";
import type { ScrewGroup, StepSide } from "./step-facts.ts";

type Labelled = { readonly label: string; readonly label_zh: string };

/** Label of a row of the book in the languages of a sheet. */
export function rowLabel(
  row: Labelled | undefined,
  fallback: string,
  language: SheetLanguage,
  joint = " · ",
): string {
  return label(language, { en: row?.label ?? "", zh: row?.label_zh ?? "" }, fallback, joint);
}

/** Name of a panel. */
export function panelName(line: LineResult, panelId: string, language: SheetLanguage): string {
  return rowLabel(line.machine.panels.get(panelId), panelId, language);
}

/** `Playfield, underside`. */
export function panelSideName(
  line: LineResult,
  panelId: string,
  side: Side,
  language: SheetLanguage,
  joint = " · ",
): string {
  const panel = line.machine.panels.get(panelId);
  return say(
    language,
    (w, l) => {
      const name = l === "zh" && panel !== undefined && panel.label_zh !== "" ? panel.label_zh : panel?.label;
      return w.steps.panelSide(name === undefined || name === "" ? panelId : name, w.steps.side[side]);
    },
    joint,
  );
}

/** `7`: the number of a step as it is printed big. */
export const stepBadge = (step: WorkStep): string => String(step.number);

/** Title of a step, a line for each language. */
export function stepTitle(step: WorkStep, language: SheetLanguage, joint = "\n"): string {
  return label(language, step.labels, step.id, joint);
}

/** What a view of a panel side is: how the panel lies and what is mirrored. */
export function viewText(
  line: LineResult,
  { panelId, side }: Pick<StepSide, "panelId" | "side">,
  language: SheetLanguage,
): string {
  const lies = line.machine.panels.get(panelId)?.purpose === "playfield";
  return say(language, ({ steps: { view } }) => {
    if (lies) return `${view.pose(side === "under" ? view.inverted : view.lying)}. ${view[side]}`;
    return side === "under" ? view.underPlain : view.topPlain;
  });
}

/** Name of a tool of the shop; the drive of the screw where none is known. */
export function toolText(
  line: LineResult,
  driverId: string | null,
  drive: string,
  language: SheetLanguage,
): string {
  const driver = line.machine.shop.tables.drivers.find((d) => d.id === driverId);
  if (driver === undefined) return say(language, (w) => w.steps.noTool(drive), " · ");
  return rowLabel(driver, driver.id, language);
}

/** `driver 2 · hold with spanner 8`. */
export function groupTool(line: LineResult, group: ScrewGroup, language: SheetLanguage): string {
  const drive = toolText(line, group.driverId, group.type.drive, language);
  if (group.nut === null) return drive;
  const spanner = toolText(line, group.nutDriverId, group.nut.drive, language);
  return spanner === "" ? drive : `${drive}; ${say(language, (w) => w.steps.hold(spanner), " · ")}`;
}

/** `clutch 6, 1.2 N·m`. */
export function tightenText(group: Pick<ScrewGroup, "type">, language: SheetLanguage): string {
  const { clutch, torque_nm: torqueNm } = group.type;
  return say(
    language,
    (w) =>
      [
        clutch === null ? "" : w.steps.clutch(shortNumber(clutch, 1)),
        torqueNm === null ? "" : w.steps.torque(shortNumber(torqueNm, 2)),
      ]
        .filter((t) => t !== "")
        .join(", "),
    " · ",
  );
}

/** Washer and nut that go on with a screw. */
export function withItText(group: ScrewGroup, language: SheetLanguage): string {
  const { washer, nut } = group;
  return [
    washer === null ? "" : say(language, (w) => w.steps.washer(rowLabel(washer, washer.id, language)), " · "),
    nut === null ? "" : say(language, (w) => w.steps.nut(rowLabel(nut, nut.id, language)), " · "),
  ]
    .filter((t) => t !== "")
    .join("; ");
}

/** Whether threadlocker goes on; never where a screw bites into wood. */
export const takesLocker = (group: ScrewGroup): boolean => group.type.threadlocker === true;

/** `1 Start all loose → 2 Align → 3 Tighten; after burn-in: check`. */
export function momentsText(moments: readonly FastenerMoment[], words: SheetWords): string {
  const { moments: m } = words.steps;
  return moments.map((moment, i) => `${i + 1} ${m[moment]}`).join("  →  ");
}
