import { type SqlBool, sql } from "kysely";
import type { Migration } from "./types.ts";

/** First and last result of each test of each unit, and defects by their time. */
export const VERSION_4: Migration = {
  version: 4,
  about: "first and last result of each test of each unit; defects and what was mended by time",
  async up(schema, { text, integer }, db) {
    await schema
      .createTable("passes")
      .addColumn("unit", text, (c) => c.notNull())
      .addColumn("test", text, (c) => c.notNull())
      .addColumn("book", text, (c) => c.notNull())
      .addColumn("what", text, (c) => c.notNull())
      .addColumn("type", text, (c) => c.notNull())
      .addColumn("first_no", integer, (c) => c.notNull().references("facts.no"))
      .addColumn("first_at", text, (c) => c.notNull())
      .addColumn("first_good", integer, (c) => c.notNull())
      .addColumn("first_station", text, (c) => c.notNull())
      .addColumn("last_no", integer, (c) => c.notNull().references("facts.no"))
      .addColumn("last_at", text, (c) => c.notNull())
      .addColumn("last_good", integer, (c) => c.notNull())
      .addPrimaryKeyConstraint("passes_key", ["unit", "test"])
      .execute();
    // Where earlier readings were taken is only in their facts; stations of these stay blank.
    await sql`
      insert into passes (unit, test, book, what, type, first_no, first_at, first_good, first_station,
        last_no, last_at, last_good)
      select f.unit, f.test, coalesce(u.book, ''), coalesce(u.what, ''), coalesce(u.type, ''),
        f.no, f.at, f.good, '', l.no, l.at, l.good
      from (select no, unit, test, at, good,
          row_number() over (partition by unit, test order by at, no) as place from readings) f
      join (select no, unit, test, at, good,
          row_number() over (partition by unit, test order by at desc, no desc) as place from readings) l
        on l.unit = f.unit and l.test = f.test and l.place = 1
      left join units u on u.unit = f.unit
      where f.place = 1`.execute(db);
    // Everything that a yield is counted from, so that the table itself is not read for it.
    await schema
      .createIndex("passes_yield")
      .on("passes")
      .columns([
        "book",
        "type",
        "test",
        "first_station",
        "first_at",
        "first_good",
        "last_good",
        "unit",
        "what",
      ])
      .execute();
    await schema
      .createIndex("passes_first_failed")
      .on("passes")
      .columns(["book", "first_at"])
      .where(sql.ref("first_good"), "=", sql.lit(0))
      .execute();
    await schema
      .createIndex("passes_last_failed")
      .on("passes")
      .columns(["book", "unit"])
      .where(sql.ref("last_good"), "=", sql.lit(0))
      .execute();
    await schema
      .createIndex("facts_quality")
      .on("facts")
      .columns(["at"])
      .where(sql<SqlBool>`kind in ('defect', 'mended', 'correction')`)
      .execute();
  },
};
