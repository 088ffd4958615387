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

/** Everything that is composed of a machine: what tells whether a sheet is another, and what is written on it. */
export interface Composed {
  readonly facts: readonly SheetFact[];
  /** All texts of each sheet by its id, in the order of reading, joined by a space. */
  readonly texts: Readonly<Record<string, string>>;
}

/** Composes every sheet and the service book, in English. */
export function compose(line: LineResult): Composed {
  const options = { ...USUAL_OPTIONS, date: line.machine.book.machine.date };
  const facts: SheetFact[] = [];
  const texts: Record<string, string> = {};
  const add = (of: string, kind: string, document: SheetDocument): void => {
    const fact = sheetFactOf(of, kind, document);
    facts.push(fact);
    texts[fact.id] = document.pages.flatMap((page) => pageTexts(page).map(({ text }) => text)).join(" ");
  };
  for (const { of, kind, document } of composeSheets(line, options, { kinds: [], harnessIds: [] }))
    add(of, kind, document);
  const { date } = options;
  add(
    MACHINE_SHEETS,
    "service-book",
    composeServiceBook(line, { ...USUAL_OPTIONS, language: "en", date, unit: null }),
  );
  return { facts, texts };
}

const isComposed = (value: unknown): value is Composed =>
  typeof value === "object" && value !== null && "facts" in value && "texts" in value;

/**
 * What was composed under a name before in the same folder, else composed now and kept there: so several programs can compose
 * beside each other, and what is said can be looked at again without composing. The folder is of one state of the program.
 */
export function composedOnce(folder: string, name: string, make: () => Composed): Composed {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${name}.json`);
  if (existsSync(path)) {
    const kept: unknown = JSON.parse(readFileSync(path, "utf8"));
    if (isComposed(kept)) return kept;
  }
  const made = make();
  writeFileSync(path, JSON.stringify(made));
  return made;
}
