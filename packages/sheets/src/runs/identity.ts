import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";
import type { Identity } from "../compose/title-block.ts";
import { revisionOf, type SheetOptions } from "../options.ts";

/** Kinds of sheet for runs. */
export const RUN_SHEET_KINDS = [
  "purchase-order",
  "run-schedule",
  "run-shortages",
  "run-cost",
  "run-cash",
] as const;
export type RunSheetKind = (typeof RUN_SHEET_KINDS)[number];

/** Letters of a kind in an identification number. */
const LETTERS: Readonly<Record<RunSheetKind, string>> = {
  "purchase-order": "PO",
  "run-schedule": "RS",
  "run-shortages": "SL",
  "run-cost": "RC",
  "run-cash": "MW",
};

/** Stands for the harness in the name of a sheet of runs. */
export const RUN_SHEETS = "runs";

/** Name of a sheet of runs and of its files. @param name run or order; blank: all runs */
export const runSheetName = (kind: RunSheetKind, name: string, language: SheetLanguage): string =>
  `${RUN_SHEETS}.${name === "" ? kind : `${kind}-${name}`}.${language}`;

/** Title block of a sheet of runs. @param title what is shown, a line for each language */
export function runIdentity(
  { machine: { book } }: Pick<LineResult, "machine">,
  kind: RunSheetKind,
  name: string,
  title: string,
  options: SheetOptions,
): Identity {
  const about = book.machine;
  const documentType = say(options.language, (w) => w.runs.kinds[kind]);
  const sheetId = runSheetName(kind, name, options.language);
  const inLine = (text: string): string => text.split("\n").join(" · ");
  return {
    machineId: about.id,
    sheetId,
    fileName: sheetId,
    documentTitle: `${inLine(title)}: ${inLine(documentType)}`,
    owner: about.owner,
    documentType,
    title,
    supplement: label(options.language, { en: about.label, zh: about.label_zh }, about.id),
    number: `${about.id}-${LETTERS[kind]}${name === "" ? "" : `-${name}`}`,
    revision: revisionOf(about, options),
    date: options.date,
    creator: options.creator,
    approved: about.approved,
    state: options.state,
    address: options.address,
    scale: "",
  };
}
