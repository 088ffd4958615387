import type { ChangedSheet, Comparison, SheetFact } from "../../packages/engine/src/index.ts";
import type { Composed } from "./composed.ts";

type Sheet = Pick<SheetFact | ChangedSheet, "id" | "kind" | "of">;
type Picks = (sheet: Sheet) => boolean;

/**
 * Which sheets a change reaches, from what a sheet shows and what the script writes: not from hashes, nor from how the program
 * compares. Those that `must` change are looked for among the sheets as they were, those that may among all that are told.
 */
export interface SheetRule {
  readonly must: (sheet: Sheet, shown: Composed) => boolean;
  readonly may: Picks;
}

/** Nothing that is on paper says it. */
export const NO_SHEET: SheetRule = { must: () => false, may: () => false };

export const kinds =
  (...names: readonly string[]): Picks =>
  ({ kind }) =>
    names.includes(kind);

/** Sheets whose id is one of these, or begins with one of these and a hyphen. */
export const named =
  (...ids: readonly string[]): Picks =>
  ({ id }) =>
    ids.some((one) => id === `machine.${one}` || id.startsWith(`machine.${one}-`));

/** Sheets of these harnesses, of these kinds; no kind: of every kind. */
export const harness =
  (ids: readonly string[], ...names: readonly string[]): Picks =>
  ({ of, kind }) =>
    ids.includes(of) && (names.length === 0 || names.includes(kind));

export const either =
  (...picks: readonly Picks[]): Picks =>
  (sheet) =>
    picks.some((pick) => pick(sheet));

/** These must change, and of the others only those that may. */
export const reaches = (must: Picks, ...may: readonly Picks[]): SheetRule => ({
  must: (sheet) => must(sheet),
  may: either(must, ...may),
});

/** These and no others. */
export const exactly = (...must: readonly Picks[]): SheetRule => reaches(either(...must));

/** Whether a text stands somewhere as words of their own: `Compass point 1` does not stand in `Compass point 10`. */
function stands(text: string, within: string): boolean {
  const plain = text.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&");
  return new RegExp(`(?<![\\p{L}\\p{N}])${plain}(?![\\p{L}\\p{N}])`, "u").test(within);
}

/** Sheets that show a text must change; others may only where they are picked. */
export const whereShown = (text: string, except: Picks, ...may: readonly Picks[]): SheetRule => {
  const isShown = (sheet: Sheet, { texts }: Composed): boolean => stands(text, texts[sheet.id] ?? "");
  return { must: (sheet, shown) => isShown(sheet, shown) && !except(sheet), may: either(...may) };
};

/** What shows where things stand and how they are fastened. */
export const ASSEMBLY = kinds(
  "step-cards",
  "screw-map",
  "screw-tray",
  "screw-poster",
  "kit-list",
  "drill-table",
  "pilot-template",
);
/** What says how much of what there is, and how long work takes. */
export const AMOUNTS = kinds("parts-list", "kit-list", "step-cards");
/** What says how long wires are. */
export const LENGTHS = [
  "pinboard",
  "from-to",
  "cut-list",
  "lay-up",
  "connector-loading",
  "pull-test",
] as const;
/** What works with the resistance of wires: the wiring chart tells the volts that reach each device. */
export const ELECTRIC = kinds("loads", "supply-schedule", "wiring-chart");

const SOME = 12;

/** Sheets that must be told and are not, and those that are told and may not change. */
export function ruleDisagreements(rule: SheetRule, shown: Composed, { sheets }: Comparison): string[] {
  const told = new Set(sheets.map(({ id }) => id));
  const missing = shown.facts.filter((sheet) => rule.must(sheet, shown) && !told.has(sheet.id));
  const wrong = sheets.filter((sheet) => !rule.may(sheet) && !rule.must(sheet, shown));
  const say = (what: string, list: readonly Sheet[]): string[] =>
    list.length === 0
      ? []
      : [
          `${list.length} sheets ${what}: ${list
            .slice(0, SOME)
            .map(({ id }) => id)
            .join(" ")}`,
        ];
  return [...say("should change", missing), ...say("may not change", wrong)];
}
