import { closeSync, mkdirSync, openSync } from "node:fs";
import { dirname } from "node:path";
import { setTimeout } from "node:timers/promises";
import Sqlite from "better-sqlite3";
import { Kysely, SqliteDialect, sql } from "kysely";
import { StoreError } from "../error.ts";
import type { Database } from "./database.ts";
import type { Tables } from "./schema.ts";

/** How long to wait for another program that writes to the same file. */
const BUSY_MS = 10_000;
/** How long the wait for a lock may stop everything else in this program; then others get their turn. */
const BLOCK_MS = 20;

/**
 * Opens a SQLite file, made if need be and readable by its owner only. Every commit is on the disk before it
 * returns (synchronous FULL). Throws a `StoreError` when it cannot be opened.
 */
export function openSqlite(file: string): Database {
  const db = connect(file, false);
  /** Kysely keeps the one connection for whoever holds it, so nobody's statements come between. */
  const within = <T>(begin: string, of: Kysely<Tables>, work: (db: Kysely<Tables>) => Promise<T>) =>
    of.connection().execute(async (held) => {
      await whenFree(() => sql.raw(begin).execute(held));
      try {
        const result = await work(held);
        await sql.raw("commit").execute(held);
        return result;
      } catch (error) {
        await sql.raw("rollback").execute(held);
        throw error;
      }
    });
  return {
    kind: "sqlite",
    db,
    write: (work) => within("begin immediate", db, work),
    read: (work) => within("begin", db, work),
    async longRead(work) {
      const other = connect(file, true);
      try {
        return await within("begin", other, work);
      } finally {
        await other.destroy();
      }
    },
    close: () => db.destroy(),
  };
}

/** Tries again while the file is locked, in this program or in another one. */
async function whenFree(begin: () => Promise<unknown>): Promise<void> {
  for (let waitedMs = 0; ; waitedMs += BLOCK_MS) {
    try {
      await begin();
      return;
    } catch (error) {
      const busy = error instanceof Sqlite.SqliteError && error.code.startsWith("SQLITE_BUSY");
      if (!busy || waitedMs >= BUSY_MS) throw error;
      await setTimeout(1);
    }
  }
}

function connect(file: string, readonly: boolean): Kysely<Tables> {
  try {
    if (!readonly) {
      mkdirSync(dirname(file), { recursive: true });
      closeSync(openSync(file, "a", 0o600));
    }
    const database = new Sqlite(file, { readonly, timeout: BUSY_MS });
    database.pragma("foreign_keys = ON");
    if (!readonly) {
      database.pragma("journal_mode = WAL");
      database.pragma("synchronous = FULL");
    }
    database.pragma(`busy_timeout = ${BLOCK_MS}`);
    return new Kysely({ dialect: new SqliteDialect({ database }) });
  } catch (error) {
    const code = error instanceof Sqlite.SqliteError ? error.code : "";
    if (code === "SQLITE_NOTADB") {
      throw new StoreError("not-a-store", `${file} is not a database; name another file, or move it away.`, {
        cause: error,
      });
    }
    throw new StoreError(
      "unreachable",
      `${file} cannot be opened (${error instanceof Error ? error.message : String(error)}); ` +
        "the file and its folder must be writable by the person who runs this program.",
      { cause: error },
    );
  }
}
