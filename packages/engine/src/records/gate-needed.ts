import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { appliesTo, type LineResult } from "../model/index.ts";
import { neededFor, testsOf } from "./needed.ts";
import { isFirm, type Needed, type Taken, type UnitState } from "./units/index.ts";

type TestRow = BookRow<"tests">;

/** Mending these pulls contacts out and puts them back: one that is not latched passes continuity. */
export const PULLING_DEFECTS: ReadonlySet<string> = new Set([
  ...["contact-out", "wrong-cavity", "swapped", "missing-wire", "open", "short"],
]);

/** Node of the bill that holds the contents of a unit. */
function nodeOf(what: string, type: string): string {
  return what === "machine" ? "machine" : `${what}:${type}`;
}

/**
 * Parts that are in a unit by the book, through all levels: part numbers. Boards and harnesses in a machine are units of
 * their own, and what is in them is in them.
 */
function partsIn(line: LineResult, what: string, type: string): ReadonlySet<string> {
  const { nodes, lines } = line.parts.bill;
  const contents = new Map<string, string[]>();
  for (const { parentId, childId } of lines) {
    const own = contents.get(parentId);
    if (own === undefined) contents.set(parentId, [childId]);
    else own.push(childId);
  }
  const root = nodeOf(what, type);
  const seen = new Set([root]);
  const parts = new Set<string>();
  for (const id of seen) {
    const node = nodes.get(id);
    const isUnit = node?.kind === "board" || node?.kind === "harness";
    if (isUnit && id !== root) continue;
    if (node?.partId !== null && node?.partId !== undefined) parts.add(node.partId);
    for (const child of contents.get(id) ?? []) seen.add(child);
  }
  return parts;
}

/** Parts that the book allows instead of others, with the options of the line. */
function allowedInstead({ machine: { book, options } }: LineResult): ReadonlySet<string> {
  const rows = book.tables.alternates.filter((row) => appliesTo(row, options));
  return new Set(rows.map(({ part, instead }) => `${part} ${instead}`));
}

/** Whether the book still has what a unit was begun as. */
function isKnown(line: LineResult, what: string, type: string): boolean {
  const { tables } = line.machine.book;
  switch (what) {
    case "board":
      return tables.board_types.some(({ id }) => id === type);
    case "harness":
      return line.harnesses.has(type);
    case "mechanism":
      return tables.mechanism_types.some(({ id }) => id === type);
    default:
      return true;
  }
}

const withTests = (line: LineResult, tests: readonly TestRow[]): LineResult => {
  const { machine } = line;
  const { book } = machine;
  return { ...line, machine: { ...machine, book: { ...book, tables: { ...book.tables, tests } } } };
};

/**
 * Tests that protect people and that the book had when the unit was begun, but has no more, or has for another purpose:
 * nobody edits them away. One that a new test of the same purpose took the place of is not asked again.
 */
function keptTests(now: Needed["tests"], past: readonly TestRow[]): readonly TestRow[] {
  const firmNow = new Set(now.filter(isFirm).map(({ id }) => id));
  const pastIds = new Set(past.map(({ id }) => id));
  const purposes = [...new Set(past.filter(isFirm).map(({ purpose }) => purpose))];
  return purposes.flatMap((purpose) => {
    const gone = past.filter((test) => test.purpose === purpose && !firmNow.has(test.id));
    const added = now.filter((test) => test.purpose === purpose && !pastIds.has(test.id));
    return gone.slice(0, Math.max(0, gone.length - added.length));
  });
}

/** Tests of a unit as the book has them now, and those that protect people as it had them when the unit was begun. */
function testsFor(
  line: LineResult,
  tests: Needed["tests"],
  what: string,
  type: string,
  past: readonly TestRow[] | null,
): Needed["tests"] {
  if (past === null) return tests;
  const kept = new Map(
    keptTests(tests, testsOf(withTests(line, past), what, type)).map((test) => [test.id, test]),
  );
  const known = new Set(tests.map(({ id }) => id));
  return [
    // The limits are those of the design now; only the purpose stays.
    ...tests.map((test) => ({ ...test, purpose: kept.get(test.id)?.purpose ?? test.purpose })),
    ...[...kept.values()].filter(({ id }) => !known.has(id)),
  ];
}

/** What the places of a machine take. */
function takenAt(line: LineResult, past: readonly TestRow[] | null): ReadonlyMap<string, Taken> {
  const firmOf = (what: string, type: string): boolean =>
    testsFor(line, testsOf(line, what, type), what, type, past).some(isFirm);
  const boards = [...line.machine.items.values()].flatMap((item) =>
    item.kind === "board" ? [[item.id, item.type.id, "board"] as const] : [],
  );
  const harnesses = [...line.harnesses.keys()].map((id) => [id, id, "harness"] as const);
  return new Map(
    [...boards, ...harnesses]
      .sort(([a], [b]) => compareText(a, b))
      .map(([place, type, what]) => [place, { type, firm: firmOf(what, type) }]),
  );
}

/**
 * What a unit must have behind it before it may ship, as the release judges it: what `neededFor` says, what each place
 * takes, which parts are in it, and the tests that protect people as they were when the unit was begun.
 * @param line the line with the options of the unit
 * @param past the tests of the book when the unit was begun; null: nobody knows
 */
export function gateNeeded(line: LineResult, state: UnitState, past: readonly TestRow[] | null): Needed {
  const needed = neededFor(line, state);
  const { begun } = state;
  if (begun === null) return needed;
  const { what, type } = begun;
  return {
    ...needed,
    tests: testsFor(line, needed.tests, what, type, past),
    ...(what === "harness" ? { again: new Map([["tug", PULLING_DEFECTS]]) } : {}),
    ...(what === "machine" ? { takes: takenAt(line, past) } : {}),
    parts: partsIn(line, what, type),
    alternates: allowedInstead(line),
    isUnknown: !isKnown(line, what, type),
  };
}
