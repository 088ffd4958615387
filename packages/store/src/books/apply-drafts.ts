import { applyChanges, type CellChange, type CellTables, MACHINE_TABLE } from "@pinwright/book";
import type { ChangeKind, ChangeSet } from "@pinwright/contract";
import type { Kysely } from "kysely";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import type { Actor, Outcome } from "../store.ts";
import { readRows, writeRows } from "./book-rows.ts";
import { changesJson } from "./cells-json.ts";
import { type Blamed, blame, conflictRefusal } from "./conflicts.ts";
import type { BookRow } from "./heads.ts";
import { labelsOf } from "./label.ts";
import { LastChanges } from "./last-changes.ts";

/** A set of changes that has no number yet. */
export interface Draft {
  readonly id: string;
  readonly kind: ChangeKind;
  readonly note: string;
  /** Number of the set that this one takes back or makes again. */
  readonly reverses: number | null;
  readonly changes: readonly CellChange[];
  readonly actor: Actor;
}

const SETS_AT_ONCE = 50;

/**
 * Makes change sets of drafts, one after the other, in a transaction that holds the book's row. Each is made whole
 * or refused with its conflicts; a refused one does not stand in the way of the next.
 */
export async function applyDrafts(
  db: Kysely<Tables>,
  book: BookRow,
  drafts: readonly Draft[],
  at: string,
): Promise<readonly Outcome<ChangeSet>[]> {
  const before = await readRows(
    db,
    book.id,
    drafts.flatMap((draft) => draft.changes),
  );
  let tables: CellTables = before.tables;
  const last = new LastChanges(before.changedIn);
  const sets: ChangeSet[] = [];
  const results = drafts.map((draft): ChangeSet | readonly Blamed[] => {
    const applied = applyChanges(tables, draft.changes);
    if (applied.tables === null) {
      const now = tables;
      return applied.conflicts.map((conflict) => blame(conflict, now, (table, row) => last.of(table, row)));
    }
    tables = applied.tables;
    const set = numbered(draft, book.change_no + sets.length + 1, at);
    for (const change of draft.changes) last.set(change, set.no);
    sets.push(set);
    return set;
  });
  if (sets.length > 0) {
    await writeRows(db, book.id, last.changed(tables));
    await writeSets(db, book.id, sets);
    await writeBook(db, book, sets, tables);
  }
  const outcomes: Outcome<ChangeSet>[] = [];
  for (const result of results) {
    outcomes.push("id" in result ? { done: result } : await conflictRefusal(db, book.id, result));
  }
  return outcomes;
}

/** As `applyDrafts`, for one. */
export async function applyDraft(
  db: Kysely<Tables>,
  book: BookRow,
  draft: Draft,
  at: string,
): Promise<Outcome<ChangeSet>> {
  const [outcome] = await applyDrafts(db, book, [draft], at);
  if (outcome === undefined) throw new RangeError("A draft has an outcome.");
  return outcome;
}

const numbered = (
  { id, kind, note, reverses, changes, actor }: Draft,
  no: number,
  at: string,
): ChangeSet => ({
  no,
  id,
  kind,
  person: actor.personId,
  personName: actor.personName,
  at,
  note,
  reverses,
  undoneBy: null,
  cells: changes.length,
  changes: [...changes],
});

async function writeSets(db: Kysely<Tables>, book: string, sets: readonly ChangeSet[]): Promise<void> {
  for (const some of inChunks(sets, SETS_AT_ONCE)) {
    await db
      .insertInto("change_sets")
      .values(
        some.map((set) => ({
          book,
          no: set.no,
          id: set.id,
          kind: set.kind,
          person: set.person,
          person_name: set.personName,
          at: set.at,
          note: set.note,
          reverses: set.reverses,
          undone_by: set.undoneBy,
          cells: set.cells,
          changes: changesJson(set.changes),
        })),
      )
      .execute();
  }
  for (const { no, reverses } of sets) {
    if (reverses === null) continue;
    await db
      .updateTable("change_sets")
      .set({ undone_by: no })
      .where("book", "=", book)
      .where("no", "=", reverses)
      .execute();
  }
}

/** Moves the book's counter on, and says its new label if that was changed. */
async function writeBook(
  db: Kysely<Tables>,
  book: BookRow,
  sets: readonly ChangeSet[],
  tables: CellTables,
): Promise<void> {
  const renamed = sets.some((set) => set.changes.some((change) => change.table === MACHINE_TABLE));
  const [last] = sets.slice(-1);
  await db
    .updateTable("books")
    .set({
      change_no: last?.no ?? book.change_no,
      changed_at: last?.at ?? book.changed_at,
      ...(renamed ? labelsOf(tables, book.id) : {}),
    })
    .where("id", "=", book.id)
    .execute();
}
