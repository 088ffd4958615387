import type { HarnessResult, LineResult } from "@pinwright/engine";
import type { SheetWords } from "@pinwright/words";
import { label, say } from "./compose/say.ts";
import type { Identity } from "./compose/title-block.ts";
import { revisionOf, type SheetOptions } from "./options.ts";

/** Kinds of sheet for a harness. */
export const HARNESS_SHEET_KINDS = [
  "pinboard",
  "from-to",
  "cut-list",
  "lay-up",
  "connector-loading",
  "wire-labels",
  "pull-test",
  "continuity",
] as const;
export type HarnessSheetKind = (typeof HARNESS_SHEET_KINDS)[number];

/** Kinds of sheet for the machine as a whole. */
export const MACHINE_SHEET_KINDS = ["supply-schedule", "wiring-chart", "loads", "program-map"] as const;
export type MachineSheetKind = (typeof MACHINE_SHEET_KINDS)[number];

/** Kinds of sheet for the assembly of the machine. */
export const ASSEMBLY_SHEET_KINDS = [
  "step-cards",
  "screw-map",
  "kit-list",
  "screw-poster",
  "screw-tray",
  "drill-table",
  "pilot-template",
] as const;
export type AssemblySheetKind = (typeof ASSEMBLY_SHEET_KINDS)[number];

/** Kinds of sheet for making panels and boards, and for what they and the machine are made of. */
export const MAKING_SHEET_KINDS = [
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
] as const;
export type MakingSheetKind = (typeof MAKING_SHEET_KINDS)[number];

export type SheetKind = HarnessSheetKind | MachineSheetKind | AssemblySheetKind | MakingSheetKind;
/** Every kind of sheet, those of a harness first. */
export const SHEET_KINDS: readonly SheetKind[] = [
  ...HARNESS_SHEET_KINDS,
  ...MACHINE_SHEET_KINDS,
  ...ASSEMBLY_SHEET_KINDS,
  ...MAKING_SHEET_KINDS,
];

/** Stands for the harness in the name of a sheet of the whole machine. */
export const MACHINE_SHEETS = "machine";

/** Letters of a kind in an identification number. */
const KIND_LETTERS: Readonly<Record<SheetKind, string>> = {
  pinboard: "PB",
  "from-to": "FT",
  "cut-list": "CL",
  "lay-up": "LU",
  "connector-loading": "LD",
  "wire-labels": "WL",
  "pull-test": "PT",
  continuity: "CT",
  "supply-schedule": "SF",
  "wiring-chart": "WC",
  loads: "LO",
  "program-map": "PM",
  "step-cards": "SC",
  "screw-map": "SM",
  "kit-list": "KL",
  "screw-poster": "SP",
  "screw-tray": "ST",
  "drill-table": "DT",
  "pilot-template": "PJ",
  "cutting-plan": "CP",
  "cutting-order": "CO",
  "panel-labels": "PL",
  "panel-drawing": "PD",
  "paint-plan": "PA",
  "board-register": "BR",
  "stuffing-guide": "SG",
  "board-kit": "BK",
  "board-test": "BT",
  "parts-list": "LI",
};

/** `H7`: the number of a harness as it is printed big. */
export function badgeOf(harness: HarnessResult): string {
  return `H${harness.harness.number}`;
}

/** Name of a harness in the languages of a sheet, a line for each. */
export function harnessTitle(harness: HarnessResult, options: SheetOptions): string {
  return label(options.language, harness.labels, harness.harness.id);
}

/** Which one of several sheets of a kind: `a4`, and how the document type is then worded. */
export interface Variant {
  readonly name: string;
  readonly title: (words: SheetWords) => string;
  readonly scale: string;
}

/** What every sheet of a machine says of it. */
function machineFields(line: LineResult, options: SheetOptions) {
  const { machine } = line.machine.book;
  return {
    machineId: machine.id,
    owner: machine.owner,
    supplement: label(options.language, { en: machine.label, zh: machine.label_zh }, machine.id),
    revision: revisionOf(machine, options),
    date: options.date,
    creator: options.creator,
    approved: machine.approved,
    state: options.state,
    address: options.address,
  };
}

/** Title block of a sheet of a harness. */
export function identityOf(
  line: LineResult,
  harness: HarnessResult,
  kind: HarnessSheetKind,
  options: SheetOptions,
  variant?: Variant,
): Identity {
  const machine = machineFields(line, options);
  const documentType = say(options.language, variant?.title ?? ((w) => w.kinds[kind]));
  const title = harnessTitle(harness, options);
  const name = variant === undefined || variant.name === "" ? kind : `${kind}-${variant.name}`;
  const sheetId = `${harness.harness.id}.${name}.${options.language}`;
  const letters = KIND_LETTERS[kind] + (variant === undefined ? "" : variant.name.toUpperCase());
  return {
    ...machine,
    sheetId,
    fileName: sheetId,
    documentTitle: `${badgeOf(harness)} ${title.split("\n").join(" · ")}: ${documentType.split("\n").join(" · ")}`,
    documentType,
    title,
    number: `${machine.machineId}-${badgeOf(harness)}-${letters}`,
    scale: variant?.scale ?? "",
  };
}

/** Name of a sheet of the whole machine, and of its files. */
export function machineSheetName(kind: MachineSheetKind, language: SheetOptions["language"]): string {
  return `${MACHINE_SHEETS}.${kind}.${language}`;
}

/** Title block of a sheet of the whole machine. */
export function machineIdentity(line: LineResult, kind: MachineSheetKind, options: SheetOptions): Identity {
  const machine = machineFields(line, options);
  const documentType = say(options.language, (w) => w.kinds[kind]);
  const title = say(options.language, (w) => w.machine.whole);
  const sheetId = machineSheetName(kind, options.language);
  return {
    ...machine,
    sheetId,
    fileName: sheetId,
    documentTitle: `${title.split("\n").join(" · ")}: ${documentType.split("\n").join(" · ")}`,
    documentType,
    title,
    number: `${machine.machineId}-${KIND_LETTERS[kind]}`,
    scale: "",
  };
}

/** One of the sheets of a kind that the machine is made or assembled from. */
export interface AssemblySheet {
  readonly kind: AssemblySheetKind | MakingSheetKind;
  /** What tells it from others of its kind, in names of files: `st.lamps-roll`; blank: it is the only one. */
  readonly name: string;
  /** What stands for it in the identification number. */
  readonly letters: string;
  /** Document type; absent: the kind's. */
  readonly type?: (words: SheetWords) => string;
  /** What is shown, a line for each language; absent: the whole machine. */
  readonly title?: string;
  readonly scale?: string;
}

/** Name of a sheet of making or assembly, and of its files. */
export function assemblySheetName(
  kind: AssemblySheetKind | MakingSheetKind,
  name: string,
  language: SheetOptions["language"],
): string {
  return `${MACHINE_SHEETS}.${name === "" ? kind : `${kind}-${name}`}.${language}`;
}

/** Title block of a sheet of making or assembly. */
export function assemblyIdentity(line: LineResult, sheet: AssemblySheet, options: SheetOptions): Identity {
  const machine = machineFields(line, options);
  const documentType = say(options.language, sheet.type ?? ((w) => w.kinds[sheet.kind]));
  const title = sheet.title ?? say(options.language, (w) => w.machine.whole);
  const sheetId = assemblySheetName(sheet.kind, sheet.name, options.language);
  const letters = `${KIND_LETTERS[sheet.kind]}${sheet.letters === "" ? "" : `-${sheet.letters}`}`;
  return {
    ...machine,
    sheetId,
    fileName: sheetId,
    documentTitle: `${title.split("\n").join(" · ")}: ${documentType.split("\n").join(" · ")}`,
    documentType,
    title,
    number: `${machine.machineId}-${letters}`,
    scale: sheet.scale ?? "",
  };
}
