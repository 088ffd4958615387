import type { Migration } from "./types.ts";

/** Results of tests by their day. */
export const VERSION_7: Migration = {
  version: 7,
  about: "first results of tests by their time",
  async up(schema) {
    await schema
      .createIndex("passes_when")
      .on("passes")
      .columns([
        "book",
        "first_at",
        "type",
        "test",
        "first_station",
        "first_good",
        "last_good",
        "unit",
        "what",
      ])
      .execute();
  },
};
