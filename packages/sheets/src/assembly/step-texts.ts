import type { BookRow } from "@pinwright/book";
import type { FastenerMoment, LineResult, Side, WorkStep } from "@pinwright/engine";
import type { Language, SheetLanguage, SheetWords } from "@pinwright/words";
import { shortNumber } from "../compose/number.ts";
import { label, say } from "../compose/say.ts";
import type { ScrewGroup, StepSide } from "./step-facts.ts";

type FastenerType = BookRow<"fastener_types">;
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
    if (lies) return `${view.pose(side === "under" ? view.inverted : view.lying)} ${view[side]}`;
    return side === "under" ? view.underPlain : view.topPlain;
  });
}

/** The same in few words, for a card: the pose of a playfield, or that an underside is seen from behind. */
export function poseText(
  line: LineResult,
  { panelId, side }: Pick<StepSide, "panelId" | "side">,
  language: SheetLanguage,
): string {
  const lies = line.machine.panels.get(panelId)?.purpose === "playfield";
  return say(
    language,
    ({ steps: { view } }) =>
      lies
        ? view.pose(side === "under" ? view.inverted : view.lying)
        : side === "under"
          ? view.underPlain
          : "",
    " · ",
  );
}

/** Which side of a bare panel is up. */
export function bareViewText(side: Side, language: SheetLanguage): string {
  return say(language, ({ steps: { view } }) => (side === "under" ? view.underShort : view.topShort));
}

/** Label of a row of the book in one language. */
function inLanguage(row: Labelled | undefined, fallback: string, language: Language): string {
  if (row === undefined) return fallback;
  const english = row.label === "" ? fallback : row.label;
  return language === "zh" && row.label_zh !== "" ? row.label_zh : english;
}

/** Name of a tool of the shop in one language; the drive of the screw where none is known. */
function toolIn(line: LineResult, driverId: string | null, drive: string, language: Language): string {
  const driver = line.machine.shop.tables.drivers.find((d) => d.id === driverId);
  return inLanguage(driver, drive, language);
}

/** Name of a tool of the shop; the drive of the screw where none is known. */
export function toolText(
  line: LineResult,
  driverId: string | null,
  drive: string,
  language: SheetLanguage,
): string {
  return say(language, (_, l) => toolIn(line, driverId, drive, l), " · ");
}

/** `clutch 6, 1.2 N·m` in one language. */
function tightenIn({ clutch, torque_nm: torqueNm }: FastenerType, words: SheetWords): string {
  return [
    clutch === null ? "" : words.steps.clutch(shortNumber(clutch, 1)),
    torqueNm === null ? "" : words.steps.torque(shortNumber(torqueNm, 2)),
  ]
    .filter((t) => t !== "")
    .join(", ");
}

/** `clutch 6, 1.2 N·m`. */
export function tightenText(type: FastenerType, language: SheetLanguage): string {
  return say(language, (w) => tightenIn(type, w), " · ");
}

/** What a screw is, and the washer and nut that go on with it: a line for each language. */
export function screwText({ type, washer, nut }: ScrewGroup, language: SheetLanguage): string {
  return say(language, (_, l) =>
    [type, washer, nut].flatMap((row) => (row === null ? [] : [inLanguage(row, row.id, l)])).join(" + "),
  );
}

/** How a screw is driven: tool, spanner on its nut, clutch and torque, threadlocker; a line for each language. */
export function howText(line: LineResult, group: ScrewGroup, language: SheetLanguage): string {
  const { type, nut } = group;
  return say(language, (w, l) => {
    const spanner = nut === null ? "" : toolIn(line, group.nutDriverId, nut.drive, l);
    return [
      toolIn(line, group.driverId, type.drive, l),
      spanner === "" ? "" : w.steps.hold(spanner),
      tightenIn(type, w),
      takesLocker(group) ? w.steps.lockerYes : "",
    ]
      .filter((t) => t !== "")
      .join("; ");
  });
}

/** Whether threadlocker goes on; never where a screw bites into wood. */
export const takesLocker = (group: ScrewGroup): boolean => group.type.threadlocker === true;

/** `1 Start all loose → 2 Align → 3 Tighten; after burn-in: check`. */
export function momentsText(moments: readonly FastenerMoment[], words: SheetWords): string {
  const { moments: m } = words.steps;
  return moments.map((moment, i) => `${i + 1} ${m[moment]}`).join("  →  ");
}
