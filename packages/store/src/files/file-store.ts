import { createHash } from "node:crypto";
import type { BookFile } from "@pinwright/contract";
import type { Kysely, Selectable } from "kysely";
import { findBook } from "../books/heads.ts";
import { mustBeKeepable } from "../books/keepable.ts";
import { lockBook } from "../books/lock.ts";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import { StoreError } from "../error.ts";
import type { FileStore, NewFile, Outcome } from "../store.ts";

type FileRow = Selectable<Tables["book_files"]> & Pick<Selectable<Tables["file_bodies"]>, "size">;

const NOT_FOUND = { refused: "not-found" } as const;

const bookFile = (row: FileRow): BookFile => ({
  name: row.name,
  bytes: row.size,
  sha256: row.hash,
  personName: row.person_name,
  at: row.at,
});

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** Who puts files somewhere, and when. */
interface Putting {
  readonly personName: string;
  readonly at: string;
}

const filesOf = (db: Kysely<Tables>, book: string) =>
  db
    .selectFrom("book_files")
    .innerJoin("file_bodies", "file_bodies.hash", "book_files.hash")
    .select(["book", "name", "book_files.hash", "present", "person_name", "at", "size"])
    .where("book", "=", book);

/** Files that a book has now, names in code-point order. */
async function presentFiles(db: Kysely<Tables>, book: string): Promise<readonly FileRow[]> {
  return filesOf(db, book).where("present", "=", 1).orderBy("name").execute();
}

/** Puts one content under a name: what the name had before is no longer present. */
async function putFile(
  db: Kysely<Tables>,
  book: string,
  { name, bytes }: NewFile,
  { personName, at }: Putting,
): Promise<void> {
  const hash = sha256(bytes);
  await db
    .insertInto("file_bodies")
    .values({ hash, size: bytes.length, body: Buffer.from(bytes) })
    .onConflict((conflict) => conflict.column("hash").doNothing())
    .execute();
  await db
    .updateTable("book_files")
    .set({ present: 0 })
    .where("book", "=", book)
    .where("name", "=", name)
    .execute();
  await db
    .insertInto("book_files")
    .values({ book, name, hash, present: 1, person_name: personName, at })
    .onConflict((conflict) =>
      conflict.columns(["book", "name", "hash"]).doUpdateSet({ present: 1, person_name: personName, at }),
    )
    .execute();
}

/** Puts files into a book inside a transaction that holds the book's row. */
export async function putFiles(
  db: Kysely<Tables>,
  book: string,
  files: readonly NewFile[],
  putting: Putting,
): Promise<Outcome<readonly BookFile[]>> {
  mustBeKeepable(files.map(({ name }) => ({ table: "files", row: name })));
  const before = await presentFiles(db, book);
  const folded = new Map(before.map(({ name }) => [name.toLowerCase(), name]));
  for (const { name } of files) {
    const other = folded.get(name.toLowerCase()) ?? name;
    if (other !== name) return { refused: "taken" };
    folded.set(name.toLowerCase(), name);
  }
  const hashes = new Map(before.map(({ name, hash }) => [name, hash]));
  for (const file of files) {
    // The same again: who put it there first stays.
    if (hashes.get(file.name) !== sha256(file.bytes)) await putFile(db, book, file, putting);
  }
  const names = new Set(files.map(({ name }) => name));
  return { done: (await presentFiles(db, book)).filter(({ name }) => names.has(name)).map(bookFile) };
}

/** The files of the books of a store. */
export function fileStore({ db, kind, read, write }: Database, now: () => string): FileStore {
  return {
    list: (book) =>
      read(async (held) => {
        if ((await findBook(held, book)) === undefined) return NOT_FOUND;
        return { done: (await presentFiles(held, book)).map(bookFile) };
      }),
    async get(book, name, hash) {
      const asked = filesOf(db, book).select("body").where("name", "=", name);
      const row = await (hash === undefined
        ? asked.where("present", "=", 1)
        : asked.where("book_files.hash", "=", hash)
      ).executeTakeFirst();
      if (row === undefined) return NOT_FOUND;
      if (sha256(row.body) !== row.hash)
        throw new StoreError(
          "damaged",
          `File ${name} of ${book} is not what was stored under its hash; restore a back-up.`,
        );
      return { done: { file: bookFile(row), bytes: row.body } };
    },
    put: (book, files, actor) =>
      write(async (held) => {
        if ((await lockBook(held, kind, book)) === undefined) return NOT_FOUND;
        return putFiles(held, book, files, { personName: actor.personName, at: now() });
      }),
    remove: (book, name) =>
      write(async (held) => {
        if ((await lockBook(held, kind, book)) === undefined) return NOT_FOUND;
        const [row] = await filesOf(held, book).where("name", "=", name).where("present", "=", 1).execute();
        if (row === undefined) return NOT_FOUND;
        await held
          .updateTable("book_files")
          .set({ present: 0 })
          .where("book", "=", book)
          .where("name", "=", name)
          .execute();
        return { done: bookFile(row) };
      }),
  };
}
