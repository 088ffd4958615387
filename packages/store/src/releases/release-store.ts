import { setImmediate } from "node:timers/promises";
import { promisify } from "node:util";
import { gunzip, gzip } from "node:zlib";
import { PRINT_DIGITS, type Release, type ReleaseItem, releaseItemSchema } from "@pinwright/contract";
import type { Kysely } from "kysely";
import { findBook } from "../books/heads.ts";
import { lockBook } from "../books/lock.ts";
import type { Database } from "../database/database.ts";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import { StoreError } from "../error.ts";
import type { Actor, Outcome } from "../store.ts";
import { manifestText, readManifest, sha256 } from "./manifest.ts";
import type { NewRelease, NewReleaseItem, ReleaseStore } from "./release.ts";
import { verifyReleases } from "./verify.ts";

const zip = promisify(gzip);
const unzip = promisify(gunzip);

const ROWS_AT_ONCE = 100;
/** Bodies that are packed and written at once. */
const BODIES_AT_ONCE = 32;
/** Manifests that are kept read: they never change. */
const KEPT_MANIFESTS = 6;

const aboutSchema = releaseItemSchema.shape.about;

const NOT_FOUND = { refused: "not-found" } as const;

/** Without what it holds. */
function releaseOf(row: { readonly manifest: string; readonly hash: string }): Release {
  const { items: _, ...release } = readManifest(row.manifest, row.hash);
  return release;
}

const findRelease = (db: Kysely<Tables>, book: string, name: string) =>
  db.selectFrom("releases").selectAll().where("book", "=", book).where("name", "=", name).executeTakeFirst();

interface Packed {
  readonly item: ReleaseItem;
  readonly body: Buffer;
}

async function packed({ body, ...about }: NewReleaseItem): Promise<Packed> {
  return { item: { ...about, hash: sha256(body), bytes: body.byteLength }, body: await zip(body) };
}

/** Writes bodies that are not there yet, so that a content is kept once. */
async function putBodies(db: Kysely<Tables>, all: readonly Packed[]): Promise<void> {
  const missing = new Map(all.map((one) => [one.item.hash, one]));
  const there = await db
    .selectFrom("release_bodies")
    .select("hash")
    .where("hash", "in", [...missing.keys()])
    .execute();
  for (const { hash } of there) missing.delete(hash);
  for (const { item, body } of missing.values())
    await db
      .insertInto("release_bodies")
      .values({ hash: item.hash, size: item.bytes, body })
      // In PostgreSQL the release of another book may write the same one meanwhile.
      .onConflict((conflict) => conflict.column("hash").doNothing())
      .execute();
}

/** What keeps a release from being written, or the one that the same request made before; null: nothing does. */
async function answered(
  db: Kysely<Tables>,
  { book, name, request, changeNo }: NewRelease,
  actor: Actor,
  presentNo: number,
): Promise<Outcome<Release> | null> {
  const before = await db
    .selectFrom("releases")
    .select(["name", "request", "person", "manifest", "hash"])
    .where("book", "=", book)
    .where((where) => where.or([where("request", "=", request), where("name", "=", name)]))
    .execute();
  const again = before.find((one) => one.request === request);
  if (again !== undefined)
    return again.person === actor.personId ? { done: releaseOf(again) } : { refused: "taken" };
  if (before.length > 0) return { refused: "taken" };
  return presentNo === changeNo ? null : { refused: "conflict", conflicts: [] };
}

const printOf = ({ about }: ReleaseItem): string => (about.bodyHash ?? "").slice(0, PRINT_DIGITS);

/** The releases of the books of a store. */
export function releaseStore(database: Database, now: () => string): ReleaseStore {
  const { db, kind, read, write } = database;
  /** Releases by their hashes, without what they hold: they never change. */
  const known = new Map<string, Release>();
  const readOne = async (held: Kysely<Tables>, book: string, name: string): Promise<Release> => {
    const row = await findRelease(held, book, name);
    if (row === undefined)
      throw new StoreError("damaged", `Release ${name} of ${book} is gone; restore a back-up.`);
    const release = releaseOf(row);
    known.set(row.hash, release);
    return release;
  };
  const kept = new Map<string, readonly ReleaseItem[]>();
  const itemsOf = async (book: string, name: string): Promise<Outcome<readonly ReleaseItem[]>> => {
    const row = await db
      .selectFrom("releases")
      .select("hash")
      .where("book", "=", book)
      .where("name", "=", name)
      .executeTakeFirst();
    if (row === undefined) return NOT_FOUND;
    const known = kept.get(row.hash);
    if (known !== undefined) return { done: known };
    const whole = await findRelease(db, book, name);
    if (whole === undefined) return NOT_FOUND;
    const { items } = readManifest(whole.manifest, whole.hash);
    const [oldest] = kept.keys();
    if (oldest !== undefined && kept.size >= KEPT_MANIFESTS) kept.delete(oldest);
    kept.set(row.hash, items);
    return { done: items };
  };
  return {
    list: (book) =>
      read(async (held) => {
        if ((await findBook(held, book)) === undefined) return NOT_FOUND;
        const rows = await held
          .selectFrom("releases")
          .select(["name", "hash"])
          .where("book", "=", book)
          .orderBy("no", "desc")
          .execute();
        const found: Release[] = [];
        for (const { name, hash } of rows) found.push(known.get(hash) ?? (await readOne(held, book, name)));
        return { done: found };
      }),
    async get(book, name) {
      const row = await db
        .selectFrom("releases")
        .select("hash")
        .where("book", "=", book)
        .where("name", "=", name)
        .executeTakeFirst();
      if (row === undefined) return NOT_FOUND;
      return { done: known.get(row.hash) ?? (await readOne(db, book, name)) };
    },
    async add(release, actor) {
      const early = await read(async (held) => {
        const row = await findBook(held, release.book);
        return row === undefined ? NOT_FOUND : answered(held, release, actor, row.change_no);
      });
      if (early !== null) return early;
      // What it holds is written in small pieces before, so that nobody waits for all of it: a body that no release came to
      // name does no harm, and is there for the next.
      const items: ReleaseItem[] = [];
      for (const some of inChunks(release.items, BODIES_AT_ONCE)) {
        const all = await Promise.all(some.map(packed));
        await write((held) => putBodies(held, all));
        items.push(...all.map(({ item }) => item));
        await setImmediate();
      }
      return write(async (held): Promise<Outcome<Release>> => {
        const row = await lockBook(held, kind, release.book);
        if (row === undefined) return NOT_FOUND;
        const late = await answered(held, release, actor, row.change_no);
        if (late !== null) return late;
        const last = await held
          .selectFrom("releases")
          .select((all) => all.fn.max("no").as("no"))
          .where("book", "=", release.book)
          .executeTakeFirst();
        const no = Number(last?.no ?? 0) + 1;
        return { done: await written(held, release, items, { no, at: now(), ...actor }) };
      });
    },
    async manifest(book, name) {
      const row = await findRelease(db, book, name);
      return row === undefined ? NOT_FOUND : { done: row.manifest };
    },
    async items(book, name, of) {
      const outcome = await itemsOf(book, name);
      if ("refused" in outcome || of === undefined) return outcome;
      return { done: outcome.done.filter((item) => item.kind === of) };
    },
    async body(book, name, of, id) {
      const outcome = await itemsOf(book, name);
      if ("refused" in outcome) return outcome;
      const item = outcome.done.find((one) => one.kind === of && one.id === id);
      if (item === undefined) return NOT_FOUND;
      const row = await db
        .selectFrom("release_bodies")
        .select("body")
        .where("hash", "=", item.hash)
        .executeTakeFirst();
      const bytes = row === undefined ? null : await unzip(row.body).catch(() => null);
      if (bytes !== null && sha256(bytes) === item.hash) return { done: bytes };
      throw new StoreError(
        "damaged",
        `${of} ${id} of release ${name} of ${book} is not what was released; restore a back-up.`,
      );
    },
    async printed(book, print) {
      const rows = await db
        .selectFrom("release_items")
        .innerJoin("releases", (join) =>
          join.onRef("releases.book", "=", "release_items.book").onRef("releases.name", "=", "release"),
        )
        .select(["release", "id", "about"])
        .where("release_items.book", "=", book)
        .where("print", "=", print)
        .orderBy("no", "desc")
        .orderBy("id")
        .execute();
      return rows.map(({ release, id, about }) => ({
        release,
        id,
        about: aboutSchema.parse(JSON.parse(about)),
      }));
    },
    verify: () => verifyReleases(database),
  };
}

/** Writes a release whose bodies are there; the caller holds the book. */
async function written(
  db: Kysely<Tables>,
  { items: _, request, ...release }: NewRelease,
  items: readonly ReleaseItem[],
  by: { readonly no: number; readonly at: string; readonly personId: string; readonly personName: string },
): Promise<Release> {
  const { no, at, personId, personName } = by;
  const manifest = manifestText({ ...release, no, at, personName, items });
  const hash = sha256(manifest);
  await db
    .insertInto("releases")
    .values({
      ...{ book: release.book, name: release.name, no, change_no: release.changeNo, request },
      ...{ person: personId, person_name: personName, at, hash, manifest },
    })
    .execute();
  const rows = items.map((item) => ({
    ...{ book: release.book, release: release.name, kind: item.kind, id: item.id, hash: item.hash },
    ...{ print: printOf(item), about: JSON.stringify(item.about) },
  }));
  for (const some of inChunks(rows, ROWS_AT_ONCE))
    await db.insertInto("release_items").values(some).execute();
  return releaseOf({ manifest, hash });
}
