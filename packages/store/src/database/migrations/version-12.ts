import { sql } from "kysely";
import type { Migration } from "./types.ts";

/** Tables whose rows are written once, each with the keys by which a row could take the place of another. */
const KEYS = {
  releases: [
    ["book", "name"],
    ["book", "no"],
  ],
  release_items: [["book", "release", "kind", "id"]],
  release_bodies: [["hash"]],
  service_books: [["book", "release", "key"]],
} as const;

/**
 * A row that would take the place of one that was released is refused before it does. The row number counts as a key: a
 * statement may name it. Where it does not, it is undefined here, in fact -1, which no row of this program has.
 */
const guard = (table: string, keys: readonly (readonly string[])[]): string => {
  const taken = [...keys, ["rowid"]]
    .map((key) => `(${key.map((column) => `${column} = new.${column}`).join(" and ")})`)
    .join(" or ");
  return (
    `create trigger ${table}_no_replace before insert on ${table} ` +
    `when exists (select 1 from ${table} where ${taken}) ` +
    "begin select raise(abort, 'what was released never changes'); end"
  );
};

/**
 * SQLite lets `insert or replace` drop a row without calling the trigger that forbids to delete it, unless a connection asks
 * for that. PostgreSQL calls its triggers for every way there is.
 */
export const VERSION_12: Migration = {
  version: 12,
  about: "what was released is not replaced by another row of the same key either",
  async up(_, { kind }, db) {
    if (kind !== "sqlite") return;
    for (const [table, keys] of Object.entries(KEYS)) await sql.raw(guard(table, keys)).execute(db);
  },
};
