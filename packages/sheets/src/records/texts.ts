import type { Block, LineResult, Source, UnitState } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";
import type { SheetOptions } from "../options.ts";

/** What sheets of the floor's records are made from. */
export interface RecordSheetInput {
  /** The machine of the book that the unit was built to, with the unit's own options. */
  readonly line: Pick<LineResult, "machine">;
  /** Name under which that book is kept: what was begun of another one is told by its type alone. */
  readonly bookId: string;
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

/** What is made from the gate as well: it says whether the unit may ship. */
export interface GateSheetInput extends RecordSheetInput {
  readonly line: LineResult;
  /** All that keeps the unit and what is inside it from being released, what was lifted included. */
  readonly blocks: readonly Block[];
}

/** What an instrument is called, and how long it may be trusted. */
interface InstrumentText {
  readonly label: string;
  readonly label_zh: string;
  /** Last day of its calibration as year-month-day; blank: it needs none. */
  readonly calibratedUntil: string;
}

/** What a certificate is made from besides. */
export interface CertificateInput extends GateSheetInput {
  readonly heads: readonly StreamHead[];
  /** Instruments of the shop by id; one that is not in it is told as such. */
  readonly instruments: ReadonlyMap<string, InstrumentText>;
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

/** A name and under it the id, or the id alone where it has no name. */
export const overId = (name: string, id: string): string => (name === id ? id : `${name}\n${id}`);

/** Minutes to a tenth. */
export const minutesText = (minutes: number): string => String(Math.round(minutes * 10) / 10);

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

export type UnitKind = NonNullable<UnitState["begun"]>["what"];

/** Name of a machine, board type, harness or mechanism type; of another book than the line's its id alone. */
export function nameOfType(
  { line, bookId, options: { language } }: Pick<RecordSheetInput, "line" | "bookId" | "options">,
  { what, type, book }: { readonly what: UnitKind; readonly type: string; readonly book: string },
  joint = " · ",
): string {
  if (book !== bookId) return type;
  const { machine, tables } = line.machine.book;
  switch (what) {
    case "machine":
      return label(language, { en: machine.label, zh: machine.label_zh }, type, joint);
    case "board":
      return named(tables.board_types, type, language, joint);
    case "harness":
      return named(tables.harnesses, type, language, joint);
    case "mechanism":
      return named(tables.mechanism_types, type, language, joint);
  }
}

/** Name of what a unit is. */
export const typeText = (
  input: Pick<RecordSheetInput, "line" | "bookId" | "options">,
  { begun }: UnitState,
): string =>
  begun === null
    ? say(input.options.language, (w) => w.records.unknownUnit, " · ")
    : nameOfType(input, begun);

/** Options that a machine is built with: its own, or where it names none the usual ones of the line. */
export const optionsOf = (
  { line, bookId }: Pick<RecordSheetInput, "line" | "bookId">,
  { begun }: UnitState,
): readonly string[] => {
  if (begun === null || begun.options.length > 0) return begun?.options ?? [];
  return begun.what === "machine" && begun.book === bookId ? [...line.machine.options] : [];
};

/** `Board`: what a unit is. */
export const kindText = ({ begun }: UnitState, options: SheetOptions, joint = " · "): string =>
  begun === null ? "" : say(options.language, (w) => w.records.units[begun.what], joint);
