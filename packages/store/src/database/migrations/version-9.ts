import { sql } from "kysely";
import type { ColumnTypes, Migration } from "./types.ts";

/** Tables whose rows are written once. */
const FIXED = ["releases", "release_items", "release_bodies"] as const;

/** The database itself refuses to change or drop what was released, whoever asks. */
function guards(kind: ColumnTypes["kind"]): readonly string[] {
  if (kind === "sqlite")
    return FIXED.flatMap((table) =>
      ["update", "delete"].map(
        (what) =>
          `create trigger ${table}_no_${what} before ${what} on ${table} ` +
          "begin select raise(abort, 'what was released never changes'); end",
      ),
    );
  return [
    "create function released_stays() returns trigger language plpgsql as " +
      "$$ begin raise exception 'what was released never changes'; end $$",
    ...FIXED.flatMap((table) => [
      `create trigger ${table}_stay before update or delete on ${table} ` +
        "for each row execute function released_stays()",
      `create trigger ${table}_keep before truncate on ${table} ` +
        "for each statement execute function released_stays()",
    ]),
  ];
}

/** Releases of books: each with everything that was made of it then. */
export const VERSION_9: Migration = {
  version: 9,
  about: "released revisions of books, with what was made of them, never changed",
  async up(schema, { kind, text, integer, bytes }, db) {
    await schema
      .createTable("releases")
      .addColumn("book", text, (c) => c.notNull().references("books.id"))
      .addColumn("name", text, (c) => c.notNull())
      // The how manieth of the book, from 1.
      .addColumn("no", integer, (c) => c.notNull())
      .addColumn("change_no", integer, (c) => c.notNull())
      .addColumn("request", text, (c) => c.notNull())
      .addColumn("person", text, (c) => c.notNull())
      .addColumn("person_name", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull())
      .addColumn("manifest", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("releases_key", ["book", "name"])
      .addUniqueConstraint("releases_no", ["book", "no"])
      .execute();
    await schema
      .createTable("release_bodies")
      .addColumn("hash", text, (c) => c.notNull().primaryKey())
      .addColumn("size", integer, (c) => c.notNull())
      .addColumn("body", bytes, (c) => c.notNull())
      .execute();
    await schema
      .createTable("release_items")
      .addColumn("book", text, (c) => c.notNull())
      .addColumn("release", text, (c) => c.notNull())
      .addColumn("kind", text, (c) => c.notNull())
      .addColumn("id", text, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull().references("release_bodies.hash"))
      // What a print of the item holds of its hash; blank: it is not printed.
      .addColumn("print", text, (c) => c.notNull())
      .addColumn("about", text, (c) => c.notNull())
      .addPrimaryKeyConstraint("release_items_key", ["book", "release", "kind", "id"])
      .addForeignKeyConstraint("release_items_release", ["book", "release"], "releases", ["book", "name"])
      .execute();
    await schema.createIndex("release_items_print").on("release_items").columns(["book", "print"]).execute();
    for (const guard of guards(kind)) await sql.raw(guard).execute(db);
  },
};
