import type { HarnessResult, LineResult } from "@pinwright/engine";
import type { SheetWords } from "@pinwright/words";
import { label, say } from "./compose/say.ts";
import type { Identity } from "./compose/title-block.ts";
import type { SheetOptions } from "./options.ts";

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

/** Letters of a kind in an identification number. */
const KIND_LETTERS: Readonly<Record<HarnessSheetKind, string>> = {
  pinboard: "PB",
  "from-to": "FT",
  "cut-list": "CL",
  "lay-up": "LU",
  "connector-loading": "LD",
  "wire-labels": "WL",
  "pull-test": "PT",
  continuity: "CT",
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

/** Title block of a sheet of a harness. */
export function identityOf(
  line: LineResult,
  harness: HarnessResult,
  kind: HarnessSheetKind,
  options: SheetOptions,
  variant?: Variant,
): Identity {
  const { machine } = line.machine.book;
  const documentType = say(options.language, variant?.title ?? ((w) => w.kinds[kind]));
  const title = harnessTitle(harness, options);
  const name = variant === undefined || variant.name === "" ? kind : `${kind}-${variant.name}`;
  const sheetId = `${harness.harness.id}.${name}.${options.language}`;
  const letters = KIND_LETTERS[kind] + (variant === undefined ? "" : variant.name.toUpperCase());
  return {
    machineId: machine.id,
    sheetId,
    fileName: sheetId,
    documentTitle: `${badgeOf(harness)} ${title.split("\n").join(" · ")}: ${documentType.split("\n").join(" · ")}`,
    owner: machine.owner,
    documentType,
    title,
    supplement: label(options.language, { en: machine.label, zh: machine.label_zh }, machine.id),
    number: `${machine.id}-${badgeOf(harness)}-${letters}`,
    revision: machine.revision,
    date: options.date,
    creator: options.creator,
    approved: machine.approved,
    state: options.state,
    scale: variant?.scale ?? "",
  };
}
