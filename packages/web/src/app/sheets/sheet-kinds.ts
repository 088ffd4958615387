import type { SheetRequest } from "@pinwright/contract";
import type {
  AssemblySheetKind,
  HarnessSheetKind,
  MachineSheetKind,
  MACHINE_SHEETS as MachineSheets,
  MakingSheetKind,
} from "@pinwright/sheets";

/** A list that must hold every member of a union; the compiler refuses one that does not. */
const everyOne =
  <T extends string>() =>
  <const L extends readonly T[]>(list: [T] extends [L[number]] ? L : never): readonly T[] =>
    list;

/**
 * Kinds of sheet of a harness, in the order in which the work goes. Written out here so that the code that composes sheets stays
 * out of the page.
 */
export const SHEET_KINDS = everyOne<HarnessSheetKind>()([
  "pinboard",
  "from-to",
  "cut-list",
  "lay-up",
  "connector-loading",
  "wire-labels",
  "pull-test",
  "continuity",
]);

/** Kinds of sheet of the whole machine. */
export const MACHINE_SHEET_KINDS = everyOne<MachineSheetKind>()([
  "supply-schedule",
  "wiring-chart",
  "loads",
  "program-map",
]);

/** Kinds of sheet for the assembly of the machine, in the order in which the work goes. */
export const ASSEMBLY_SHEET_KINDS = everyOne<AssemblySheetKind>()([
  "drill-table",
  "pilot-template",
  "kit-list",
  "screw-poster",
  "step-cards",
  "screw-map",
  "screw-tray",
]);

/** Kinds of sheet for making panels and boards, and the lists of parts. */
export const MAKING_SHEET_KINDS = everyOne<MakingSheetKind>()([
  "cutting-plan",
  "cutting-order",
  "panel-labels",
  "panel-drawing",
  "paint-plan",
  "board-register",
  "stuffing-guide",
  "board-kit",
  "board-test",
  "parts-list",
]);

/** What the names of files of the whole machine begin with, where others have their harness. */
export const MACHINE_SHEETS: typeof MachineSheets = "machine";

/** Any kind of sheet. */
export type SheetKind = HarnessSheetKind | MachineSheetKind | AssemblySheetKind | MakingSheetKind;

export type SheetFormat = SheetRequest["formats"][number];
export const SHEET_FORMATS = everyOne<SheetFormat>()(["pdf", "svg", "dxf", "xlsx", "csv"]);

export type SheetLanguage = SheetRequest["language"];
export const LANGUAGES = everyOne<SheetLanguage>()(["en", "zh", "both"]);
