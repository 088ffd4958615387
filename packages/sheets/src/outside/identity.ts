import type { Machine } from "@pinwright/engine";
import { label } from "../compose/say.ts";
import type { Identity } from "../compose/title-block.ts";
import { revisionOf, type SheetOptions } from "../options.ts";

/** A sheet for work that is made outside. */
export interface OutsideSheet {
  /** Name of the sheet and of its files, without the language. */
  readonly name: string;
  readonly number: string;
  /** A line for each language. */
  readonly documentType: string;
  readonly title: string;
  /** Revision of the part; absent: the machine's. */
  readonly revision?: string;
}

/** Title block of a sheet for work that is made outside. */
export function outsideIdentity(machine: Machine, sheet: OutsideSheet, options: SheetOptions): Identity {
  const about = machine.book.machine;
  const sheetId = `outside.${sheet.name}.${options.language}`;
  const inLine = (text: string): string => text.split("\n").join(" · ");
  return {
    machineId: about.id,
    sheetId,
    fileName: sheetId,
    documentTitle: `${inLine(sheet.title)}: ${inLine(sheet.documentType)}`,
    owner: about.owner,
    documentType: sheet.documentType,
    title: sheet.title,
    supplement: label(options.language, { en: about.label, zh: about.label_zh }, about.id),
    number: `${about.id}-${sheet.number}`,
    revision: sheet.revision ?? revisionOf(about, options),
    date: options.date,
    creator: options.creator,
    approved: about.approved,
    state: options.state,
    address: options.address,
    scale: "",
  };
}
