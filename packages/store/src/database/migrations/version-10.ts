import type { Migration } from "./types.ts";

/** What problems are found by: which records speak of each, of which book it is, and what it is about. */
export const VERSION_10: Migration = {
  version: 10,
  about: "records of problems by problem and book, and what each is about",
  async up(schema, { text, integer }) {
    await schema
      .createTable("problem_facts")
      .addColumn("no", integer, (c) => c.notNull().primaryKey().references("facts.no"))
      .addColumn("problem", text, (c) => c.notNull())
      // Blank for what is noted of a problem: only its first record names the book.
      .addColumn("book", text, (c) => c.notNull())
      .execute();
    await schema
      .createIndex("problem_facts_problem")
      .on("problem_facts")
      .columns(["problem", "no"])
      .execute();
    await schema.createIndex("problem_facts_book").on("problem_facts").columns(["book", "problem"]).execute();
    await schema
      .createTable("problem_about")
      .addColumn("no", integer, (c) => c.notNull().references("facts.no"))
      .addColumn("kind", text, (c) => c.notNull())
      .addColumn("id", text, (c) => c.notNull())
      .addColumn("problem", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("problem_about_key", ["no", "kind", "id"])
      .execute();
    await schema.createIndex("problem_about_id").on("problem_about").columns(["id", "problem"]).execute();
  },
};
