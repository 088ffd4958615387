import { createHash } from "node:crypto";
import { promisify } from "node:util";
import { gunzip, gzip } from "node:zlib";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import { StoreError } from "../error.ts";

const zip = promisify(gzip);
const unzip = promisify(gunzip);

/** Which service book: of a release of a book, and for what, as a hash. */
export interface ServiceBookKey {
  readonly book: string;
  readonly release: string;
  readonly key: string;
}

/** Service books that were made for single machines. Neither this program nor whoever is at the database changes one. */
export interface ServiceBookStore {
  /** Null: it was not made yet. Throws a `StoreError` when its bytes are no longer what was kept. */
  find(of: ServiceBookKey): Promise<Uint8Array | null>;
  /**
   * Keeps a book, unless there is one: two that make the same at once both get the first.
   * @param about what it was made for, in words of the caller
   */
  keep(of: ServiceBookKey, about: string, body: Uint8Array): Promise<Uint8Array>;
}

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

const rowOf = (db: Kysely<Tables>, { book, release, key }: ServiceBookKey) =>
  db
    .selectFrom("service_books")
    .select(["hash", "body"])
    .where("book", "=", book)
    .where("release", "=", release)
    .where("key", "=", key)
    .executeTakeFirst();

/** The service books of a store. */
export function serviceBookStore({ db, write }: Database, now: () => string): ServiceBookStore {
  const find: ServiceBookStore["find"] = async (of) => {
    const row = await rowOf(db, of);
    if (row === undefined) return null;
    const bytes = await unzip(row.body).catch(() => null);
    if (bytes !== null && sha256(bytes) === row.hash) return bytes;
    throw new StoreError(
      "damaged",
      `A service book of release ${of.release} of ${of.book} is not what was kept; restore a back-up.`,
    );
  };
  return {
    find,
    async keep(of, about, body) {
      const row = { ...of, about, at: now(), hash: sha256(body), body: await zip(body) };
      await write(async (held) => {
        if ((await rowOf(held, of)) !== undefined) return;
        await held
          .insertInto("service_books")
          .values(row)
          // In PostgreSQL another may write the same one meanwhile.
          .onConflict((conflict) => conflict.columns(["book", "release", "key"]).doNothing())
          .execute();
      });
      return (await find(of)) ?? body;
    },
  };
}
