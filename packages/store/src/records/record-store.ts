import type { FactBody, UnitKind } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import type { RecordStore } from "../store.ts";
import { FactQueue } from "./fact-queue.ts";
import { lookUp } from "./look-up.ts";
import { releaseUnit } from "./release.ts";
import { standing } from "./standing.ts";
import { addOwnFacts } from "./take.ts";
import { verifyStreams } from "./verify.ts";

/** Letter that the serial numbers of a kind begin with. */
const LETTERS: Readonly<Record<UnitKind, string>> = {
  machine: "m",
  board: "b",
  harness: "h",
  mechanism: "a",
};
const DIGITS = 6;

/** The next serial numbers of a kind. */
async function serials(db: Kysely<Tables>, what: UnitKind, count: number): Promise<readonly string[]> {
  const name = `serial-${what}`;
  const { value } = await db
    .insertInto("counters")
    .values({ name, value: count })
    .onConflict((conflict) =>
      conflict.column("name").doUpdateSet((row) => ({ value: row("counters.value", "+", count) })),
    )
    .returning("value")
    .executeTakeFirstOrThrow();
  return Array.from(
    { length: count },
    (_, i) => `${LETTERS[what]}-${String(value - count + 1 + i).padStart(DIGITS, "0")}`,
  );
}

/** What happened on the floor. */
export function recordStore(database: Database, now: () => string): RecordStore {
  const queue = new FactQueue(database, now);
  return {
    ...lookUp(database),
    ...standing(database),
    take: (facts, refuse) => queue.take(facts, refuse),
    begin: (units, person) =>
      database.write(async (db) => {
        const numbers = new Map<UnitKind, string[]>();
        for (const what of new Set(units.map((unit) => unit.what)))
          numbers.set(what, [
            ...(await serials(db, what, units.filter((unit) => unit.what === what).length)),
          ]);
        const bodies = units.map((unit): FactBody => {
          const number = numbers.get(unit.what)?.shift() ?? "";
          return { kind: "begun", unit: number, ...unit, options: [...unit.options] };
        });
        return addOwnFacts(db, database.kind, bodies, person, now());
      }),
    addOwn: (body, person) =>
      database.write(async (db) => {
        const [arrived] = await addOwnFacts(db, database.kind, [body], person, now());
        if (arrived === undefined) throw new RangeError("One fact was added.");
        return arrived;
      }),
    release: (unit, seen, person) =>
      database.write((db) => releaseUnit(db, database.kind, unit, seen, person, now())),
    verify: (heads = []) => verifyStreams(database, heads),
  };
}
