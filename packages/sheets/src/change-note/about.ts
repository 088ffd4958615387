import { draftAfter, type SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";
import type { Identity } from "../compose/title-block.ts";
import type { SheetOptions } from "../options.ts";

/** A text in both languages of the sheets; Chinese may be blank. */
export interface Labels {
  readonly en: string;
  readonly zh: string;
}

/** The machine that changes, and between which of its revisions. */
export interface ChangeAbout {
  readonly machine: {
    readonly id: string;
    readonly labels: Labels;
    readonly owner: string;
    readonly approved: string;
  };
  /** Name of the revision before. */
  readonly from: string;
  /** Name of the revision after; null: the draft. */
  readonly to: string | null;
}

/** `From revision A to B`, a line for each language. */
export const fromToText = (about: ChangeAbout, language: SheetLanguage): string =>
  say(language, (w) => w.change.fromTo(about.from, about.to ?? w.change.draft("")));

/** Name of a sheet of a change, and of its files. */
const changeSheetName = (
  kind: "change-note" | "retrofit-kit",
  { from, to }: Pick<ChangeAbout, "from" | "to">,
  language: SheetLanguage,
): string => `machine.${kind}-${from}-${to ?? "draft"}.${language}`;

/** Title block of a sheet of a change. It is of the revision after. */
export function changeIdentity(
  about: ChangeAbout,
  kind: "change-note" | "retrofit-kit",
  options: SheetOptions,
): Identity {
  const { machine } = about;
  const { language } = options;
  const sheetId = changeSheetName(kind, about, language);
  const documentType = say(language, (w) => w.change[kind === "change-note" ? "note" : "kit"].title);
  const title = fromToText(about, language);
  return {
    machineId: machine.id,
    sheetId,
    fileName: sheetId,
    documentTitle: `${documentType.split("\n").join(" · ")}: ${title.split("\n").join(" · ")}`,
    owner: machine.owner,
    documentType,
    title,
    supplement: label(language, machine.labels, machine.id),
    number: `${machine.id}-${kind === "change-note" ? "CN" : "RK"}-${about.from}-${about.to ?? "X"}`,
    revision: about.to ?? draftAfter(about.from),
    date: options.date,
    creator: options.creator,
    approved: machine.approved,
    state: about.to === null ? "draft" : "released",
    address: options.address,
    scale: "",
  };
}
