import { type SqlBool, sql } from "kysely";
import type { Migration } from "./types.ts";

/** A name of the stream and the place of the fact that a correction speaks of. */
function targetOf(body: string): { readonly stream: string; readonly seq: number } {
  const { stream, seq }: { stream: string; seq: number } = JSON.parse(body);
  return { stream, seq };
}

/** Corrections by what they correct, so that a fact that comes after its correction is found corrected. */
export const VERSION_5: Migration = {
  version: 5,
  about: "corrections by the fact that they correct; recalls; parts that were used instead of others",
  async up(schema, { text, integer }, db) {
    await schema
      .createTable("corrections")
      .addColumn("no", integer, (c) => c.notNull().primaryKey().references("facts.no"))
      .addColumn("stream", text, (c) => c.notNull())
      .addColumn("seq", integer, (c) => c.notNull())
      .execute();
    await schema.createIndex("corrections_of").on("corrections").columns(["stream", "seq"]).execute();
    await schema
      .createIndex("facts_recall")
      .on("facts")
      .columns(["no"])
      .where(sql<SqlBool>`kind in ('recall', 'recall-ended', 'correction')`)
      .execute();
    const { rows: corrections } = await sql<{ no: number; body: string }>`
      select no, body from facts where kind = 'correction' and aside is null`.execute(db);
    for (const { no, body } of corrections) {
      const { stream, seq } = targetOf(body);
      await sql`insert into corrections (no, stream, seq) values (${no}, ${stream}, ${seq})`.execute(db);
      // Until then a correction was not among the facts of the units that it speaks of.
      await sql`
        insert into fact_units (unit, no)
        select distinct unit, cast(${no} as integer) from fact_units
        where no in (select no from facts where stream = ${stream} and seq = ${seq} and aside is null)
        on conflict do nothing`.execute(db);
    }
    const { rows: alternates } = await sql<{ no: number; body: string }>`
      select no, body from facts where kind = 'alternate' and aside is null`.execute(db);
    for (const { no, body } of alternates) {
      const { unit, instead }: { unit: string; instead: string } = JSON.parse(body);
      await sql`
        insert into unit_lots (no, part, lot, unit) values (${no}, ${instead}, '', ${unit})`.execute(db);
    }
  },
};
