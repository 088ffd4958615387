import type { Store } from "../store.ts";
import { allSets, done, plain } from "./cells.ts";

/** Everything that a store gives back when asked, as plain JSON, to compare. Settings are those of these names. */
export async function contents(store: Store, settings: readonly string[]): Promise<unknown> {
  const books = [];
  for (const info of await store.books.list()) {
    const snapshots = [];
    for (const snapshot of done(await store.books.snapshots(info.id))) {
      const tables = done(await store.books.snapshotRows(info.id, snapshot.id));
      snapshots.push({ ...snapshot, tables: plain(tables) });
    }
    const { tables } = done(await store.books.rows(info.id));
    const files = [];
    for (const { name, sha256 } of done(await store.files.list(info.id))) {
      const { file, bytes } = done(await store.files.get(info.id, name, sha256));
      files.push({ ...file, hex: Buffer.from(bytes).toString("hex") });
    }
    const sets = await allSets(store, info.id);
    const releases = [];
    const serviceBooks = [];
    for (const release of done(await store.releases.list(info.id))) {
      const items = done(await store.releases.items(info.id, release.name));
      releases.push({
        ...release,
        items,
        manifest: done(await store.releases.manifest(info.id, release.name)),
      });
      const usual = { book: info.id, release: release.name, key: "usual" };
      const serviceBook = await store.serviceBooks.find(usual);
      if (serviceBook !== null)
        serviceBooks.push({ ...usual, hex: Buffer.from(serviceBook).toString("hex") });
    }
    // Stores of version 1 had no files, those before version 9 no releases, those before version 12 no service books, and
    // the fixtures of then say nothing of them.
    const held = {
      ...(files.length === 0 ? {} : { files }),
      ...(releases.length === 0 ? {} : { releases }),
      ...(serviceBooks.length === 0 ? {} : { serviceBooks }),
    };
    books.push({ info, tables: plain(tables), sets, snapshots, ...held });
  }
  const people = [];
  for (const { id } of await store.people.list()) people.push(await store.people.byId(id));
  const values = [];
  for (const name of settings) values.push([name, await store.settings.get(name)]);
  const facts = await store.records.after(0, 1000);
  return {
    books,
    // Stores before version 3 had no records.
    ...(facts.length === 0 ? {} : { facts, heads: await store.records.heads() }),
    people,
    settings: values,
    mappings: await store.settings.mappings(),
    audit: await store.audit.list(Number.MAX_SAFE_INTEGER, 1000),
  };
}
