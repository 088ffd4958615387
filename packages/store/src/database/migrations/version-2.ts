import type { Migration } from "./types.ts";

/** Files of books: what parts are made from. */
export const VERSION_2: Migration = {
  version: 2,
  about: "files of books by the hash of their bytes",
  async up(schema, { text, integer, bytes }) {
    await schema
      .createTable("file_bodies")
      .addColumn("hash", text, (c) => c.notNull().primaryKey())
      .addColumn("size", integer, (c) => c.notNull())
      .addColumn("body", bytes, (c) => c.notNull())
      .execute();
    await schema
      .createTable("book_files")
      .addColumn("book", text, (c) => c.notNull().references("books.id"))
      .addColumn("name", text, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull().references("file_bodies.hash"))
      .addColumn("present", integer, (c) => c.notNull())
      .addColumn("person_name", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("book_files_key", ["book", "name", "hash"])
      .execute();
  },
};
