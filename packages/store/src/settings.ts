import { createHash } from "node:crypto";
import { mappingSchema } from "@pinwright/contract";
import type { Database } from "./database/database.ts";
import type { SettingStore } from "./store.ts";

/** Settings of the server, and how foreign headings were matched to columns. */
export const settingStore = ({ db, write }: Database): SettingStore => ({
  async get(key) {
    const row = await db.selectFrom("settings").select("value").where("name", "=", key).executeTakeFirst();
    return row?.value ?? null;
  },
  set: (key, value) =>
    write(async (held) => {
      await held
        .insertInto("settings")
        .values({ name: key, value })
        .onConflict((conflict) => conflict.column("name").doUpdateSet({ value }))
        .execute();
    }),
  async mappings() {
    const rows = await db
      .selectFrom("mappings")
      .selectAll()
      .orderBy("table_name")
      .orderBy("header")
      .execute();
    return rows.map(({ table_name, header, columns }) =>
      mappingSchema.parse({ table: table_name, header: JSON.parse(header), columns: JSON.parse(columns) }),
    );
  },
  keepMapping: ({ table, header, columns }) =>
    write(async (held) => {
      // Headings can be longer than what an index takes, so their hash stands for them.
      const id = createHash("sha256")
        .update(JSON.stringify([table, header]))
        .digest("hex");
      const kept = JSON.stringify(columns);
      await held
        .insertInto("mappings")
        .values({ id, table_name: table, header: JSON.stringify(header), columns: kept })
        .onConflict((conflict) => conflict.column("id").doUpdateSet({ columns: kept }))
        .execute();
    }),
});
