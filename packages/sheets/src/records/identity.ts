import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";
import type { Identity } from "../compose/title-block.ts";
import { revisionOf, type SheetOptions } from "../options.ts";

/** Kinds of sheet of the floor's records. */
type RecordSheetKind = "unit-labels" | "test-certificate" | "crate-checklist" | "transport-list";

/** Letters of a kind in an identification number. */
const LETTERS: Readonly<Record<RecordSheetKind, string>> = {
  "unit-labels": "UL",
  "test-certificate": "TC",
  "crate-checklist": "CC",
  "transport-list": "TL",
};

interface RecordSheet {
  readonly kind: RecordSheetKind;
  /** Unit or transport; blank: several. */
  readonly name: string;
  /** What is shown, a line for each language. */
  readonly title: string;
  /** Revision that the unit was built to; absent: the book's. */
  readonly revision?: string;
}

/** Name of a sheet of records, and of its files. */
const recordSheetName = (kind: RecordSheetKind, name: string, language: SheetLanguage): string =>
  `records.${name === "" ? kind : `${kind}-${name}`}.${language}`;

/** Title block of a sheet of records. */
export function recordIdentity(
  line: Pick<LineResult, "machine">,
  sheet: RecordSheet,
  options: SheetOptions,
): Identity {
  const { kind, name, title } = sheet;
  const about = line.machine.book.machine;
  const documentType = say(options.language, (w) => w.records.kinds[kind]);
  const sheetId = recordSheetName(kind, name, options.language);
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
    revision: sheet.revision ?? revisionOf(about, options),
    date: options.date,
    creator: options.creator,
    approved: about.approved,
    state: options.state,
    address: options.address,
    scale: "",
  };
}
