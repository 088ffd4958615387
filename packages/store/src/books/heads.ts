import type { BookInfo, ChangeHead, ChangeSet } from "@pinwright/contract";
import type { Kysely, Selectable } from "kysely";
import type { Tables } from "../database/schema.ts";
import { readChanges } from "./cells-json.ts";

export type BookRow = Selectable<Tables["books"]>;
type ChangeSetRow = Selectable<Tables["change_sets"]>;

export const bookInfo = (row: BookRow): BookInfo => ({
  id: row.id,
  kind: row.kind,
  label: row.label,
  labelZh: row.label_zh,
  changeNo: row.change_no,
  createdAt: row.created_at,
  changedAt: row.changed_at,
  archived: row.archived === 1,
});

/** Columns of a set without its cells. */
export const HEAD_COLUMNS = [
  "no",
  "id",
  "kind",
  "person",
  "person_name",
  "at",
  "note",
  "reverses",
  "undone_by",
  "cells",
] as const satisfies readonly (keyof ChangeSetRow)[];

export const SET_COLUMNS = [...HEAD_COLUMNS, "changes"] as const;

export const changeHead = (row: Pick<ChangeSetRow, (typeof HEAD_COLUMNS)[number]>): ChangeHead => ({
  no: row.no,
  id: row.id,
  kind: row.kind,
  person: row.person,
  personName: row.person_name,
  at: row.at,
  note: row.note,
  reverses: row.reverses,
  undoneBy: row.undone_by,
  cells: row.cells,
});

export const changeSet = (row: Pick<ChangeSetRow, (typeof SET_COLUMNS)[number]>): ChangeSet => ({
  ...changeHead(row),
  changes: readChanges(row.changes),
});

/** A book's own row; undefined when there is no such book. */
export const findBook = (db: Kysely<Tables>, book: string): Promise<BookRow | undefined> =>
  db.selectFrom("books").selectAll().where("id", "=", book).executeTakeFirst();

/** The set that was made for a request; undefined when there was none. */
export async function setOfRequest(
  db: Kysely<Tables>,
  book: string,
  id: string,
): Promise<ChangeSet | undefined> {
  const row = await db
    .selectFrom("change_sets")
    .select(SET_COLUMNS)
    .where("book", "=", book)
    .where("id", "=", id)
    .executeTakeFirst();
  return row && changeSet(row);
}
