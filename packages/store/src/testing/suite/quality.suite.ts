import { copyFile } from "node:fs/promises";
import { join } from "node:path";
import type { Fact, FactBody } from "@pinwright/contract";
import fc from "fast-check";
import { sql } from "kysely";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openDatabase } from "../../database/open-database.ts";
import { openStore } from "../../open.ts";
import type { Store, StorePlace } from "../../store.ts";
import { TestStream } from "../facts.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { testOptions } from "../options.ts";

const BOARD = { what: "board", type: "bt.switch16", book: "heron", revision: "A", options: [] } as const;
const reading = (unit: string, test: string, good: boolean, station = "st.boards"): FactBody => ({
  ...{ kind: "reading", unit, test, value: 1, good, station },
});
const defect = (unit: string, id: string): FactBody => ({
  ...{
    kind: "defect",
    unit,
    defect: id,
    what: "dry-joint",
    says: "",
    where: { item: "R1" },
    station: "bench-1",
  },
});
const mended = (unit: string, id: string): FactBody => ({
  ...{ kind: "mended", unit, defect: id, cause: "cold-iron", says: "", minutes: 4 },
});
const HERON = { book: "heron" };

/** How well the work goes, by what was recorded. */
export function qualitySuite(fresh: FreshPlace): void {
  let place: StorePlace;
  let store: Store;
  let tablet: TestStream;
  beforeEach(async () => {
    place = await fresh();
    store = await openStore(place, testOptions());
    tablet = new TestStream("tablet-1");
    await store.records.begin([BOARD, BOARD, { ...BOARD, book: "other" }], "ann");
  });
  afterEach(() => store.close());
  const take = (...facts: Fact[]) => store.records.take(facts, () => null);

  it("counts units by their first and last result of each test, in the book that is asked for", async () => {
    await take(
      tablet.write(reading("b-000001", "t.1", false)),
      tablet.write(reading("b-000001", "t.1", false)),
      tablet.write(reading("b-000001", "t.1", true, "bench-2")),
      tablet.write(reading("b-000001", "t.2", true)),
      tablet.write(reading("b-000002", "t.1", true)),
      tablet.write(reading("b-000003", "t.1", true)),
    );
    const board = { what: "board", type: "bt.switch16", station: "st.boards" };
    expect(await store.quality.testYields(HERON)).toEqual([
      { ...board, test: "t.1", units: 2, first: 1, last: 2 },
      { ...board, test: "t.2", units: 1, first: 1, last: 1 },
    ]);
    const firsts = await store.quality.unitFirsts(HERON);
    expect([...firsts].sort((a, b) => (a.unit < b.unit ? -1 : 1))).toMatchObject([
      { unit: "b-000001", isGood: false },
      { unit: "b-000002", isGood: true },
    ]);
    const { all, failed } = await store.quality.failedFirst(HERON, 10);
    expect([all, failed]).toMatchObject([1, [{ unit: "b-000001", test: "t.1", isGoodNow: true }]]);
    // The first reading was at one minute past eight, the fifth at five past.
    const late = { ...HERON, from: "2027-01-04T08:05:00.000Z" };
    expect(await store.quality.testYields(late)).toMatchObject([{ units: 1, first: 1 }]);
    expect(await store.quality.testYields({ ...HERON, to: "2027-01-04T08:01:00.000Z" })).toEqual([]);
  });

  it("tells defects with what was mended since, the last ones first, and none that was taken back", async () => {
    await take(
      tablet.write(defect("b-000001", "d-1")),
      tablet.write(mended("b-000001", "d-1")),
      tablet.write(reading("b-000001", "t.1", true)),
      tablet.write(defect("b-000002", "d-2")),
      tablet.write(defect("b-000002", "d-3")),
      tablet.write({ kind: "correction", stream: "tablet-1", seq: 5, why: "it is dirt" }),
      tablet.write(defect("b-000003", "d-4")),
    );
    const found = await store.quality.defects(HERON);
    expect(found).toMatchObject([
      { unit: "b-000002", defect: "d-2", mended: null },
      { unit: "b-000001", defect: "d-1", where: { item: "R1" }, mended: { cause: "cold-iron", minutes: 4 } },
    ]);
    expect([...(await store.quality.unitsWithDefect())]).toEqual(["b-000001", "b-000002", "b-000003"]);
    expect([...(await store.quality.unitsWithDefect(["b-000002", "b-000009"]))]).toEqual(["b-000002"]);
    expect(await store.quality.lastResults(["b-000001", "b-000002"])).toEqual([
      { unit: "b-000001", at: "2027-01-04T08:03:00.000Z", good: true },
    ]);
  });

  it("counts the same whatever the order of arrival, and what was corrected not (seed 7)", async () => {
    const notes = new TestStream("tablet-9");
    const facts = [true, false, true, false, true].map((good) =>
      notes.write(reading("b-000001", "t.1", good)),
    );
    const corrections = [1, 5].map((seq) =>
      notes.write({ kind: "correction", stream: "tablet-9", seq, why: "another board" }),
    );
    const all = [...facts, ...corrections];
    await fc.assert(
      fc.asyncProperty(fc.shuffledSubarray(all, { minLength: all.length }), async (order) => {
        const other = await openStore(await fresh(), testOptions());
        await other.records.begin([BOARD], "ann");
        for (const fact of order) await other.records.take([fact], () => null);
        const yields = await other.quality.testYields(HERON);
        const { failed } = await other.quality.failedFirst(HERON, 9);
        await other.close();
        expect(yields).toMatchObject([{ units: 1, first: 0, last: 0 }]);
        expect(failed).toMatchObject([{ at: "2027-01-04T08:02:00.000Z", isGoodNow: false }]);
      }),
      { seed: 7, numRuns: 4 },
    );
  });

  it("counts what was read before passes were kept", async () => {
    if (place.kind !== "sqlite") return;
    const file = `${place.file}-3`;
    await copyFile(join(import.meta.dirname, "..", "fixtures", "version-3.sqlite"), file);
    const old = await openStore({ kind: "sqlite", file }, testOptions());
    expect(await old.quality.testYields(HERON)).toEqual([
      {
        ...{ what: "board", type: "bt.driver", test: "t.current", station: "" },
        ...{ units: 1, first: 1, last: 1 },
      },
    ]);
    await old.close();
  });

  it("finds defects and yields by their indices", async () => {
    if (place.kind !== "sqlite") return;
    const database = await openDatabase(place);
    const planOf = async (query: string): Promise<string> => {
      const { rows } = await sql.raw<{ detail: string }>(`explain query plan ${query}`).execute(database.db);
      return rows.map(({ detail }) => detail).join("\n");
    };
    expect(
      await planOf(
        "select at from facts where kind in ('defect', 'mended', 'correction') and at >= 'x' order by at, stream, seq",
      ),
    ).toContain("facts_quality");
    expect(
      await planOf(
        "select type, test, count(*), sum(first_good) from passes where book = 'x' group by type, test",
      ),
    ).toContain("COVERING INDEX passes_yield");
    expect(
      await planOf(
        "select unit, what, type, min(first_good) from passes where book = 'x' and first_at >= 'y' group by unit, what, type",
      ),
    ).toContain("COVERING INDEX passes_when");
    await database.close();
  });
}
