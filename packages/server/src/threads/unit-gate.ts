import { type BookRow, rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import type { Block } from "@pinwright/contract";
import {
  contentsOf,
  foldUnits,
  gateNeeded,
  Line,
  type LineResult,
  type Needed,
  type OpenRecall,
  openRecalls,
  releaseBlocks,
  type UnitState,
} from "@pinwright/engine";
import { cellsOfJson, type TableJson } from "./cells-json.ts";
import type { GateCase, ResultOf, Task } from "./messages.ts";

/** Lines that are kept: of a few machines with their options. */
const KEPT = 3;

/** The line of a book with some options, under a key that is another when anything of it is. */
const lines = new Map<string, LineResult>();
/** Books of which the tests as they were are kept. */
const KEPT_PAST = 50;
/** Tests of books as they were, by book and change. */
const pastTests = new Map<string, readonly BookRow<"tests">[]>();

/** A line that was derived before, or that is derived from the tables; null when there are neither. */
function lineOf({ key, tables, shop, options }: GateCase["lines"][number]): LineResult | null {
  const known = lines.get(key);
  if (known === undefined && tables === null) return null;
  const line = known ?? derived(tables ?? [], shop ?? [], options);
  // Put last: the first one of a map is the one that was asked for longest ago.
  lines.delete(key);
  lines.set(key, line);
  for (const oldest of lines.keys()) {
    if (lines.size <= KEPT) break;
    lines.delete(oldest);
  }
  return line;
}

function derived(
  tables: readonly TableJson[],
  shop: readonly TableJson[],
  options: readonly string[],
): LineResult {
  const { book } = readRawBook(rawBookOf(cellsOfJson(tables)).raw);
  const read = readRawShop(rawShopOf(cellsOfJson(shop)).raw, new Set()).shop;
  return new Line().run(book, read, options.length === 0 ? undefined : new Set(options));
}

function testsOfPast({ key, tables }: GateCase["past"][number]): readonly BookRow<"tests">[] {
  const known = pastTests.get(key);
  if (known !== undefined) return known;
  const { book } = readRawBook(rawBookOf(cellsOfJson(tables)).raw);
  if (pastTests.size >= KEPT_PAST) pastTests.clear();
  pastTests.set(key, book.tables.tests);
  return book.tables.tests;
}

/** A unit as the records and the book have it. */
export interface Judged {
  readonly units: ReadonlyMap<string, UnitState>;
  readonly recalls: readonly OpenRecall[];
  readonly neededOf: (state: UnitState) => Needed;
  /** What keeps the unit and what is inside it, what was lifted included. */
  readonly blocks: readonly Block[];
  /** The line of the unit's book with its options; null: it was begun of no book that is here. */
  readonly line: LineResult | null;
}

const NOTHING: Needed = { steps: [], tests: [], places: [], isUnknown: true };

/**
 * Judges a unit: what it and everything inside it must have behind it, by the line of its book with its own options.
 * Returns the keys of lines whose tables must be given, if any must.
 */
export function judgeUnit(given: GateCase): Judged | { readonly cold: readonly string[] } {
  const byBook = new Map<string, LineResult>();
  const cold: string[] = [];
  for (const asked of given.lines) {
    const line = lineOf(asked);
    if (line === null) cold.push(asked.key);
    else byBook.set(asked.book, line);
  }
  if (cold.length > 0) return { cold };
  const past = new Map(given.past.map((one) => [`${one.book} ${one.revision}`, testsOfPast(one)]));
  const units = foldUnits(given.facts);
  const recalls = openRecalls(given.recalls);
  const needed = new Map<string, Needed>();
  const neededOf = (state: UnitState): Needed => {
    const known = needed.get(state.unit);
    if (known !== undefined) return known;
    const line = byBook.get(state.begun?.book ?? "");
    const tests = past.get(`${state.begun?.book} ${state.begun?.revision}`) ?? null;
    const made = line === undefined ? NOTHING : gateNeeded(line, state, tests);
    needed.set(state.unit, made);
    return made;
  };
  const ids = [given.unit, ...contentsOf(units, given.unit)];
  const blocks = releaseBlocks(units, ids, neededOf, recalls, given.unit);
  const line = byBook.get(units.get(given.unit)?.begun?.book ?? "") ?? null;
  return { units, recalls, neededOf, blocks, line };
}

/** Judges a unit for whoever only wants to know what keeps it. */
export function unitGate({ given }: Extract<Task, { kind: "gate" }>): ResultOf<"gate"> {
  const judged = judgeUnit(given);
  return "cold" in judged ? { cold: [...judged.cold], blocks: [] } : { cold: [], blocks: [...judged.blocks] };
}
