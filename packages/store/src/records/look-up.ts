import type { ArrivedFact, KeptUnit } from "@pinwright/contract";
import { type Kysely, type RawBuilder, type SqlBool, sql } from "kysely";
import type { Database } from "../database/database.ts";
import { inChunks } from "../database/in-chunks.ts";
import { comparable } from "../database/number.ts";
import type { Tables } from "../database/schema.ts";
import type { RecordStore, Trace, TracedUnit } from "../store.ts";
import { factOf } from "./fact-row.ts";
import { PACKED, unpacked } from "./packed.ts";

/** Facts of which recalls are made up, and corrections: there are few, and an index holds just these. */
export const RECALL_FACTS = sql<SqlBool>`kind in ('recall', 'recall-ended', 'correction') and aside is null`;

/** A unit and all that is or was inside it, as `inner_units` of a recursive query. */
export const innerUnits = (unit: string) => sql`inner_units(unit) as (
    select unit from fact_units where unit = ${unit}
    union
    select unit_links.unit from unit_links join inner_units on unit_links.within = inner_units.unit
  )`;

/** Facts, units, readings and what leads from one to the other. */
export const lookUp = ({
  db,
  kind,
}: Database): Pick<
  RecordStore,
  "after" | "aside" | "recallFacts" | "ofUnit" | "units" | "trace" | "readings" | "heads"
> => ({
  async after(no, limit) {
    const rows = await db
      .selectFrom("facts")
      .selectAll()
      .where("no", ">", comparable(no))
      .orderBy("no")
      .limit(comparable(limit))
      .execute();
    return rows.map(factOf);
  },
  async aside(no, limit) {
    const rows = await db
      .selectFrom("facts")
      .selectAll()
      .where("aside", "is not", null)
      // Written so that the index of the few that are aside is used, and not the key of all facts.
      .where(sql<SqlBool>`+no > ${comparable(no)}`)
      .orderBy(sql`+no`)
      .limit(comparable(limit))
      .execute();
    return rows.map(factOf);
  },
  async recallFacts() {
    const rows = await db.selectFrom("facts").selectAll().where(RECALL_FACTS).orderBy("no").execute();
    return rows.map(factOf);
  },
  ofUnit: (unit) => historyOf(db, kind, unit),
  async units({ what, type, book, run }) {
    let query = db.selectFrom("units").selectAll();
    if (what !== undefined) query = query.where("what", "=", what);
    if (type !== undefined) query = query.where("type", "=", type);
    if (book !== undefined) query = query.where("book", "=", book);
    if (run !== undefined) query = query.where("run", "=", run);
    const rows = await query.orderBy("unit").execute();
    return rows.map((row): KeptUnit => ({ ...row, what: row.what as KeptUnit["what"] }));
  },
  trace: (trace) => traced(db, trace),
  async readings(test, limit) {
    const rows = await db
      .selectFrom("readings")
      .selectAll()
      .where("test", "=", test)
      .orderBy("at", "desc")
      .orderBy("no", "desc")
      .limit(comparable(limit))
      .execute();
    return rows.reverse().map(({ no, unit, value, good, instrument, at }) => ({
      ...{ no, unit, value, good: good === 1, instrument, at },
    }));
  },
  async heads() {
    const rows = await db.selectFrom("stream_heads").selectAll().orderBy("stream").execute();
    return rows.map(({ stream, seq, hash }) => ({ stream, seq, hash }));
  },
});

/** Units of one statement. */
const UNITS_AT_ONCE = 1_000;

/**
 * Facts that name a unit or anything inside it. The units are read first: a database that does not know beforehand how few
 * they are reads all facts instead.
 */
async function historyOf(
  db: Kysely<Tables>,
  kind: Database["kind"],
  unit: string,
): Promise<readonly ArrivedFact[]> {
  const inner = await sql<{ unit: string }>`
    with recursive ${innerUnits(unit)} select unit from inner_units`.execute(db);
  const found = new Map<number, ArrivedFact>();
  for (const some of inChunks(inner.rows, UNITS_AT_ONCE)) {
    const numbers = sql`select no from fact_units where unit in (${sql.join(some.map((one) => one.unit))})`;
    // PostgreSQL joins what stands after `in`, and reads all facts for it.
    const isOne = kind === "postgres" ? sql`no = any(array(${numbers}))` : sql`no in (${numbers})`;
    const each = sql`select facts.no, ${PACKED} as packed from facts where ${isOne}`;
    // The driver of PostgreSQL takes one long text more quickly than thousands.
    const { rows } =
      kind === "postgres"
        ? await sql<{ packed: string }>`
            select coalesce(string_agg(packed, ',' order by no), '') as packed from (${each}) as each`.execute(
            db,
          )
        : await sql<{ packed: string }>`${each} order by facts.no`.execute(db);
    // One statement is enough but for a unit of a thousand others.
    if (inner.rows.length <= UNITS_AT_ONCE) return unpacked(rows);
    for (const fact of unpacked(rows)) found.set(fact.no, fact);
  }
  // Facts that name units of two statements came twice.
  return [...found.values()].sort((a, b) => a.no - b.no);
}

/** Units that a part or lot went into; a part without a lot is also in units of the types that have it, or is the unit. */
function usedIn(
  part: string | undefined,
  types: readonly string[],
  lot: string | undefined,
): RawBuilder<unknown> {
  const ofPart = part === undefined ? sql`` : sql`and part = ${part}`;
  const ofLot = lot === undefined ? sql`` : sql`and lot = ${lot}`;
  const ofTypes =
    part === undefined || lot !== undefined
      ? sql``
      : sql`union select unit from units where type in (${sql.join([part, ...types])})`;
  return sql`select unit from (
    select unit from unit_lots where true ${ofPart} ${ofLot} ${ofTypes}) as used`;
}

/** Units for which everything that a trace asks holds, then all that they are or were in. */
async function traced(db: Kysely<Tables>, trace: Trace): Promise<readonly TracedUnit[]> {
  const conditions: RawBuilder<unknown>[] = [];
  const { part, types = [], lot, type, revision, person, instrument, from, to } = trace;
  if (part !== undefined || lot !== undefined) conditions.push(usedIn(part, types, lot));
  if (type !== undefined || revision !== undefined)
    conditions.push(sql`select unit from units where true
      ${type === undefined ? sql`` : sql`and type = ${type}`}
      ${revision === undefined ? sql`` : sql`and revision = ${revision}`}`);
  const times = sql`${from === undefined ? sql`` : sql`and at >= ${from}`} ${to === undefined ? sql`` : sql`and at < ${to}`}`;
  if (instrument !== undefined)
    conditions.push(sql`select unit from readings where instrument = ${instrument} ${times}`);
  else if (person !== undefined || from !== undefined || to !== undefined)
    conditions.push(sql`select unit from fact_units where no in (
      select no from facts where aside is null ${person === undefined ? sql`` : sql`and person = ${person}`} ${times})`);
  if (conditions.length === 0) return [];
  const { rows } = await sql<{ unit: string; direct: number }>`
    with recursive found(unit) as (${sql.join(conditions, sql` intersect `)}),
    outer_units(unit) as (
      select unit from found
      union
      select unit_links.within from unit_links join outer_units on unit_links.unit = outer_units.unit
    )
    select unit, case when unit in (select unit from found) then 1 else 0 end as direct
    from outer_units order by unit`.execute(db);
  return rows.map(({ unit, direct }) => ({ unit, isDirect: Number(direct) === 1 }));
}
