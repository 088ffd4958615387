import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { LineResult, SheetFact } from "../../packages/engine/src/index.ts";
import {
  composeServiceBook,
  composeSheets,
  MACHINE_SHEETS,
  pageTexts,
  type SheetDocument,
  sheetFactOf,
  USUAL_OPTIONS,
} from "../../packages/sheets/src/index.ts";

/** What tells of every sheet of a machine whether it is another, and what is written on it. */
export interface Composed {
  readonly facts: readonly SheetFact[];
  /** All texts of each sheet by its id, in the order of reading, joined by a space; none where nobody asked for them. */
  readonly texts: Readonly<Record<string, string>>;
}

/** Composes every sheet, in English. */
export function compose(line: LineResult, withTexts: boolean): Composed {
  const facts: SheetFact[] = [];
  const texts: Record<string, string> = {};
  for (const { of, kind, document } of composeSheets(line, optionsOf(line), { kinds: [], harnessIds: [] })) {
    const fact = sheetFactOf(of, kind, document);
    facts.push(fact);
    if (withTexts) texts[fact.id] = textOf(document);
  }
  return { facts, texts };
}

/** Composes the service book, in English. */
export function composeBook(line: LineResult): SheetFact {
  const document = composeServiceBook(line, { ...optionsOf(line), language: "en", unit: null });
  return sheetFactOf(MACHINE_SHEETS, "service-book", document);
}

const optionsOf = (line: LineResult) => ({ ...USUAL_OPTIONS, date: line.machine.book.machine.date });

const textOf = (document: SheetDocument): string =>
  document.pages.flatMap((page) => pageTexts(page).map(({ text }) => text)).join(" ");

const isComposed = (value: unknown): value is Composed =>
  typeof value === "object" && value !== null && "facts" in value && "texts" in value;

/**
 * What was composed under a name before in the same folder, else composed now and kept there: so several programs can compose
 * beside each other, one that was stopped can go on, and what is said can be looked at again without composing. The folder is
 * of one state of the program.
 * @param make null: only what was kept; null is then given where nothing was
 */
export function composedOnce(folder: string, name: string, make: () => Composed): Composed;
export function composedOnce(folder: string, name: string, make: (() => Composed) | null): Composed | null;
export function composedOnce(folder: string, name: string, make: (() => Composed) | null): Composed | null {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${name}.json`);
  if (existsSync(path)) {
    const kept: unknown = JSON.parse(readFileSync(path, "utf8"));
    if (isComposed(kept)) return kept;
  }
  if (make === null) return null;
  const made = make();
  writeFileSync(path, JSON.stringify(made));
  return made;
}
