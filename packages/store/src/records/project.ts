import { type Fact, factBodySchema } from "@pinwright/contract";
import type { Kysely } from "kysely";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import { unitsOf } from "./chain.ts";
import { keepPasses, refindPass, type TestResult } from "./passes.ts";

/** A fact with its place in the order of arrival. */
export interface Numbered {
  readonly no: number;
  readonly fact: Fact;
}

const ROWS_AT_ONCE = 100;

async function addRows<T extends keyof Tables>(
  db: Kysely<Tables>,
  table: T,
  rows: readonly Tables[T][],
): Promise<void> {
  for (const some of inChunks(rows, ROWS_AT_ONCE))
    await db
      .insertInto(table)
      .values(some as never)
      .execute();
}

/** Spreads facts that count out to where they are looked up, and takes out what they correct. */
export async function project(db: Kysely<Tables>, facts: readonly Numbered[]): Promise<void> {
  await addRows(
    db,
    "fact_units",
    facts.flatMap(({ no, fact }) => unitsOf(fact.body).map((unit) => ({ unit, no }))),
  );
  const readings: Tables["readings"][] = [];
  const results: TestResult[] = [];
  const lots: Tables["unit_lots"][] = [];
  const links: Tables["unit_links"][] = [];
  const units: Tables["units"][] = [];
  for (const { no, fact } of facts) {
    const { body, at } = fact;
    if (body.kind === "reading") {
      const { test, unit, value = null, good, instrument = "" } = body;
      readings.push({ no, test, unit, value, good: good ? 1 : 0, instrument, at });
      results.push({ no, test, unit, good: good ? 1 : 0, station: body.station ?? "", at });
    } else if (body.kind === "lot-used") lots.push({ no, part: body.part, lot: body.lot, unit: body.unit });
    else if (body.kind === "fitted")
      links.push({ no, unit: body.unit, within: body.into, place: body.place });
    else if (body.kind === "begun") {
      const { unit, what, type, book, revision, run = "" } = body;
      units.push({ unit, no, what, type, book, revision, run });
    }
  }
  await addRows(db, "readings", readings);
  await addRows(db, "unit_lots", lots);
  await addRows(db, "unit_links", links);
  await addRows(db, "units", units);
  await keepPasses(db, results);
  for (const { no, fact } of facts) if (fact.body.kind === "correction") await takeOut(db, no, fact.body);
}

/** A fact that was corrected is no longer found by what it said; its units tell of the correction. */
async function takeOut(
  db: Kysely<Tables>,
  correctionNo: number,
  { stream, seq }: { readonly stream: string; readonly seq: number },
): Promise<void> {
  const rows = await db
    .selectFrom("facts")
    .select(["no", "body"])
    .where("stream", "=", stream)
    .where("seq", "=", seq)
    .where("aside", "is", null)
    .execute();
  const bodies = rows.map(({ body }) => factBodySchema.parse(JSON.parse(body)));
  await addRows(
    db,
    "fact_units",
    bodies.flatMap(unitsOf).map((unit) => ({ unit, no: correctionNo })),
  );
  for (const { no } of rows)
    for (const table of ["readings", "unit_lots", "unit_links"] as const)
      await db.deleteFrom(table).where("no", "=", no).execute();
  for (const body of bodies) if (body.kind === "reading") await refindPass(db, body.unit, body.test);
}
