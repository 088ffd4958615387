import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Fact, FactBody } from "@pinwright/contract";
import fc from "fast-check";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { TYPES } from "../../database/migrate.ts";
import { VERSION_5 } from "../../database/migrations/version-5.ts";
import { openDatabase } from "../../database/open-database.ts";
import { openStore, restoreBackUp } from "../../open.ts";
import type { RecordStore, Store, StorePlace } from "../../store.ts";
import { TestStream } from "../facts.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { testOptions } from "../options.ts";

const board = { what: "board", type: "bt.switch16", book: "heron", revision: "A", options: [] } as const;
const noted = (says: string, unit = "b-000001"): FactBody => ({ kind: "noted", unit, says });
const reading = (value: number, unit = "b-000001"): FactBody => ({
  ...{ kind: "reading", unit, test: "t.current", value, good: true, instrument: "meter-1" },
});
const correction = (stream: string, seq: number): FactBody => ({
  ...{ kind: "correction", stream, seq, why: "mistyped" },
});
const fitted = (unit: string): FactBody => ({ kind: "fitted", unit, into: "m-000001", place: "bd.1" });
const problem = (name: string, ...ids: readonly string[]): FactBody => ({
  ...{ kind: "problem", problem: name, book: "heron", from: "build", says: "does not fit" },
  about: ids.map((id) => ({ kind: "item", id })),
});
const noteOf = (name: string): FactBody => ({ kind: "problem-note", problem: name, did: "tried", says: "x" });
const lot = (name: string): FactBody => ({ kind: "lot-used", unit: "b-000001", part: "ic.1", lot: name });

/** What is looked up of facts, without the numbers that they have in the order of arrival. */
const LOOKED_UP = `
  select 'units' as what, fact_units.unit as a, '' as b, stream, seq from fact_units join facts using (no)
  union all select 'reading', unit, test, stream, seq from readings join facts using (no)
  union all select 'lot', unit, part || lot, stream, seq from unit_lots join facts using (no)
  union all select 'link', unit, within, stream, seq from unit_links join facts using (no)
  union all select 'problem', problem, book, stream, seq from problem_facts join facts using (no)
  union all select 'about', problem, problem_about.kind || id, stream, seq from problem_about join facts using (no)
  union all select 'pass', passes.unit, cast(last_good as text) || last_at || first_at, stream, seq
    from passes join facts on facts.no = passes.last_no
  order by 1, 2, 3, 4, 5`;

/** Laws of what happened on the floor. */
export function recordsLawSuite(fresh: FreshPlace): void {
  let place: StorePlace;
  let store: Store;
  let records: RecordStore;
  const open = async (): Promise<void> => {
    place = await fresh();
    store = await openStore(place, testOptions());
    records = store.records;
  };
  beforeEach(open);
  afterEach(() => store.close());
  const take = (...facts: Fact[]) => records.take(facts, () => null);
  const run = async (statement: string) => {
    const database = await openDatabase(place);
    const { rows } = await sql.raw(statement).execute(database.db);
    await database.close();
    return rows;
  };

  it("look the same in whatever order the facts of devices and their corrections arrive (seed 7)", async () => {
    const [one, two, three] = ["t-1", "t-2", "t-3"].map((name) => new TestStream(name));
    if (!(one && two && three)) throw new Error("three tablets");
    const facts = [
      ...[
        one.write(reading(50)),
        one.write(reading(500)),
        one.write(lot("L7")),
        one.write(fitted("b-000001")),
      ],
      ...[two.write(correction("t-1", 2)), two.write(correction("t-1", 3)), two.write(reading(51))],
      ...[three.write(correction("t-2", 3)), three.write(correction("t-1", 4)), three.write(reading(52))],
      ...[three.write(correction("t-3", 3)), three.write(correction("t-1", 2))],
      ...[one.write(problem("p-1", "sw.1", "sw.2", "sw.1")), two.write(noteOf("p-1"))],
      ...[one.write(problem("p-2", "sw.2")), one.write(correction("t-1", 6)), two.write(noteOf("p-2"))],
    ];
    let expected: unknown;
    await fc.assert(
      fc.asyncProperty(
        fc.shuffledSubarray(facts, { minLength: facts.length }),
        fc.integer({ min: 1, max: 5 }),
        async (shuffled, many) => {
          await store.close();
          await open();
          for (let at = 0; at < shuffled.length; at += many) await take(...shuffled.slice(at, at + many));
          const found = await run(LOOKED_UP);
          expected ??= found;
          expect(found).toEqual(expected);
          expect(await records.verify()).toEqual([]);
        },
      ),
      { seed: 7, numRuns: 8 },
    );
    expect(await records.readings("t.current", 9)).toMatchObject([{ value: 50 }]);
    expect(await records.trace({ lot: "L7" })).toEqual([]);
    const kinds = async (about?: string) =>
      (await records.problemFacts({ book: "heron", about })).map(({ fact: { body } }) => body.kind).sort();
    expect(await kinds()).toEqual(["problem", "problem-note"]);
    expect(await kinds("sw.1")).toEqual(["problem", "problem-note"]);
    expect(await kinds("sw.3")).toEqual([]);
    expect(await records.problemFacts({ book: "other" })).toEqual([]);
  });

  it("let only its writer take back what holds a unit or lifts that, whichever comes first (seed 8)", async () => {
    await records.begin([board], "ann");
    const bo = new TestStream("t-bo");
    const lea = new TestStream("t-lea");
    const eve = new TestStream("t-eve");
    const found = { kind: "defect", unit: "b-000001", what: "scratch", says: "", where: {} } as const;
    const facts = [
      bo.write({ ...found, defect: "d-1" }, "bo"),
      bo.write({ ...found, defect: "d-2" }, "bo"),
      bo.write(reading(50), "bo"),
      lea.write({ kind: "override", unit: "b-000001", gate: "step", of: "st.1", why: "fair" }, "lea"),
      lea.write({ kind: "recall", recall: "rc-1", part: "el.a", why: "fire" }, "lea"),
      lea.write(correction("t-bo", 1), "lea"),
      bo.write(correction("t-bo", 2), "bo"),
      eve.write(correction("t-lea", 1), "eve"),
      eve.write(correction("t-lea", 2), "eve"),
      eve.write(correction("t-bo", 2), "eve"),
      eve.write(correction("t-bo", 3), "eve"),
      eve.write(correction("server", 1), "eve"),
      bo.write(problem("p-1", "sw.1"), "bo"),
      eve.write(correction("t-bo", 5), "eve"),
    ];
    await fc.assert(
      fc.asyncProperty(fc.shuffledSubarray(facts, { minLength: facts.length }), async (shuffled) => {
        await store.close();
        await open();
        await records.begin([board], "ann");
        for (const fact of shuffled) await take(fact);
        const aside = (await records.aside(0, 50)).map(({ fact, aside: why }) => [
          fact.stream,
          fact.seq,
          why,
        ]);
        expect(aside.sort()).toEqual([
          ["t-eve", 1, "not-allowed"],
          ["t-eve", 2, "not-allowed"],
          ["t-eve", 3, "not-allowed"],
          ["t-eve", 5, "not-allowed"],
          ["t-eve", 6, "not-allowed"],
          ["t-lea", 3, "not-allowed"],
        ]);
        expect(await records.readings("t.current", 9)).toEqual([]);
        expect(await records.verify()).toEqual([]);
      }),
      { seed: 8, numRuns: 6 },
    );
  });

  it("name serial numbers that are not given again, though the store forgot that it gave them", async () => {
    await take(new TestStream("t-1").write(noted("from before", "b-000002")));
    const made = await records.begin([board, board, board], "ann");
    expect(made.flatMap(({ fact: { body } }) => (body.kind === "begun" ? [body.unit] : []))).toEqual([
      ...["b-000001", "b-000003", "b-000004"],
    ]);
  });

  it("say of a unit that it is released once, with the heads of all streams, unless more is known", async () => {
    await records.begin([board], "ann");
    await take(new TestStream("t-1").write(reading(50)), new TestStream("t-2").write(noted("x", "b-9")));
    const seen = { facts: 2, recalls: 0 };
    expect(await records.release("b-000001", { ...seen, facts: 1 }, "lea")).toBeNull();
    expect(await records.release("b-000001", { ...seen, recalls: 1 }, "lea")).toBeNull();
    const heads = await records.heads();
    const both = await Promise.all([1, 2].map(() => records.release("b-000001", seen, "lea")));
    const [fact] = both.filter((one) => one !== null);
    expect(both.filter((one) => one === null)).toHaveLength(1);
    expect(fact?.fact).toMatchObject({
      ...{ stream: "server", seq: 2, person: "lea" },
      body: { kind: "released", heads: heads.map(({ stream, seq, hash }) => [stream, seq, hash]) },
    });
    expect(heads.map(({ stream }) => stream)).toEqual(["server", "t-1", "t-2"]);
    await take(new TestStream("t-3").write({ kind: "recall", recall: "rc-1", lot: "L7", why: "fire" }));
    expect(await records.recallFacts()).toHaveLength(1);
    expect(await records.release("b-000001", { facts: 3, recalls: 0 }, "lea")).toBeNull();
    expect(await records.release("b-000001", { facts: 3, recalls: 1 }, "lea")).not.toBeNull();
    expect(await records.verify()).toEqual([]);
  });

  it("are released while tablets write, each release with heads that hold", async () => {
    await records.begin(
      Array.from({ length: 6 }, () => board),
      "ann",
    );
    const tablets = ["t-1", "t-2", "t-3"].map((name) => new TestStream(name));
    const writing = tablets.map(async (tablet) => {
      for (let n = 0; n < 20; n++) await take(tablet.write(noted(`${n}`, "m-000009")));
    });
    const releasing = [1, 2, 3, 4, 5, 6].map((n) =>
      records.release(`b-00000${n}`, { facts: 1, recalls: 0 }, "lea"),
    );
    expect((await Promise.all(releasing)).every((fact) => fact !== null)).toBe(true);
    await Promise.all(writing);
    expect(await records.verify()).toEqual([]);
  });

  it("are told with why where they do not count", async () => {
    const tablet = new TestStream("t-1");
    await take(tablet.write(noted("counts")));
    await records.take([tablet.write(noted("late"))], () => "revoked");
    await take(new TestStream("t-2").write({ kind: "released", unit: "b-000001", heads: [] }));
    const aside = await records.aside(0, 10);
    expect(aside.map((one) => [one.fact.stream, one.aside])).toEqual([
      ["t-1", "revoked"],
      ["t-2", "server-only"],
    ]);
    expect(await records.aside(aside[0]?.no ?? 0, 10)).toHaveLength(1);
    expect(await records.aside(0, 1)).toHaveLength(1);
  });

  it("find units by the type that a part is or is in, and by what was used instead", async () => {
    await records.begin([board, { ...board, type: "bt.lamp16" }, { ...board, type: "bt.mains" }], "ann");
    const tablet = new TestStream("t-1");
    const instead = { part: "el.a", instead: "el.b", allowed: "book", why: "none left" } as const;
    await take(tablet.write({ kind: "alternate", unit: "b-000003", ...instead }));
    const found = async (trace: Parameters<RecordStore["trace"]>[0]) =>
      (await records.trace(trace)).map(({ unit }) => unit);
    expect(await found({ part: "bt.lamp16" })).toEqual(["b-000002"]);
    expect(await found({ part: "el.b" })).toEqual(["b-000003"]);
    expect(await found({ part: "el.b", types: ["bt.switch16"] })).toEqual(["b-000001", "b-000003"]);
    expect(await found({ part: "el.b", types: ["bt.switch16"], revision: "B" })).toEqual([]);
    expect(await found({ part: "bt.lamp16", lot: "L1" })).toEqual([]);
    await take(tablet.write(correction("t-1", 1)));
    expect(await found({ part: "el.b" })).toEqual([]);
  });

  it("are found by corrections and alternates also when an earlier program kept them", async () => {
    const instead = { part: "el.a", instead: "el.b", allowed: "book", why: "none left" } as const;
    const tablet = new TestStream("t-1");
    await take(tablet.write(noted("x")), tablet.write({ kind: "alternate", unit: "b-000001", ...instead }));
    await take(tablet.write(correction("t-1", 1)));
    await store.close();
    await run("drop table corrections");
    await run("drop index facts_recall");
    await run("delete from fact_units where no = 3");
    await run("delete from unit_lots");
    const database = await openDatabase(place);
    const { kind } = database;
    await database.write((db) => VERSION_5.up(db.schema, TYPES[kind], db));
    await database.close();
    store = await openStore(place, testOptions());
    expect(await store.records.verify()).toEqual([]);
    expect(await store.records.trace({ part: "el.b" })).toMatchObject([{ unit: "b-000001" }]);
    expect((await store.records.ofUnit("b-000001")).map(({ no }) => no)).toEqual([1, 2, 3]);
  });

  describe("behind the application's back", () => {
    beforeEach(async () => {
      await records.begin([board], "ann");
      const tablet = new TestStream("t-1");
      await take(tablet.write(reading(50)), tablet.write(reading(500)), tablet.write(lot("L7")));
      await take(tablet.write(correction("t-1", 2)), tablet.write(fitted("b-000001")));
      expect(await records.verify()).toEqual([]);
    });
    const found = async () =>
      (await records.verify()).map(({ stream, seq, what }) => `${stream} ${seq} ${what}`);

    it("a hash that was made anew for a changed row breaks the link of the next", async () => {
      await run(`update facts set hash = '${"a".repeat(64)}' where stream = 't-1' and seq = 2`);
      expect(await found()).toEqual(["t-1 2 changed", "t-1 3 inserted"]);
    });

    it("a stream that was chained anew to its end with its head is found by a release after it", async () => {
      const all = await records.ofUnit("b-000001");
      await records.release("b-000001", { facts: all.length, recalls: 1 }, "lea");
      const forged = new TestStream("t-1");
      const rows = [reading(49), reading(500), lot("L7"), correction("t-1", 2), fitted("b-000001")];
      let last = "";
      for (const fact of rows.map((body) => forged.write(body))) {
        const { before, hash, body, seq, at } = fact;
        await run(`update facts set before = '${before}', hash = '${hash}', at = '${at}',
          body = '${JSON.stringify(body)}' where stream = 't-1' and seq = ${seq}`);
        last = hash;
      }
      await run("update readings set value = 49");
      await run(`update stream_heads set hash = '${last}' where stream = 't-1'`);
      expect(await found()).toEqual(["t-1 5 changed"]);
    });

    it("a stream that was cut short with its head is found by a release after it", async () => {
      const all = await records.ofUnit("b-000001");
      await records.release("b-000001", { facts: all.length, recalls: 1 }, "lea");
      const kept = all.find(({ fact }) => fact.stream === "t-1" && fact.seq === 4);
      await run("delete from fact_units where no in (select no from facts where stream = 't-1' and seq = 5)");
      await run("delete from unit_links");
      await run("delete from facts where stream = 't-1' and seq = 5");
      await run(`update stream_heads set seq = 4, hash = '${kept?.fact.hash}' where stream = 't-1'`);
      expect(await found()).toEqual(["t-1 5 missing"]);
    });

    it("what is looked up is found where it is not what the facts say", async () => {
      await run("update readings set value = 50.5");
      expect(await found()).toEqual(["t-1 1 look-up"]);
      await run("update readings set value = 50");
      await run("delete from unit_lots");
      expect(await found()).toEqual(["t-1 3 look-up"]);
    });

    it("what problems are found by is found where it is not what the facts say", async () => {
      await take(new TestStream("t-9").write(problem("p-1", "sw.1")));
      expect(await found()).toEqual([]);
      await run("update problem_about set id = 'sw.2'");
      expect(await found()).toEqual(["t-9 1 look-up"]);
    });

    it("a fact that was made not to count, or to count, is found", async () => {
      await run("update facts set aside = 'revoked' where stream = 't-1' and seq = 3");
      expect(await found()).toEqual(["t-1 3 look-up"]);
      await run("update facts set aside = null where stream = 't-1' and seq = 3");
      await take(new TestStream("t-2").write({ kind: "released", unit: "b-000001", heads: [] }));
      await run("update facts set aside = null where stream = 't-2'");
      expect(await found()).toEqual(["t-2 1 look-up"]);
    });
  });
}

/** Pictures that the floor took. */
export function picturesSuite(fresh: FreshPlace): void {
  it("are kept once, by their hash, and come back from a back-up", async () => {
    const store = await openStore(await fresh(), testOptions());
    const bytes = Buffer.from([0xff, 0xd8, 0xff, 0, 10, 13, 34]);
    const hash = await store.pictures.put(bytes);
    expect(hash).toMatch(/^[0-9a-f]{64}$/);
    expect(await Promise.all([store.pictures.put(bytes), store.pictures.put(bytes)])).toEqual([hash, hash]);
    expect(await store.pictures.get("0".repeat(64))).toBeNull();
    const folder = await mkdtemp(join(tmpdir(), "pinwright-pictures-"));
    const file = join(folder, "today.zip");
    await store.backUp(file);
    await store.close();
    const restored = await restoreBackUp(file, await fresh(), testOptions());
    expect(Buffer.from((await restored.pictures.get(hash)) ?? [])).toEqual(bytes);
    await restored.close();
    await rm(folder, { recursive: true, force: true });
  });
}
