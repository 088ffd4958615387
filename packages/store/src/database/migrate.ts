import { type Kysely, sql } from "kysely";
import { StoreError } from "../error.ts";
import type { Database } from "./database.ts";
import { MIGRATIONS, STORE_VERSION } from "./migrations/index.ts";
import type { ColumnTypes } from "./migrations/types.ts";
import type { Tables } from "./schema.ts";

export const TYPES: Readonly<Record<Database["kind"], ColumnTypes>> = {
  sqlite: { kind: "sqlite", text: sql`text`, integer: "integer", bytes: sql`blob` },
  postgres: { kind: "postgres", text: sql`text collate "C"`, integer: "integer", bytes: sql`bytea` },
};

/** Held in PostgreSQL by whoever migrates, so that two servers that start at once do not both. Any number will do. */
const MIGRATION_LOCK = 7_046_029;

/**
 * Brings the tables forward to today, in one transaction. Throws a `StoreError` when they were written by a later
 * program, or when the database belongs to something else.
 */
export const migrateStore = ({ kind, write }: Database): Promise<void> =>
  write((db) => migrateWithin(db, kind, STORE_VERSION));

/** As `migrateStore`, inside a transaction and as far as a version. */
export async function migrateWithin(
  db: Kysely<Tables>,
  kind: Database["kind"],
  version: number,
): Promise<void> {
  const present = await presentVersion(db, kind);
  if (present > STORE_VERSION) {
    throw new StoreError(
      "newer",
      `This store has version ${present}, and this program knows versions up to ${STORE_VERSION}: ` +
        "it was written by a later program. Start that one, or restore a back-up made by this one elsewhere.",
    );
  }
  if (present === 0) {
    await db.schema
      .createTable("store_version")
      .addColumn("version", "integer", (c) => c.notNull())
      .execute();
    await db.insertInto("store_version").values({ version: 0 }).execute();
  }
  for (const migration of MIGRATIONS) {
    if (migration.version <= present || migration.version > version) continue;
    await migration.up(db.schema, TYPES[kind], db);
    await db.updateTable("store_version").set({ version: migration.version }).execute();
  }
}

/**
 * Version of the tables that are there; 0 in an empty database. Nobody else migrates from then on to the end of the
 * transaction.
 */
export async function presentVersion(db: Kysely<Tables>, kind: Database["kind"]): Promise<number> {
  if (kind === "postgres") {
    await sql`select pg_advisory_xact_lock(${MIGRATION_LOCK})`.execute(db);
    await mustBeUtf8(db);
  }
  const tables = await tableNames(db, kind);
  if (tables.includes("store_version")) {
    const { version } = await db.selectFrom("store_version").select("version").executeTakeFirstOrThrow();
    return version;
  }
  if (tables.length === 0) return 0;
  throw new StoreError(
    "not-a-store",
    `This database holds tables of something else (${tables.slice(0, 3).join(", ")}); give the store one of its own.`,
  );
}

/** Tables where the store's own are or will be. */
async function tableNames(db: Kysely<Tables>, kind: Database["kind"]): Promise<readonly string[]> {
  const query =
    kind === "sqlite"
      ? sql<{
          name: string;
        }>`select name from sqlite_master where type = 'table' and name not like 'sqlite_%'`
      : sql<{ name: string }>`select tablename as name from pg_tables where schemaname = current_schema()`;
  return (await query.execute(db)).rows.map(({ name }) => name);
}

async function mustBeUtf8(db: Kysely<Tables>): Promise<void> {
  const { rows } = await sql<{ server_encoding: string }>`show server_encoding`.execute(db);
  const encoding = rows[0]?.server_encoding ?? "";
  if (encoding === "UTF8") return;
  throw new StoreError(
    "not-a-store",
    `This database keeps texts in ${encoding}, which cannot hold all of them; make one with encoding UTF8.`,
  );
}
