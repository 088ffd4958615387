import { type Fact, factBodySchema } from "@pinwright/contract";
import type { Kysely } from "kysely";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import { mayCorrect, placeOf, unitsOf } from "./chain.ts";
import { keepPasses, refindPass } from "./passes.ts";
import { Spread } from "./spread.ts";

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

/** A correction that speaks of a fact. */
interface By {
  readonly no: number;
  readonly person: string;
}

const CORRECTED_AT_ONCE = 100;

/** Corrections that speak of some facts, by the place of these. */
async function correctionsOf(
  db: Kysely<Tables>,
  facts: readonly Numbered[],
): Promise<ReadonlyMap<string, readonly By[]>> {
  const found = new Map<string, By[]>();
  const wanted = new Set(facts.map(({ fact }) => placeOf(fact)));
  const first = new Map<string, number>();
  for (const { fact } of facts)
    first.set(fact.stream, Math.min(fact.seq, first.get(fact.stream) ?? fact.seq));
  for (const some of inChunks([...first], CORRECTED_AT_ONCE)) {
    const rows = await db
      .selectFrom("corrections")
      .innerJoin("facts", "facts.no", "corrections.no")
      .select(["corrections.no", "corrections.stream", "corrections.seq", "facts.person"])
      .where((row) =>
        row.or(
          some.map(([stream, seq]) =>
            row.and([row("corrections.stream", "=", stream), row("corrections.seq", ">=", seq)]),
          ),
        ),
      )
      .execute();
    for (const row of rows) {
      const place = placeOf(row);
      if (wanted.has(place)) found.set(place, [...(found.get(place) ?? []), row]);
    }
  }
  return found;
}

/**
 * Spreads facts that count out to where they are looked up, and takes out what they correct. Whether a correction or what it
 * corrects comes first makes no difference.
 */
export async function project(db: Kysely<Tables>, facts: readonly Numbered[]): Promise<void> {
  const corrections = facts.flatMap(({ no, fact: { body } }) =>
    body.kind === "correction" ? [{ no, stream: body.stream, seq: body.seq }] : [],
  );
  await addRows(db, "corrections", corrections);
  const correctedBy = await correctionsOf(db, facts);
  const named: Tables["fact_units"][] = [];
  const units: Tables["units"][] = [];
  const spread = new Spread();
  for (const { no, fact } of facts) {
    const all = correctedBy.get(placeOf(fact)) ?? [];
    const by = all.filter((one) => mayCorrect(one, fact));
    for (const one of all) if (!by.includes(one)) await setAside(db, one.no);
    const numbers = [no, ...by.map((one) => one.no)];
    for (const unit of unitsOf(fact.body)) named.push(...numbers.map((one) => ({ unit, no: one })));
    if (by.length === 0) spread.take({ no, fact });
    if (fact.body.kind === "begun") {
      const { unit, what, type, book, revision, run = "" } = fact.body;
      units.push({ unit, no, what, type, book, revision, run });
    }
  }
  await addRows(db, "fact_units", named);
  await addRows(db, "readings", spread.readings);
  await addRows(db, "unit_lots", spread.lots);
  await addRows(db, "unit_links", spread.links);
  await addRows(db, "problem_facts", spread.problems);
  await addRows(db, "problem_about", spread.about);
  await addRows(db, "units", units);
  await keepPasses(db, spread.results);
  const here = new Set(facts.map(({ fact }) => placeOf(fact)));
  for (const correction of corrections) if (!here.has(placeOf(correction))) await takeOut(db, correction);
}

/** A correction that came before its fact turns out to be one that its writer may not make. */
async function setAside(db: Kysely<Tables>, no: number): Promise<void> {
  await db.updateTable("facts").set({ aside: "not-allowed" }).where("no", "=", no).execute();
  await db.deleteFrom("corrections").where("no", "=", no).execute();
}

/** A fact that was corrected is no longer found by what it said; its units tell of the correction. */
async function takeOut(
  db: Kysely<Tables>,
  { no: correctionNo, stream, seq }: Tables["corrections"],
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
    for (const table of ["readings", "unit_lots", "unit_links", "problem_facts", "problem_about"] as const)
      await db.deleteFrom(table).where("no", "=", no).execute();
  for (const body of bodies) if (body.kind === "reading") await refindPass(db, body.unit, body.test);
}
