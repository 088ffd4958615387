import { auditStore } from "./audit.ts";
import { backUp } from "./back-up/back-up.ts";
import { restore } from "./back-up/restore.ts";
import { bookStore } from "./books/book-store.ts";
import type { Database } from "./database/database.ts";
import { migrateStore } from "./database/migrate.ts";
import { openDatabase } from "./database/open-database.ts";
import { fileStore } from "./files/file-store.ts";
import { pictureStore } from "./files/picture-store.ts";
import { peopleStore } from "./people.ts";
import { qualityStore } from "./records/quality.ts";
import { recordStore } from "./records/record-store.ts";
import { releaseStore } from "./releases/release-store.ts";
import { serviceBookStore } from "./service-books/service-book-store.ts";
import { settingStore } from "./settings.ts";
import type { Store, StoreOptions, StorePlace } from "./store.ts";

/**
 * Opens a store, made if it is not there yet, and brings one of an earlier program forward. Throws a `StoreError`
 * when it cannot be reached, holds something else, or was written by a later program.
 */
export const openStore = (place: StorePlace, options: StoreOptions): Promise<Store> =>
  opened(place, options, migrateStore);

/**
 * Restores a back-up, made from a store of either kind, where no store is yet, and opens it. Throws a `StoreError`
 * when the back-up is damaged or of a later program, or when there is a store already; then nothing was written.
 */
export const restoreBackUp = (file: string, place: StorePlace, options: StoreOptions): Promise<Store> =>
  opened(place, options, (database) => restore(database, file));

async function opened(
  place: StorePlace,
  options: StoreOptions,
  prepare: (database: Database) => Promise<void>,
): Promise<Store> {
  const database = await openDatabase(place);
  try {
    await prepare(database);
  } catch (error) {
    await database.close();
    throw error;
  }
  return {
    books: bookStore(database, options),
    files: fileStore(database, options.now),
    releases: releaseStore(database, options.now),
    serviceBooks: serviceBookStore(database, options.now),
    pictures: pictureStore(database),
    people: peopleStore(database, options),
    settings: settingStore(database),
    records: recordStore(database, options.now),
    quality: qualityStore(database),
    audit: auditStore(database, options.now),
    backUp: (file) => backUp(database, file, options.now()),
    close: () => database.close(),
  };
}
