import type { Database } from "../database/database.ts";
import { comparable } from "../database/number.ts";
import type { BookStore, Outcome } from "../store.ts";
import { changeHead, changeSet, findBook, HEAD_COLUMNS, SET_COLUMNS } from "./heads.ts";

const NOT_FOUND = { refused: "not-found" } as const;

/** Most cells in the sets that are given at once; a larger set comes alone. */
const CELLS_AT_ONCE = 100_000;

/** What the cell of a row begins with in the JSON of a set. */
const begun = (table: string, row: string): string => JSON.stringify([table, row]).slice(0, -1);

/** A wildcard of `like` matches itself too; what it matches besides is sorted out afterwards. */
const escaped = (text: string): string => text.replaceAll("\\", "_");

/** What was done to a book. */
export function bookHistory({
  db,
}: Database): Pick<BookStore, "since" | "history" | "changeSet" | "rowChanges"> {
  /** A list, or that there is no such book: every book has its first set, so only an empty list needs the question. */
  const listed = async <T>(book: string, list: readonly T[]): Promise<Outcome<readonly T[]>> =>
    list.length === 0 && (await findBook(db, book)) === undefined ? NOT_FOUND : { done: list };

  return {
    async since(book, no, limit) {
      const next = await db
        .selectFrom("change_sets")
        .select(["no", "cells"])
        .where("book", "=", book)
        .where("no", ">", comparable(no))
        .orderBy("no")
        .limit(comparable(limit))
        .execute();
      let cells = 0;
      const wanted = next.filter((set, index) => {
        cells += set.cells;
        return index === 0 || cells <= CELLS_AT_ONCE;
      });
      const last = wanted.at(-1)?.no ?? 0;
      const rows = await db
        .selectFrom("change_sets")
        .select(SET_COLUMNS)
        .where("book", "=", book)
        .where("no", ">", comparable(no))
        .where("no", "<=", last)
        .orderBy("no")
        .execute();
      return listed(book, rows.map(changeSet));
    },
    async history(book, before, limit) {
      const rows = await db
        .selectFrom("change_sets")
        .select(HEAD_COLUMNS)
        .where("book", "=", book)
        .where("no", "<", comparable(before))
        .orderBy("no", "desc")
        .limit(comparable(limit))
        .execute();
      return listed(book, rows.map(changeHead));
    },
    async rowChanges(book, rows, limit) {
      const wanted = new Set(rows.map(({ table, row }) => begun(table, row)));
      if (wanted.size === 0) return listed(book, []);
      const sets = await db
        .selectFrom("change_sets")
        .select(SET_COLUMNS)
        .where("book", "=", book)
        .where((row) => row.or([...wanted].map((id) => row("changes", "like", `%${escaped(id)}%`))))
        .orderBy("no", "desc")
        .limit(comparable(limit))
        .execute();
      const found = sets.map(changeSet).map((set) => ({
        ...set,
        changes: set.changes.filter(({ table, row }) => wanted.has(begun(table, row))),
      }));
      return listed(
        book,
        found.filter(({ changes }) => changes.length > 0),
      );
    },
    async changeSet(book, no) {
      const row = await db
        .selectFrom("change_sets")
        .select(SET_COLUMNS)
        .where("book", "=", book)
        .where("no", "=", comparable(no))
        .executeTakeFirst();
      return row ? { done: changeSet(row) } : NOT_FOUND;
    },
  };
}
