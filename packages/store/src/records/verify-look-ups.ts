import { setImmediate } from "node:timers/promises";
import { factBodySchema, SERVER_STREAM, type StreamFault } from "@pinwright/contract";
import { type Kysely, sql } from "kysely";
import type { Tables } from "../database/schema.ts";
import { SERVER_ONLY, unitsOf } from "./chain.ts";
import { Spread } from "./spread.ts";

const ONLY_SERVERS: ReadonlySet<string> = SERVER_ONLY;
/** Numbers that are looked at at once; others go first in between. */
const NUMBERS_AT_ONCE = 1_000;

/** What a row of a table says, as one text; numbers of PostgreSQL's bigger types come as texts. */
const textOf = (values: readonly unknown[]): string => JSON.stringify(values.map((value) => `${value}`));

/** Rows by the number of their fact. */
class Rows {
  readonly #byNo = new Map<number, string[]>();

  add(no: number, table: string, values: readonly unknown[]): void {
    const list = this.#byNo.get(no);
    const text = `${table} ${textOf(values)}`;
    if (list === undefined) this.#byNo.set(no, [text]);
    else list.push(text);
  }

  numbers(): Iterable<number> {
    return this.#byNo.keys();
  }

  of(no: number): string {
    return [...new Set(this.#byNo.get(no))].sort().join("\n");
  }
}

/**
 * Says which facts are not found by what they say: what is looked up was changed, dropped or inserted, or whether the fact
 * counts was.
 */
export async function verifyLookUps(db: Kysely<Tables>): Promise<readonly StreamFault[]> {
  const faults: StreamFault[] = [];
  const { rows } = await sql<{ last: number | null }>`select max(no) as last from facts`.execute(db);
  const last = Number(rows[0]?.last ?? 0);
  for (let from = 0; from <= last; from += NUMBERS_AT_ONCE) {
    faults.push(...(await verifyNumbers(db, from, from + NUMBERS_AT_ONCE)));
    await setImmediate();
  }
  return faults;
}

async function verifyNumbers(db: Kysely<Tables>, from: number, to: number): Promise<readonly StreamFault[]> {
  const facts = await db
    .selectFrom("facts")
    .select(["no", "stream", "seq", "at", "kind", "body", "aside"])
    .where("no", ">=", from)
    .where("no", "<", to)
    .execute();
  const struck = await correctedIn(db, from, to);
  const expected = new Rows();
  const spread = new Spread();
  for (const { no, kind, at, body: text, aside } of facts) {
    const body = aside === null ? parsed(text) : null;
    // A row that says nothing readable was found in its stream.
    if (body === null || body.kind !== kind) continue;
    for (const unit of unitsOf(body)) expected.add(no, "fact_units", [unit]);
    if (!struck.has(no)) spread.take({ no, fact: { body, at } });
    if (body.kind === "correction") expected.add(no, "corrections", [body.stream, body.seq]);
    if (body.kind === "begun") {
      const { unit, what, type, book, revision, run = "" } = body;
      expected.add(no, "units", [unit, what, type, book, revision, run]);
    }
  }
  for (const { no, test, unit, value, good, instrument, at } of spread.readings)
    expected.add(no, "readings", [test, unit, value, good, instrument, at]);
  for (const { no, part, lot, unit } of spread.lots) expected.add(no, "unit_lots", [part, lot, unit]);
  for (const { no, unit, within, place } of spread.links)
    expected.add(no, "unit_links", [unit, within, place]);
  for (const { no, problem, book } of spread.problems) expected.add(no, "problem_facts", [problem, book]);
  for (const { no, kind, id, problem } of spread.about)
    expected.add(no, "problem_about", [kind, id, problem]);
  for (const { no, unit } of await unitsOfCorrections(db, from, to)) expected.add(no, "fact_units", [unit]);
  const found = await foundIn(db, from, to);
  const byNo = new Map(facts.map((fact) => [fact.no, fact]));
  return [...new Set([...byNo.keys(), ...found.numbers()])].flatMap((no): StreamFault[] => {
    const fact = byNo.get(no);
    const { stream, seq } = fact ?? { stream: "", seq: no };
    const isForged = fact?.aside === null && ONLY_SERVERS.has(fact.kind) && stream !== SERVER_STREAM;
    return !isForged && found.of(no) === expected.of(no) ? [] : [{ stream, seq, what: "look-up" }];
  });
}

function parsed(text: string) {
  try {
    return factBodySchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Numbers of facts that a correction speaks of. */
async function correctedIn(db: Kysely<Tables>, from: number, to: number): Promise<ReadonlySet<number>> {
  const { rows } = await sql<{ no: number }>`
    select facts.no from facts
    join corrections on corrections.stream = facts.stream and corrections.seq = facts.seq
    where facts.no >= ${from} and facts.no < ${to}`.execute(db);
  return new Set(rows.map(({ no }) => no));
}

/** Units of the facts that corrections speak of. */
async function unitsOfCorrections(
  db: Kysely<Tables>,
  from: number,
  to: number,
): Promise<readonly { readonly no: number; readonly unit: string }[]> {
  const { rows } = await sql<{ no: number; body: string }>`
    select corrections.no, facts.body from corrections
    join facts on corrections.stream = facts.stream and corrections.seq = facts.seq and facts.aside is null
    where corrections.no >= ${from} and corrections.no < ${to}`.execute(db);
  return rows.flatMap(({ no, body: text }) => {
    const body = parsed(text);
    return body === null ? [] : unitsOf(body).map((unit) => ({ no, unit }));
  });
}

/** Columns by which each table is held against the facts. */
const LOOKED_UP = {
  fact_units: ["unit"],
  corrections: ["stream", "seq"],
  readings: ["test", "unit", "value", "good", "instrument", "at"],
  unit_lots: ["part", "lot", "unit"],
  unit_links: ["unit", "within", "place"],
  problem_facts: ["problem", "book"],
  problem_about: ["kind", "id", "problem"],
  units: ["unit", "what", "type", "book", "revision", "run"],
} as const satisfies Partial<Record<keyof Tables, readonly string[]>>;

async function foundIn(db: Kysely<Tables>, from: number, to: number): Promise<Rows> {
  const found = new Rows();
  for (const [table, columns] of Object.entries(LOOKED_UP)) {
    const names = sql.join(columns.map((column) => sql.ref(column)));
    const { rows } = await sql<Readonly<Record<string, unknown>>>`
      select no, ${names} from ${sql.table(table)} where no >= ${from} and no < ${to}`.execute(db);
    for (const row of rows)
      found.add(
        Number(row.no),
        table,
        columns.map((column) => row[column]),
      );
  }
  return found;
}
