import { applyChanges, type CellChange, type CellTables } from "@pinwright/book";
import type { ChangeSet } from "@pinwright/contract";
import type { NewChangeSet, Outcome, Store } from "../store.ts";

/** Tables written as plain objects: table, row, column, text. */
export type PlainTables = Readonly<
  Record<string, Readonly<Record<string, Readonly<Record<string, string>>>>>
>;

export const tablesOf = (plain: PlainTables): CellTables =>
  new Map(
    Object.entries(plain).map(([table, rows]) => [
      table,
      new Map(Object.entries(rows).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );

/** Tables as sorted plain objects without empty ones, to compare. */
export const plain = (tables: CellTables): PlainTables =>
  Object.fromEntries(
    [...tables]
      .filter(([, rows]) => rows.size > 0)
      .map(([table, rows]) => [
        table,
        Object.fromEntries([...rows].map(([row, cells]) => [row, Object.fromEntries(cells)])),
      ]),
  );

/** `table row column: from > to`, quick to write; a blank is `-`. */
export const cell = (table: string, row: string, column: string, from: string, to: string): CellChange => ({
  table,
  row,
  column,
  from,
  to,
});

export const edit = (id: string, ...changes: readonly CellChange[]): NewChangeSet => ({
  id,
  kind: "edit",
  note: "",
  changes,
});

/** What was done; throws when it was refused. */
export function done<T>(outcome: Outcome<T>): T {
  if ("refused" in outcome) throw new Error(`refused: ${JSON.stringify(outcome)}`);
  return outcome.done;
}

/** All change sets of a book, first first. */
export async function allSets(store: Store, book: string): Promise<readonly ChangeSet[]> {
  const sets: ChangeSet[] = [];
  for (;;) {
    const more = done(await store.books.since(book, sets.length, 500));
    if (more.length === 0) return sets;
    sets.push(...more);
  }
}

/** The book that the change sets make from nothing. */
export function replay(sets: readonly ChangeSet[]): CellTables {
  let tables: CellTables = new Map();
  for (const { no, changes } of sets) {
    const applied = applyChanges(tables, changes);
    if (applied.tables === null) throw new Error(`change set ${no} does not follow from those before it`);
    tables = applied.tables;
  }
  return tables;
}
