import type { Kysely } from "kysely";
import type { StorePlace } from "../store.ts";
import type { Tables } from "./schema.ts";

/** A database of either kind, with the three ways of using it. */
export interface Database {
  readonly kind: StorePlace["kind"];
  /** For single questions. */
  readonly db: Kysely<Tables>;
  /** All or nothing; durable when it returns. A row locked by `locked` stays so until then. */
  write<T>(work: (db: Kysely<Tables>) => Promise<T>): Promise<T>;
  /** Everything that is read is of one moment. */
  read<T>(work: (db: Kysely<Tables>) => Promise<T>): Promise<T>;
  /** As `read`, for as long as it takes: nobody else waits for it. */
  longRead<T>(work: (db: Kysely<Tables>) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}
