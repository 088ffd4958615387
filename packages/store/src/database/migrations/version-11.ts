import { sql } from "kysely";
import type { Migration } from "./types.ts";

/** Service books of machines as they were built: each is made once, from a release, and stays as it is. */
export const VERSION_11: Migration = {
  version: 11,
  about: "service books of single machines, made once from the release that they were built to",
  async up(schema, { kind, text, bytes }, db) {
    await schema
      .createTable("service_books")
      .addColumn("book", text, (c) => c.notNull())
      .addColumn("release", text, (c) => c.notNull())
      // Hash of what it was made for: options, what is different in the machine, serial number, language.
      .addColumn("key", text, (c) => c.notNull())
      .addColumn("about", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull())
      .addColumn("body", bytes, (c) => c.notNull())
      .addPrimaryKeyConstraint("service_books_key", ["book", "release", "key"])
      .addForeignKeyConstraint("service_books_release", ["book", "release"], "releases", ["book", "name"])
      .execute();
    const guards =
      kind === "sqlite"
        ? ["update", "delete"].map(
            (what) =>
              `create trigger service_books_no_${what} before ${what} on service_books ` +
              "begin select raise(abort, 'what was released never changes'); end",
          )
        : [
            "create trigger service_books_stay before update or delete on service_books " +
              "for each row execute function released_stays()",
            "create trigger service_books_keep before truncate on service_books " +
              "for each statement execute function released_stays()",
          ];
    for (const guard of guards) await sql.raw(guard).execute(db);
  },
};
