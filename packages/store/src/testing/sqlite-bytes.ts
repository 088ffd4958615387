import { sql } from "kysely";
import { openSqlite } from "../database/sqlite.ts";

/** Bytes of all pages of a SQLite store, whether they are in its file yet or still in the log beside it. */
export async function sqliteBytes(file: string): Promise<number> {
  const database = openSqlite(file);
  const ask = async (what: string): Promise<number> => {
    const { rows } = await sql<Record<string, number>>`${sql.raw(`pragma ${what}`)}`.execute(database.db);
    return rows[0]?.[what] ?? 0;
  };
  const bytes = (await ask("page_count")) * (await ask("page_size"));
  await database.close();
  return bytes;
}
