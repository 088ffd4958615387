import { factBodySchema } from "@pinwright/contract";
import { type Kysely, sql } from "kysely";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";

type Pass = Tables["passes"];
type Flag = Pass["first_good"];

/** A result of a test, as it came. */
export interface TestResult {
  readonly no: number;
  readonly unit: string;
  readonly test: string;
  readonly at: string;
  readonly good: Flag;
  readonly station: string;
}

const ROWS_AT_ONCE = 60;
const UNITS_AT_ONCE = 500;

const isBefore = (a: { at: string; no: number }, b: { at: string; no: number }): boolean =>
  a.at < b.at || (a.at === b.at && a.no < b.no);

/** Keeps which result of each test of a unit was the first and which is the last, whatever the order of arrival. */
export async function keepPasses(db: Kysely<Tables>, results: readonly TestResult[]): Promise<void> {
  if (results.length === 0) return;
  // One row of a statement may not meet another of the same key, so they are brought together before.
  const ends = new Map<string, { first: TestResult; last: TestResult }>();
  for (const result of results) {
    const key = `${result.unit} ${result.test}`;
    const known = ends.get(key);
    if (known === undefined) ends.set(key, { first: result, last: result });
    else {
      if (isBefore(result, known.first)) known.first = result;
      if (isBefore(known.last, result)) known.last = result;
    }
  }
  const units = await unitsOf(db, [...new Set(results.map(({ unit }) => unit))]);
  const rows = [...ends.values()].map(
    ({ first, last }): Pass => ({
      ...{ unit: first.unit, test: first.test },
      ...(units.get(first.unit) ?? { book: "", what: "", type: "" }),
      ...{ first_no: first.no, first_at: first.at, first_good: first.good, first_station: first.station },
      ...{ last_no: last.no, last_at: last.at, last_good: last.good },
    }),
  );
  for (const some of inChunks(rows, ROWS_AT_ONCE))
    await db
      .insertInto("passes")
      .values([...some])
      .onConflict((conflict) =>
        conflict.columns(["unit", "test"]).doUpdateSet({
          first_no: earlier("first_no"),
          first_at: earlier("first_at"),
          first_good: earlier<Flag>("first_good"),
          first_station: earlier("first_station"),
          last_no: later("last_no"),
          last_at: later("last_at"),
          last_good: later<Flag>("last_good"),
        }),
      )
      .execute();
}

/** What a row takes of one that comes: its first result where that is before, its last where that is after. */
const earlier = <T extends string | number = never>(column: keyof Pass) =>
  sql<T>`case when excluded.first_at < passes.first_at
    or (excluded.first_at = passes.first_at and excluded.first_no < passes.first_no)
    then ${sql.ref(`excluded.${column}`)} else ${sql.ref(`passes.${column}`)} end`;
const later = <T extends string | number = never>(column: keyof Pass) =>
  sql<T>`case when excluded.last_at > passes.last_at
    or (excluded.last_at = passes.last_at and excluded.last_no > passes.last_no)
    then ${sql.ref(`excluded.${column}`)} else ${sql.ref(`passes.${column}`)} end`;

async function unitsOf(
  db: Kysely<Tables>,
  ids: readonly string[],
): Promise<ReadonlyMap<string, Pick<Pass, "book" | "what" | "type">>> {
  const found = new Map<string, Pick<Pass, "book" | "what" | "type">>();
  for (const some of inChunks(ids, UNITS_AT_ONCE)) {
    const rows = await db
      .selectFrom("units")
      .select(["unit", "book", "what", "type"])
      .where("unit", "in", [...some])
      .execute();
    for (const { unit, ...rest } of rows) found.set(unit, rest);
  }
  return found;
}

/** Finds first and last anew, after a reading was corrected and is no longer among the readings. */
export async function refindPass(db: Kysely<Tables>, unit: string, test: string): Promise<void> {
  await db.deleteFrom("passes").where("unit", "=", unit).where("test", "=", test).execute();
  const rows = await db
    .selectFrom("fact_units")
    .innerJoin("readings", "readings.no", "fact_units.no")
    .innerJoin("facts", "facts.no", "fact_units.no")
    .select(["readings.no", "readings.at", "readings.good", "facts.body"])
    .where("fact_units.unit", "=", unit)
    .where("readings.test", "=", test)
    .execute();
  await keepPasses(
    db,
    rows.map(({ no, at, good, body }) => {
      const read = factBodySchema.parse(JSON.parse(body));
      const station = read.kind === "reading" ? (read.station ?? "") : "";
      return { no, unit, test, at, good, station };
    }),
  );
}
