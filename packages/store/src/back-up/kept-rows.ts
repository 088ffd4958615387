import { type Kysely, sql } from "kysely";
import { z } from "zod";
import type { Tables } from "../database/schema.ts";
import type { KeptTable } from "./kept-tables.ts";

/** A row as the database gives it. */
export type KeptRow = Readonly<Record<string, unknown>>;

const KEYS_AT_ONCE = 1_000;
const BYTES_AT_ONCE = 1_000_000;

/** All rows of a table in the order of their keys, about a megabyte of them in memory at a time. */
export async function* keptRows(
  db: Kysely<Tables>,
  { name, key, large }: KeptTable,
): AsyncGenerator<KeptRow> {
  const keyColumns = sql.join(key.map((column) => sql.ref(column)));
  const bytes = large === undefined ? sql`1000` : sql`octet_length(${sql.ref(large)})`;
  const than = (row: KeptRow) => sql.join(key.map((column) => row[column]));
  let last: KeptRow | undefined;
  for (;;) {
    const after = last ? sql`where (${keyColumns}) > (${than(last)})` : sql``;
    const { rows: keys } = await sql<KeptRow>`
      select ${keyColumns}, ${bytes} as bytes from ${sql.table(name)} ${after}
      order by ${keyColumns} limit ${sql.lit(KEYS_AT_ONCE)}`.execute(db);
    if (keys.length === 0) return;
    for (const until of ends(keys)) {
      const from = last ? sql`and (${keyColumns}) > (${than(last)})` : sql``;
      const { rows } = await sql<KeptRow>`
        select * from ${sql.table(name)} where (${keyColumns}) <= (${than(until)}) ${from}
        order by ${keyColumns}`.execute(db);
      yield* rows;
      last = until;
    }
  }
}

/** The last keys of the pieces in which rows are read. */
function ends(keys: readonly KeptRow[]): readonly KeptRow[] {
  let bytes = 0;
  return keys.filter((row, index) => {
    bytes += Number(row.bytes);
    if (bytes < BYTES_AT_ONCE && index < keys.length - 1) return false;
    bytes = 0;
    return true;
  });
}

/** One line of JSON for a row; bytes are written in base64. */
export const rowLine = (row: KeptRow): string =>
  JSON.stringify(
    Object.fromEntries(
      Object.entries(row).map(([column, value]) => [
        column,
        Buffer.isBuffer(value) ? { base64: value.toString("base64") } : value,
      ]),
    ),
  );

const rowSchema = z.record(
  z.string(),
  z.union([z.string(), z.number(), z.null(), z.strictObject({ base64: z.string() })]),
);

/** The row of a line. */
export const lineRow = (line: string): Record<string, string | number | null | Buffer> =>
  Object.fromEntries(
    Object.entries(rowSchema.parse(JSON.parse(line))).map(([column, value]) => [
      column,
      typeof value === "object" && value !== null ? Buffer.from(value.base64, "base64") : value,
    ]),
  );
