import type { StorePlace } from "../store.ts";
import type { Database } from "./database.ts";
import { openPostgres } from "./postgres.ts";
import { openSqlite } from "./sqlite.ts";

/** Opens the database at a place, whatever its tables are. */
export const openDatabase = (place: StorePlace): Database =>
  place.kind === "sqlite" ? openSqlite(place.file) : openPostgres(place.url);
