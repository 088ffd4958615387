import type { Migration } from "./types.ts";

/** The tables of the first release. */
export const VERSION_1: Migration = {
  version: 1,
  about: "books, change sets, snapshots, people, sessions, settings, mappings, audit",
  async up(schema, { text, integer, bytes }) {
    await schema
      .createTable("books")
      .addColumn("id", text, (c) => c.notNull().primaryKey())
      .addColumn("kind", text, (c) => c.notNull())
      .addColumn("label", text, (c) => c.notNull())
      .addColumn("label_zh", text, (c) => c.notNull())
      .addColumn("change_no", integer, (c) => c.notNull())
      .addColumn("created_at", text, (c) => c.notNull())
      .addColumn("changed_at", text, (c) => c.notNull())
      .addColumn("archived", integer, (c) => c.notNull())
      .execute();
    await schema
      .createTable("book_rows")
      .addColumn("book", text, (c) => c.notNull().references("books.id"))
      .addColumn("table_name", text, (c) => c.notNull())
      .addColumn("row_id", text, (c) => c.notNull())
      .addColumn("cells", text, (c) => c.notNull())
      .addColumn("changed_in", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("book_rows_key", ["book", "table_name", "row_id"])
      .execute();
    await schema
      .createTable("change_sets")
      .addColumn("book", text, (c) => c.notNull().references("books.id"))
      .addColumn("no", integer, (c) => c.notNull())
      .addColumn("id", text, (c) => c.notNull())
      .addColumn("kind", text, (c) => c.notNull())
      .addColumn("person", text, (c) => c.notNull())
      .addColumn("person_name", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("note", text, (c) => c.notNull())
      .addColumn("reverses", integer)
      .addColumn("undone_by", integer)
      .addColumn("cells", integer, (c) => c.notNull())
      .addColumn("changes", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("change_sets_key", ["book", "no"])
      .addUniqueConstraint("change_sets_id", ["book", "id"])
      .execute();
    await schema
      .createIndex("change_sets_person")
      .on("change_sets")
      .columns(["book", "person", "no"])
      .execute();
    await schema
      .createTable("snapshot_bodies")
      .addColumn("hash", text, (c) => c.notNull().primaryKey())
      .addColumn("body", bytes, (c) => c.notNull())
      .execute();
    await schema
      .createTable("snapshots")
      .addColumn("book", text, (c) => c.notNull().references("books.id"))
      .addColumn("id", text, (c) => c.notNull())
      .addColumn("name", text, (c) => c.notNull())
      .addColumn("change_no", integer, (c) => c.notNull())
      .addColumn("person_name", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull().references("snapshot_bodies.hash"))
      .addPrimaryKeyConstraint("snapshots_key", ["book", "id"])
      .addUniqueConstraint("snapshots_name", ["book", "name"])
      .execute();
    await schema
      .createTable("people")
      .addColumn("id", text, (c) => c.notNull().primaryKey())
      .addColumn("name", text, (c) => c.notNull())
      .addColumn("name_key", text, (c) => c.notNull().unique())
      .addColumn("role", text, (c) => c.notNull())
      .addColumn("active", integer, (c) => c.notNull())
      .addColumn("password_hash", text)
      .addColumn("code_hash", text)
      .execute();
    await schema
      .createTable("sessions")
      .addColumn("hash", text, (c) => c.notNull().primaryKey())
      .addColumn("person", text, (c) => c.notNull().references("people.id"))
      .addColumn("token", text, (c) => c.notNull())
      .addColumn("created_at", text, (c) => c.notNull())
      .addColumn("expires_at", text, (c) => c.notNull())
      .addColumn("kind", text, (c) => c.notNull())
      .execute();
    await schema.createIndex("sessions_person").on("sessions").column("person").execute();
    await schema
      .createTable("settings")
      .addColumn("name", text, (c) => c.notNull().primaryKey())
      .addColumn("value", text, (c) => c.notNull())
      .execute();
    await schema
      .createTable("mappings")
      .addColumn("id", text, (c) => c.notNull().primaryKey())
      .addColumn("table_name", text, (c) => c.notNull())
      .addColumn("header", text, (c) => c.notNull())
      .addColumn("columns", text, (c) => c.notNull())
      .execute();
    await schema
      .createTable("audit")
      .addColumn("no", integer, (c) => c.notNull().primaryKey())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("person_name", text, (c) => c.notNull())
      .addColumn("action", text, (c) => c.notNull())
      .addColumn("detail", text, (c) => c.notNull())
      .addColumn("origin", text, (c) => c.notNull())
      .execute();
    await schema
      .createTable("counters")
      .addColumn("name", text, (c) => c.notNull().primaryKey())
      .addColumn("value", integer, (c) => c.notNull())
      .execute();
  },
};
