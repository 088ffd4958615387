import { setImmediate } from "node:timers/promises";
import { promisify } from "node:util";
import { gunzip } from "node:zlib";
import type { ReleaseFault, ReleaseItem } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import { readManifest, sha256 } from "./manifest.ts";

const unzip = promisify(gunzip);

/** Looks at every byte of every release and of the service books made from it, and at the rows that its items are looked up by. */
export const verifyReleases = ({ longRead }: Database): Promise<readonly ReleaseFault[]> =>
  longRead(async (db) => {
    const faults: ReleaseFault[] = [];
    const good = new Map<string, boolean>();
    const rows = await db
      .selectFrom("releases")
      .select(["book", "name", "no", "hash", "change_no", "at", "person_name"])
      .orderBy("book")
      .orderBy("no")
      .execute();
    const lastNo = new Map<string, number>();
    for (const row of rows) {
      const { book, name, hash, no } = row;
      const fault = (item: string, what: ReleaseFault["what"]): void => {
        faults.push({ book, release: name, item, what });
      };
      if (no !== (lastNo.get(book) ?? 0) + 1) fault("", "missing");
      lastNo.set(book, no);
      const { manifest } = await db
        .selectFrom("releases")
        .select("manifest")
        .where("book", "=", book)
        .where("name", "=", name)
        .executeTakeFirstOrThrow();
      let items: readonly ReleaseItem[];
      try {
        const said = readManifest(manifest, hash);
        const isSame =
          said.book === book &&
          said.name === name &&
          said.no === no &&
          said.changeNo === row.change_no &&
          said.at === row.at &&
          said.personName === row.person_name;
        if (!isSame) fault("", "changed");
        ({ items } = said);
      } catch {
        fault("", "changed");
        continue;
      }
      for (const item of items) {
        if (!good.has(item.hash)) good.set(item.hash, await isWhole(db, item.hash));
        if (good.get(item.hash) === false) fault(`${item.kind} ${item.id}`, "changed");
        await setImmediate();
      }
      await lookUps(db, book, name, items, fault);
      await serviceBooks(db, book, name, fault);
    }
    return faults;
  });

async function hasHash(body: Buffer, hash: string): Promise<boolean> {
  const bytes = await unzip(body).catch(() => null);
  return bytes !== null && sha256(bytes) === hash;
}

async function isWhole(db: Kysely<Tables>, hash: string): Promise<boolean> {
  const row = await db
    .selectFrom("release_bodies")
    .select("body")
    .where("hash", "=", hash)
    .executeTakeFirst();
  return row !== undefined && hasHash(row.body, hash);
}

/** Service books of single machines are of the release that these were built to. */
async function serviceBooks(
  db: Kysely<Tables>,
  book: string,
  release: string,
  fault: (item: string, what: ReleaseFault["what"]) => void,
): Promise<void> {
  const of = db.selectFrom("service_books").where("book", "=", book).where("release", "=", release);
  for (const { key } of await of.select("key").orderBy("key").execute()) {
    const { hash, body } = await of.select(["hash", "body"]).where("key", "=", key).executeTakeFirstOrThrow();
    if (!(await hasHash(body, hash))) fault(`service-book ${key}`, "changed");
    await setImmediate();
  }
}

/** The rows that items are found by are those of the manifest. */
async function lookUps(
  db: Kysely<Tables>,
  book: string,
  release: string,
  items: readonly ReleaseItem[],
  fault: (item: string, what: ReleaseFault["what"]) => void,
): Promise<void> {
  const rows = await db
    .selectFrom("release_items")
    .select(["kind", "id", "hash"])
    .where("book", "=", book)
    .where("release", "=", release)
    .execute();
  const found = new Map(rows.map(({ kind, id, hash }) => [`${kind} ${id}`, hash]));
  for (const { kind, id, hash } of items) {
    if (found.get(`${kind} ${id}`) !== hash) fault(`${kind} ${id}`, "look-up");
    found.delete(`${kind} ${id}`);
  }
  for (const key of found.keys()) fault(key, "look-up");
}
