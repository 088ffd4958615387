import { type ArrivedFact, SERVER_STREAM } from "@pinwright/contract";
import { type Kysely, sql } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import type { SeenFacts } from "../store.ts";
import { innerUnits, RECALL_FACTS } from "./look-up.ts";
import { addOwnFacts, FACT_COUNTER, lockHeads } from "./take.ts";

/**
 * Writes that a unit is released, with the heads of all streams, inside a transaction in which nobody else adds facts; null
 * when more is known of it now than was looked at.
 */
export async function releaseUnit(
  db: Kysely<Tables>,
  kind: Database["kind"],
  unit: string,
  seen: SeenFacts,
  person: string,
  now: string,
): Promise<ArrivedFact | null> {
  // In the order in which everybody locks: heads of streams, then the counter, which whoever adds facts waits for.
  await lockHeads(db, kind, [SERVER_STREAM]);
  await db
    .updateTable("counters")
    .set((row) => ({ value: row.ref("value") }))
    .where("name", "=", FACT_COUNTER)
    .execute();
  const { rows: known } = await sql<{ facts: number; recalls: number }>`
    with recursive ${innerUnits(unit)}
    select
      (select count(distinct no) from fact_units where unit in (select unit from inner_units)) as facts,
      (select count(*) from facts where ${RECALL_FACTS}) as recalls`.execute(db);
  const [counted] = known;
  if (Number(counted?.facts) !== seen.facts || Number(counted?.recalls) !== seen.recalls) return null;
  const heads = await db
    .selectFrom("stream_heads")
    .selectAll()
    .where("seq", ">", 0)
    .orderBy("stream")
    .execute();
  const body = {
    kind: "released" as const,
    unit,
    heads: heads.map(({ stream, seq, hash }): [string, number, string] => [stream, seq, hash]),
  };
  const [arrived] = await addOwnFacts(db, kind, [body], person, now);
  return arrived ?? null;
}
