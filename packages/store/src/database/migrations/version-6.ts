import { sql } from "kysely";
import type { Migration } from "./types.ts";

/** Where sessions were begun. */
export const VERSION_6: Migration = {
  version: 6,
  about: "address of the device that a session was begun at",
  async up(schema, { text }) {
    await schema
      .alterTable("sessions")
      .addColumn("origin", text, (c) => c.notNull().defaultTo(sql.lit("")))
      .execute();
  },
};
