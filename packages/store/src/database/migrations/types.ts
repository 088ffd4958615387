import type { QueryExecutorProvider, RawBuilder, SchemaModule } from "kysely";

/** What column types are called on the database at hand. */
export interface ColumnTypes {
  readonly kind: "sqlite" | "postgres";
  /** Text compared byte by byte. */
  readonly text: RawBuilder<unknown>;
  readonly integer: "integer";
  readonly bytes: RawBuilder<unknown>;
}

/**
 * One step forward of the store's tables. Steps are only ever added: a step that was in a release is never edited.
 */
export interface Migration {
  /** Version that the tables have afterwards. */
  readonly version: number;
  readonly about: string;
  /** @param db for what is filled in from the tables as they were */
  up(schema: SchemaModule, types: ColumnTypes, db: QueryExecutorProvider): Promise<void>;
}
