import { setImmediate } from "node:timers/promises";
import type { ArrivedFact, FactBody } from "@pinwright/contract";
import { factBodySchema } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import { inChunks } from "../database/in-chunks.ts";
import { comparable } from "../database/number.ts";
import type { Tables } from "../database/schema.ts";
import type { ChangedUnits, RecordStore, StandingRows } from "../store.ts";
import { unitsOf } from "./chain.ts";
import { factOf } from "./fact-row.ts";

const AT_ONCE = 2_000;
/** Values of one statement. */
const VALUES_AT_ONCE = 100;

/** Facts that say where a unit stands: not its steps, readings and lots, which are by far the most. */
const STANDING_KINDS: readonly FactBody["kind"][] = [
  ...(["begun", "fitted", "removed", "defect", "mended"] as const),
  ...(["handed", "sent", "arrived", "override", "released", "correction"] as const),
];

/** What is asked of the records to say where units stand. */
export const standing = ({
  db,
}: Database): Pick<RecordStore, "lastFact" | "changedSince" | "standing" | "minutes"> => ({
  async lastFact() {
    const last = await db
      .selectFrom("facts")
      .select((row) => row.fn.max("no").as("no"))
      .executeTakeFirst();
    const waiting = await db.selectFrom("facts").select("no").where("aside", "=", "gap").execute();
    // The greatest of no rows is null, which the builder's type leaves out.
    const no: number | null | undefined = last?.no;
    return { no: no ?? 0, waiting: waiting.map((row) => row.no) };
  },

  changedSince: (no, waiting) => changedSince(db, no, waiting),

  async standing(units) {
    const facts: ArrivedFact[] = [];
    const last: StandingRows["last"][number][] = [];
    const failed: StandingRows["failed"][number][] = [];
    for (const some of inChunks(units, VALUES_AT_ONCE)) {
      const rows = await db
        .selectFrom("facts")
        .selectAll()
        .where("kind", "in", [...STANDING_KINDS])
        .where("aside", "is", null)
        .where(
          "no",
          "in",
          db
            .selectFrom("fact_units")
            .select("no")
            .where("unit", "in", [...some]),
        )
        .execute();
      facts.push(...rows.map(factOf));
      const ends = await db
        .selectFrom("facts")
        .innerJoin(
          db
            .selectFrom("fact_units")
            .select(["unit", (row) => row.fn.max("no").as("last")])
            .where("unit", "in", [...some])
            .groupBy("unit")
            .as("ends"),
          "ends.last",
          "facts.no",
        )
        .select(["ends.unit", "facts.at", "facts.person"])
        .execute();
      last.push(...ends);
      const bad = await db
        .selectFrom("passes")
        .innerJoin("readings", "readings.no", "passes.last_no")
        .select(["passes.unit", "passes.test", "readings.value", "readings.at"])
        .where("passes.unit", "in", [...some])
        .where("passes.last_good", "=", 0)
        .orderBy("passes.unit")
        .orderBy("passes.test")
        .execute();
      failed.push(...bad);
    }
    return { facts, last, failed };
  },

  async *minutes() {
    const gone = new Set<string>();
    for (const row of await db
      .selectFrom("facts")
      .select("body")
      .where("kind", "=", "correction")
      .where("aside", "is", null)
      .execute()) {
      const body = factBodySchema.parse(JSON.parse(row.body));
      if (body.kind === "correction") gone.add(`${body.stream} ${body.seq}`);
    }
    for (let no = 0; ; ) {
      const rows = await db
        .selectFrom("facts")
        .select(["no", "stream", "seq", "body"])
        .where("no", ">", comparable(no))
        .where("kind", "=", "step-done")
        .where("aside", "is", null)
        .orderBy("no")
        .limit(comparable(AT_ONCE))
        .execute();
      const last = rows.at(-1);
      if (last === undefined) return;
      no = last.no;
      // Others go first in between: a database in this process lets nobody else in meanwhile.
      await setImmediate();
      yield rows.flatMap((row) => {
        const body = factBodySchema.parse(JSON.parse(row.body));
        if (body.kind !== "step-done" || body.minutes === undefined) return [];
        if (gone.has(`${row.stream} ${row.seq}`)) return [];
        return [{ unit: body.unit, step: body.step, minutes: body.minutes }];
      });
    }
  },
});

async function changedSince(
  db: Kysely<Tables>,
  after: number,
  waiting: readonly number[],
): Promise<ChangedUnits> {
  const units = new Set<string>();
  const still: number[] = [];
  let last = after;
  const take = async (rows: readonly Tables["facts"][]): Promise<void> => {
    for (const { no, aside, body: text } of rows) {
      if (aside === "gap") still.push(no);
      if (aside !== null) continue;
      const body = factBodySchema.parse(JSON.parse(text));
      const named = body.kind === "correction" ? await unitsCorrected(db, body) : unitsOf(body);
      for (const unit of named) units.add(unit);
    }
  };
  for (const some of inChunks(waiting, VALUES_AT_ONCE))
    await take(
      await db
        .selectFrom("facts")
        .selectAll()
        .where("no", "in", [...some])
        .execute(),
    );
  for (;;) {
    const rows = await db
      .selectFrom("facts")
      .selectAll()
      .where("no", ">", comparable(last))
      .orderBy("no")
      .limit(comparable(AT_ONCE))
      .execute();
    await take(rows);
    last = rows.at(-1)?.no ?? last;
    if (rows.length < AT_ONCE) return { units: [...units], no: last, waiting: still };
  }
}

async function unitsCorrected(
  db: Kysely<Tables>,
  { stream, seq }: { readonly stream: string; readonly seq: number },
): Promise<readonly string[]> {
  const rows = await db
    .selectFrom("facts")
    .select("body")
    .where("stream", "=", stream)
    .where("seq", "=", seq)
    .execute();
  return rows.flatMap(({ body }) => unitsOf(factBodySchema.parse(JSON.parse(body))));
}
