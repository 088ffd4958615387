import type { LineResult, Needed, OpenRecall, Source, UnitState } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";
import type { SheetOptions } from "../options.ts";

/** What sheets of the floor's records are made from. */
export interface RecordSheetInput {
  /** Line of the book that the unit was built to, with the unit's own options. */
  readonly line: LineResult;
  readonly units: ReadonlyMap<string, UnitState>;
  readonly options: SheetOptions;
  /** Names of people by their ids; who is not in it stands by the id. */
  readonly people?: ReadonlyMap<string, string>;
}

/** The last record of a stream: what stands for all before it. */
export interface StreamHead {
  readonly stream: string;
  readonly seq: number;
  /** SHA-256 in hexadecimal. */
  readonly hash: string;
}

/** What a certificate is made from besides. */
export interface CertificateInput extends RecordSheetInput {
  readonly heads: readonly StreamHead[];
  readonly recalls: readonly OpenRecall[];
  /** What each unit must have behind it; absent: what the line says. */
  readonly neededOf?: (state: UnitState) => Needed;
}

/** Words in the languages of the sheet, in one line. */
export type Words = (choose: Parameters<typeof say>[1]) => string;
export const wordsOf =
  ({ language }: SheetOptions): Words =>
  (choose) =>
    say(language, choose, " · ");

/** Words over a column, a line for each language: columns are narrow. */
export const headsOf =
  ({ language }: SheetOptions): Words =>
  (choose) =>
    say(language, choose);

/** `2027-01-04 08:03`: an instant in UTC to the minute. */
export const minuteText = (at: string): string => at.slice(0, 16).replace("T", " ");

export const personText = ({ people }: RecordSheetInput, person: string): string =>
  people?.get(person) ?? person;

/** Room for an instant under a name: it is not broken. */
export const SOURCE_MM = 25;

/** Who wrote a record, and under it when. */
export const sourceText = (input: RecordSheetInput, { person, at }: Source): string =>
  `${personText(input, person)}\n${minuteText(at)}`;

interface Named {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
}

const named = (rows: readonly Named[], id: string, language: SheetLanguage, joint: string): string => {
  const row = rows.find((one) => one.id === id);
  return row === undefined ? id : label(language, { en: row.label, zh: row.label_zh }, id, joint);
};

/** Name of a part in the languages of the sheet. */
export const partText = ({ line, options }: RecordSheetInput, partId: string): string =>
  named(line.machine.book.tables.parts, partId, options.language, " · ");

/** Name of a step, or of a test that is a row of the book. */
export const workText = ({ line, options }: RecordSheetInput, kind: "steps" | "tests", id: string): string =>
  named(line.machine.book.tables[kind], id, options.language, " · ");

/** Name of a site. */
export const siteText = ({ line, options }: RecordSheetInput, siteId: string): string =>
  siteId === ""
    ? say(options.language, (w) => w.records.transport.unknownSite, " · ")
    : named(line.machine.shop.tables.sites, siteId, options.language, " · ");

/** Name of an option. */
export const optionText = ({ line, options }: RecordSheetInput, optionId: string): string =>
  named(line.machine.book.tables.options, optionId, options.language, " · ");

/** Name of what a unit is: its machine, board type, harness or mechanism type. */
export function typeText(
  { line, options }: Pick<RecordSheetInput, "line" | "options">,
  { begun }: UnitState,
  joint = " · ",
): string {
  const { language } = options;
  if (begun === null) return say(language, (w) => w.records.unknownUnit, joint);
  const { machine, tables } = line.machine.book;
  switch (begun.what) {
    case "machine":
      return label(language, { en: machine.label, zh: machine.label_zh }, begun.type, joint);
    case "board":
      return named(tables.board_types, begun.type, language, joint);
    case "harness":
      return named(tables.harnesses, begun.type, language, joint);
    case "mechanism":
      return named(tables.mechanism_types, begun.type, language, joint);
  }
}

/** `Board`: what a unit is. */
export const kindText = ({ begun }: UnitState, options: SheetOptions, joint = " · "): string =>
  begun === null ? "" : say(options.language, (w) => w.records.units[begun.what], joint);
