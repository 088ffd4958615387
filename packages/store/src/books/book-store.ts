import type { Database } from "../database/database.ts";
import type { BookStore, StoreOptions } from "../store.ts";
import { bookHistory } from "./book-history.ts";
import { readTables } from "./book-rows.ts";
import { bookWriter } from "./book-writer.ts";
import { ChangeQueue } from "./change-queue.ts";
import { bookInfo, findBook } from "./heads.ts";
import { addBook } from "./new-book.ts";
import { addSnapshot, listSnapshots, snapshotTables } from "./snapshots.ts";

const NOT_FOUND = { refused: "not-found" } as const;

/** The books of a store. */
export function bookStore(database: Database, { now, newId }: StoreOptions): BookStore {
  const { db, read, write } = database;
  return {
    async list() {
      const rows = await db.selectFrom("books").selectAll().orderBy("id").execute();
      return rows.map(bookInfo);
    },
    async info(book) {
      const row = await findBook(db, book);
      return row ? bookInfo(row) : null;
    },
    add: (rows, actor) => write((held) => addBook(held, rows, { actor, at: now(), setId: newId() })),
    setArchived: (book, archived) =>
      write(async (held) => {
        const row = await held
          .updateTable("books")
          .set({ archived: archived ? 1 : 0 })
          .where("id", "=", book)
          .returningAll()
          .executeTakeFirst();
        return row ? { done: bookInfo(row) } : NOT_FOUND;
      }),
    rows: (book) =>
      read(async (held) => {
        const row = await findBook(held, book);
        if (row === undefined) return NOT_FOUND;
        return { done: { info: bookInfo(row), tables: await readTables(held, book) } };
      }),
    ...bookWriter(database, new ChangeQueue(database, now), now),
    ...bookHistory(database),
    snapshots: (book) => listSnapshots(db, book),
    addSnapshot: (book, name, actor) => addSnapshot(database, book, { id: newId(), name, at: now(), actor }),
    snapshotRows: (book, snapshot) => snapshotTables(db, book, snapshot),
  };
}
