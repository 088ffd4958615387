import type { Database } from "./database/database.ts";
import { comparable } from "./database/number.ts";
import type { AuditStore } from "./store.ts";

const COUNTER = "audit";

/** Who did what; entries are added and never changed. */
export const auditStore = ({ db, write }: Database, now: () => string): AuditStore => ({
  add: ({ personName, action, detail, from }) =>
    write(async (held) => {
      const { value } = await held
        .insertInto("counters")
        .values({ name: COUNTER, value: 1 })
        .onConflict((conflict) =>
          conflict.column("name").doUpdateSet((row) => ({ value: row("counters.value", "+", 1) })),
        )
        .returning("value")
        .executeTakeFirstOrThrow();
      await held
        .insertInto("audit")
        .values({ no: value, at: now(), person_name: personName, action, detail, origin: from })
        .execute();
    }),
  async list(before, limit) {
    const rows = await db
      .selectFrom("audit")
      .selectAll()
      .where("no", "<", comparable(before))
      .orderBy("no", "desc")
      .limit(comparable(limit))
      .execute();
    return rows.map((row) => ({
      no: row.no,
      at: row.at,
      personName: row.person_name,
      action: row.action,
      detail: row.detail,
      from: row.origin,
    }));
  },
});
