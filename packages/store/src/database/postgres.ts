import { CompiledQuery, Kysely, PostgresDialect, sql } from "kysely";
import pg from "pg";
import { StoreError } from "../error.ts";
import type { Database } from "./database.ts";
import type { Tables } from "./schema.ts";

/** Connections held at most; writers of one book wait for its row anyway. */
const CONNECTIONS = 10;

/**
 * Connects to PostgreSQL; throws a `StoreError` when that does not work. A commit returns when it is on the disk of the server, whatever the server's own default
 * is. A connection that breaks while idle is replaced by the next use.
 */
export async function openPostgres(url: string): Promise<Database> {
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    connectionTimeoutMillis: 10_000,
  });
  pool.on("error", () => {
    // The pool has dropped that connection already; whoever asks next gets a new one, or the error.
  });
  const db = new Kysely<Tables>({
    dialect: new PostgresDialect({
      pool,
      async onCreateConnection(connection) {
        await connection.executeQuery(CompiledQuery.raw("set synchronous_commit = on"));
      },
    }),
  });
  try {
    await sql`select 1`.execute(db);
  } catch (error) {
    await db.destroy();
    // The address is not repeated: it can hold a password.
    throw new StoreError(
      "unreachable",
      `PostgreSQL cannot be reached (${reason(error)}); check host, port, database, user and password.`,
      { cause: error },
    );
  }
  const read: Database["read"] = (work) =>
    db.transaction().setIsolationLevel("repeatable read").setAccessMode("read only").execute(work);
  return {
    kind: "postgres",
    db,
    write: (work) => db.transaction().setIsolationLevel("read committed").execute(work),
    read,
    longRead: read,
    close: () => db.destroy(),
  };
}

/** What went wrong, also when a host of several addresses refused at each of them. */
const reason = (error: unknown): string =>
  error instanceof AggregateError
    ? error.errors.map(reason).join("; ")
    : error instanceof Error
      ? error.message
      : String(error);
