import { sql } from "kysely";
import type { Migration } from "./types.ts";

/** What happened on the floor, and what is looked up in it. */
export const VERSION_3: Migration = {
  version: 3,
  about: "facts of the floor, heads of their streams, and what is found by unit, test, lot and place",
  async up(schema, { text, integer }) {
    await schema
      .createTable("facts")
      .addColumn("no", integer, (c) => c.notNull().primaryKey())
      .addColumn("stream", text, (c) => c.notNull())
      .addColumn("seq", integer, (c) => c.notNull())
      .addColumn("before", text, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .addColumn("received_at", text, (c) => c.notNull())
      .addColumn("person", text, (c) => c.notNull())
      .addColumn("kind", text, (c) => c.notNull())
      .addColumn("body", text, (c) => c.notNull())
      .addColumn("aside", text)
      .execute();
    await schema.createIndex("facts_stream").on("facts").columns(["stream", "seq"]).execute();
    await schema
      .createIndex("facts_aside")
      .on("facts")
      .columns(["stream"])
      .where(sql.ref("aside"), "is not", null)
      .execute();
    await schema
      .createTable("stream_heads")
      .addColumn("stream", text, (c) => c.notNull().primaryKey())
      .addColumn("seq", integer, (c) => c.notNull())
      .addColumn("hash", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .execute();
    await schema
      .createTable("fact_units")
      .addColumn("unit", text, (c) => c.notNull())
      .addColumn("no", integer, (c) => c.notNull().references("facts.no"))
      .addPrimaryKeyConstraint("fact_units_key", ["unit", "no"])
      .execute();
    await schema
      .createTable("readings")
      .addColumn("no", integer, (c) => c.notNull().primaryKey().references("facts.no"))
      .addColumn("test", text, (c) => c.notNull())
      .addColumn("unit", text, (c) => c.notNull())
      .addColumn("value", "double precision")
      .addColumn("good", integer, (c) => c.notNull())
      .addColumn("instrument", text, (c) => c.notNull())
      .addColumn("at", text, (c) => c.notNull())
      .execute();
    await schema.createIndex("readings_test").on("readings").columns(["test", "at", "no"]).execute();
    await schema.createIndex("readings_instrument").on("readings").columns(["instrument", "at"]).execute();
    await schema
      .createTable("unit_lots")
      .addColumn("no", integer, (c) => c.notNull().primaryKey().references("facts.no"))
      .addColumn("part", text, (c) => c.notNull())
      .addColumn("lot", text, (c) => c.notNull())
      .addColumn("unit", text, (c) => c.notNull())
      .execute();
    await schema.createIndex("unit_lots_part").on("unit_lots").columns(["part", "lot"]).execute();
    await schema.createIndex("unit_lots_lot").on("unit_lots").columns(["lot"]).execute();
    await schema
      .createTable("unit_links")
      .addColumn("no", integer, (c) => c.notNull().primaryKey().references("facts.no"))
      .addColumn("unit", text, (c) => c.notNull())
      .addColumn("within", text, (c) => c.notNull())
      .addColumn("place", text, (c) => c.notNull())
      .execute();
    await schema.createIndex("unit_links_unit").on("unit_links").columns(["unit"]).execute();
    await schema.createIndex("unit_links_within").on("unit_links").columns(["within"]).execute();
    await schema
      .createTable("units")
      .addColumn("unit", text, (c) => c.notNull().primaryKey())
      .addColumn("no", integer, (c) => c.notNull().references("facts.no"))
      .addColumn("what", text, (c) => c.notNull())
      .addColumn("type", text, (c) => c.notNull())
      .addColumn("book", text, (c) => c.notNull())
      .addColumn("revision", text, (c) => c.notNull())
      .addColumn("run", text, (c) => c.notNull())
      .execute();
    await schema.createIndex("units_type").on("units").columns(["type", "revision"]).execute();
    await schema.createIndex("units_run").on("units").columns(["run"]).execute();
    await schema.createIndex("facts_person").on("facts").columns(["person", "at"]).execute();
  },
};
