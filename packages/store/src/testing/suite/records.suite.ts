import type { Fact } from "@pinwright/contract";
import { sql } from "kysely";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openDatabase } from "../../database/open-database.ts";
import { openStore } from "../../open.ts";
import { factHash } from "../../records/chain.ts";
import type { RecordStore, Store, StorePlace } from "../../store.ts";
import { TestStream } from "../facts.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { testOptions } from "../options.ts";

const board = { what: "board", type: "bt.switch16", book: "heron", revision: "A", options: [] } as const;
const machine = { ...board, what: "machine", type: "heron" } as const;
const noted = (unit: string, says: string) => ({ kind: "noted", unit, says }) as const;
const reading = (unit: string, value: number, test = "t.current") =>
  ({ kind: "reading", unit, test, value, good: true, instrument: "meter-1" }) as const;

/** What happened on the floor. */
export function recordsSuite(fresh: FreshPlace): void {
  let place: StorePlace;
  let store: Store;
  let records: RecordStore;
  let tablet: TestStream;
  beforeEach(async () => {
    place = await fresh();
    store = await openStore(place, testOptions());
    records = store.records;
    tablet = new TestStream("tablet-1");
  });
  afterEach(() => store.close());
  const notes = (count: number, stream = tablet): Fact[] =>
    Array.from({ length: count }, (_, i) => stream.write(noted("b-000001", `note ${i + 1}`)));
  const take = (...facts: Fact[]) => records.take(facts, () => null);

  it("gives out serial numbers of each kind, each once", async () => {
    const made = await records.begin([board, machine, board], "ann");
    expect(made.map(({ fact }) => (fact.body.kind === "begun" ? fact.body.unit : ""))).toEqual([
      "b-000001",
      "m-000001",
      "b-000002",
    ]);
    const more = await Promise.all([records.begin([board], "ann"), records.begin([board], "ben")]);
    const units = more.flat().map(({ fact }) => (fact.body.kind === "begun" ? fact.body.unit : ""));
    expect(units.sort()).toEqual(["b-000003", "b-000004"]);
    expect((await records.units({ what: "board" })).map(({ unit }) => unit)).toHaveLength(4);
    expect(await records.verify()).toEqual([]);
  });

  it("tells the history of a unit as it was written, whatever names and words hold", async () => {
    const strange = new TestStream('tablet "2" \\ 平板');
    const facts = [
      strange.write(noted("b-000001", 'a "b" \\ c 焊点'), 'ann "a" \\'),
      strange.write(reading("b-000001", -0.125)),
      tablet.write(noted("b-000001", "later")),
    ];
    await take(...facts);
    const all = await records.after(0, 100);
    expect(all.map(({ fact }) => fact)).toEqual(facts);
    expect(await records.ofUnit("b-000001")).toEqual(all);
  });

  it("takes facts once, however often they are sent, and answers the same", async () => {
    const facts = notes(3);
    const first = await take(...facts);
    expect(first).toMatchObject({ aside: [], heads: [{ stream: "tablet-1", seq: 3 }] });
    const again = await take(...facts);
    expect(again).toEqual({ ...first, counted: [] });
    expect(await records.after(0, 100)).toHaveLength(3);
  });

  it("takes the same facts sent twice at once only once", async () => {
    const facts = notes(4);
    const answers = await Promise.all([take(...facts), take(...facts), take(...facts.slice(0, 2))]);
    for (const { heads, aside } of answers) expect([heads[0]?.seq, aside]).toEqual([4, []]);
    expect((await records.after(0, 100)).map(({ fact }) => fact.seq)).toEqual([1, 2, 3, 4]);
  });

  it("keeps what comes too early aside until what is before it is there", async () => {
    const [one, two, three, four] = notes(4);
    if (!(one && two && three && four)) throw new Error("four notes");
    expect(await take(three, four)).toMatchObject({
      heads: [{ seq: 0 }],
      aside: [
        { seq: 3, why: "gap" },
        { seq: 4, why: "gap" },
      ],
    });
    expect((await records.ofUnit("b-000001")).map(({ fact }) => fact.seq)).toEqual([]);
    expect(await take(one)).toMatchObject({ heads: [{ seq: 1 }], aside: [] });
    const last = await take(two, three);
    expect(last).toMatchObject({ heads: [{ seq: 4 }], aside: [] });
    expect(last.counted.map(({ fact }) => fact.seq)).toEqual([2, 3, 4]);
    expect((await records.ofUnit("b-000001")).map(({ fact }) => fact.seq).sort()).toEqual([1, 2, 3, 4]);
    expect(await records.verify()).toEqual([]);
  });

  it("keeps contradictions aside and never refuses them", async () => {
    await take(...notes(2));
    const other = new TestStream("tablet-1");
    const fork = [other.write(noted("b-000002", "another")), other.write(noted("b-000002", "history"))];
    expect((await take(...fork)).aside.map(({ why }) => why)).toEqual(["fork", "fork"]);
    const wrong = { ...tablet.write(noted("b-000001", "true")), at: "2027-01-04T23:00:00.000Z" };
    expect((await take(wrong)).aside).toEqual([{ stream: "tablet-1", seq: 3, why: "hash" }]);
    const loose = { stream: "tablet-1", seq: 3, before: "f".repeat(64), at: wrong.at, person: "ann" };
    const text = { ...loose, body: noted("b-000001", "loose") };
    expect((await take({ ...text, hash: factHash(text) })).aside).toMatchObject([{ why: "link" }]);
    const own = new TestStream("tablet-2").write({ kind: "released", unit: "m-000001", heads: [] });
    expect((await take(own)).aside).toMatchObject([{ why: "server-only" }]);
    const revoked = new TestStream("tablet-3").write(noted("b-000001", "after the revocation"));
    expect((await records.take([revoked], () => "revoked")).aside).toMatchObject([{ why: "revoked" }]);
    const all = await records.after(0, 100);
    expect(all).toHaveLength(8);
    expect(all.filter(({ aside }) => aside === null)).toHaveLength(2);
    expect(await records.verify()).toEqual([]);
  });

  it("goes on with a stream behind a fact that does not count", async () => {
    const [one, two, three] = notes(3);
    if (!(one && two && three)) throw new Error("three notes");
    await take(three);
    const taken = await records.take([one, two], ({ seq }) => (seq === 2 ? "not-allowed" : null));
    expect(taken).toMatchObject({ heads: [{ seq: 3 }], aside: [{ seq: 2, why: "not-allowed" }] });
    expect(taken.counted.map(({ fact }) => fact.seq)).toEqual([1, 3]);
    expect(await records.verify()).toEqual([]);
  });

  it("finds the units of a lot, up to the machines that they are or were in", async () => {
    await records.begin([machine, machine, board, board, board], "ann");
    await take(
      tablet.write({ kind: "lot-used", unit: "b-000001", part: "ic.1", lot: "L7" }),
      tablet.write({ kind: "lot-used", unit: "b-000002", part: "ic.1", lot: "L8" }),
      tablet.write({ kind: "fitted", unit: "b-000001", into: "m-000001", place: "bd.1" }),
      tablet.write({ kind: "fitted", unit: "b-000003", into: "m-000001", place: "bd.2" }),
      tablet.write({ kind: "removed", unit: "b-000001", from: "m-000001", place: "bd.1", why: "hum" }),
      tablet.write({ kind: "fitted", unit: "b-000001", into: "m-000002", place: "bd.1" }),
    );
    const found = async (trace: Parameters<RecordStore["trace"]>[0]) =>
      (await records.trace(trace)).map(({ unit, isDirect }) => (isDirect ? unit : `(${unit})`));
    expect(await found({ lot: "L7" })).toEqual(["b-000001", "(m-000001)", "(m-000002)"]);
    expect(await found({ part: "ic.1" })).toEqual([...["b-000001", "b-000002", "(m-000001)", "(m-000002)"]]);
    expect(await found({ part: "ic.1", type: "heron" })).toEqual([]);
    expect(await found({ type: "bt.switch16", lot: "L8" })).toEqual(["b-000002"]);
    expect(await found({ person: "nobody" })).toEqual([]);
    expect(await found({})).toEqual([]);
    const history = await records.ofUnit("m-000001");
    expect(history.map(({ fact }) => fact.body.kind)).toEqual([
      ...["begun", "begun", "begun", "lot-used", "fitted", "fitted", "removed", "fitted"],
    ]);
  });

  it("does not find a fact by what it said once it was corrected", async () => {
    const right = tablet.write(reading("b-000001", 50));
    const wrong = tablet.write(reading("b-000001", 500));
    await take(right, wrong);
    await take(tablet.write({ kind: "correction", stream: "tablet-1", seq: wrong.seq, why: "mistyped" }));
    expect((await records.readings("t.current", 10)).map(({ value }) => value)).toEqual([50]);
    expect(await records.after(0, 10)).toHaveLength(3);
    expect((await records.trace({ instrument: "meter-1" })).map(({ unit }) => unit)).toEqual(["b-000001"]);
    const history = await records.ofUnit("b-000001");
    expect(history.map(({ fact }) => fact.body.kind)).toEqual(["reading", "reading", "correction"]);
  });

  describe("behind the application's back", () => {
    const change = async (statement: string): Promise<void> => {
      const database = await openDatabase(place);
      await sql.raw(statement).execute(database.db);
      await database.close();
    };
    beforeEach(async () => {
      await take(...notes(5));
      await take(...notes(3, new TestStream("tablet-2")));
    });

    it("a row that was changed is found", async () => {
      await change(`update facts set body = replace(body, 'note 2', 'note X') where stream = 'tablet-1'`);
      expect(await records.verify()).toEqual([{ stream: "tablet-1", seq: 2, what: "changed" }]);
    });

    it("a row that was dropped is found", async () => {
      await change("delete from fact_units where no = 3");
      await change("delete from facts where stream = 'tablet-1' and seq = 3");
      expect(await records.verify()).toEqual([{ stream: "tablet-1", seq: 3, what: "missing" }]);
    });

    it("a row that was inserted is found", async () => {
      await change(
        "insert into facts select 99, stream, seq, before, hash, at, received_at, person, kind, body, aside from facts where stream = 'tablet-1' and seq = 2",
      );
      expect(await records.verify()).toEqual([{ stream: "tablet-1", seq: 2, what: "inserted" }]);
    });

    it("a stream that was cut short with its head is found by heads that were kept elsewhere", async () => {
      const heads = await records.heads();
      const [, , third] = (await records.after(0, 100)).filter(({ fact }) => fact.stream === "tablet-1");
      await change("delete from fact_units where no in (4, 5)");
      await change("delete from facts where stream = 'tablet-1' and seq > 3");
      await change(`update stream_heads set seq = 3, hash = '${third?.fact.hash}' where stream = 'tablet-1'`);
      expect(await records.verify()).toEqual([]);
      expect(await records.verify(heads)).toEqual([{ stream: "tablet-1", seq: 5, what: "missing" }]);
    });
  });
}
