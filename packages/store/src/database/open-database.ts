import type { StorePlace } from "../store.ts";
import type { Database } from "./database.ts";
import { openPostgres } from "./postgres.ts";
import { openSqlite } from "./sqlite.ts";

/** Opens the database at a place, whatever its tables are. Throws a `StoreError` when it cannot be reached. */
export const openDatabase = async (place: StorePlace): Promise<Database> =>
  place.kind === "sqlite" ? openSqlite(place.file) : openPostgres(place.url);
