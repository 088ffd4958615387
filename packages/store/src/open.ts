import { auditStore } from "./audit.ts";
import { bookStore } from "./books/book-store.ts";
import { migrateStore } from "./database/migrate.ts";
import { openDatabase } from "./database/open-database.ts";
import { peopleStore } from "./people.ts";
import { settingStore } from "./settings.ts";
import type { Store, StoreOptions, StorePlace } from "./store.ts";

/**
 * Opens a store, made if it is not there yet, and brings one of an earlier program forward. Throws a `StoreError`
 * when it cannot be reached, holds something else, or was written by a later program.
 */
export async function openStore(place: StorePlace, options: StoreOptions): Promise<Store> {
  const database = openDatabase(place);
  try {
    await migrateStore(database);
  } catch (error) {
    await database.close();
    throw error;
  }
  return {
    books: bookStore(database, options),
    people: peopleStore(database, options),
    settings: settingStore(database),
    audit: auditStore(database, options.now),
    async backUp(file) {
      throw new Error(file);
    },
    close: () => database.close(),
  };
}
