import { sql } from "kysely";
import type { Migration } from "./types.ts";

/** What a recall by builder or time is found by: facts by time, and the units of a fact. */
export const VERSION_8: Migration = {
  version: 8,
  about: "facts by time, units by fact, so that a recall by builder or time does not read everything",
  async up(schema) {
    await schema
      .createIndex("facts_at")
      .on("facts")
      .columns(["at"])
      .where(sql.ref("aside"), "is", null)
      .execute();
    await schema.createIndex("fact_units_no").on("fact_units").columns(["no", "unit"]).execute();
  },
};
