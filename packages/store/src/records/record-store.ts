import type { FactBody, UnitKind } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import type { RecordStore } from "../store.ts";
import { FactQueue } from "./fact-queue.ts";
import { lookUp } from "./look-up.ts";
import { problemRecords } from "./problems.ts";
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

/** Serial numbers that are looked for at once. */
const NUMBERS_AT_ONCE = 100;

/**
 * The next serial numbers of a kind. One that facts name already was given out before a back-up was restored, and is on a
 * label somewhere: it is not given again.
 */
async function serials(db: Kysely<Tables>, what: UnitKind, count: number): Promise<readonly string[]> {
  const free: string[] = [];
  while (free.length < count) {
    for (const some of inChunks(await nextNumbers(db, what, count - free.length), NUMBERS_AT_ONCE)) {
      const rows = await db
        .selectFrom("fact_units")
        .select("unit")
        .distinct()
        .where("unit", "in", some)
        .execute();
      const taken = new Set(rows.map(({ unit }) => unit));
      free.push(...some.filter((unit) => !taken.has(unit)));
    }
  }
  return free;
}

async function nextNumbers(db: Kysely<Tables>, what: UnitKind, count: number): Promise<readonly string[]> {
  const { value } = await db
    .insertInto("counters")
    .values({ name: `serial-${what}`, value: count })
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
    ...problemRecords(database),
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
