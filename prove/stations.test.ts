import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import { openStore, type Store } from "@pinwright/store";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";
import { isGood, judge } from "./stations/judge.ts";
import { type LoadOptions, runLoad } from "./stations/load.ts";
import { type BuiltServer, buildServer } from "./stations/server-process.ts";

/** A small one of `prove/stations.ts`. */
const SMALL: Omit<LoadOptions, "program" | "store"> = {
  seconds: 3,
  stations: 8,
  kills: 2,
  outages: 1,
  restarts: 2,
  harmed: 0.05,
  pauseMs: 300,
  seed: 5,
  late: [{ facts: 300, atOnce: 200 }],
};

describe("stations and a server that is killed over a network that breaks", () => {
  let built: BuiltServer;
  beforeAll(async () => {
    built = await buildServer();
  }, 60_000);
  afterAll(() => built.remove());

  it("agree to the last fact, on SQLite", async () => {
    const load = { ...SMALL, program: built.program, store: null, late: [] };
    const { verdict, kills, seen } = await runLoad(load);
    expect(verdict).toSatisfy(isGood);
    expect(kills).toHaveLength(2);
    expect(seen.errors).toEqual([]);
  });

  it("agree to the last fact, on PostgreSQL", async () => {
    const postgres = await startPostgres({ durable: true });
    try {
      const store = await postgres.newPlace();
      const { verdict } = await runLoad({ ...SMALL, kills: 1, stations: 4, program: built.program, store });
      expect(verdict).toSatisfy(isGood);
    } finally {
      await postgres.stop();
    }
  });
});

/** Facts of one stream, linked. */
function journal(stream: string, bodies: readonly FactBody[]): readonly Fact[] {
  let before = NO_FACT;
  return bodies.map((body, i) => {
    const text = { stream, seq: i + 1, before, at: `2027-01-04T08:0${i}:00.000Z`, person: "bo", body };
    before = createHash("sha256").update(factText(text)).digest("hex");
    return { ...text, hash: before };
  });
}

describe("the comparison of records and journals", () => {
  const unit = "b-000001";
  const first = journal("t-1", [
    { kind: "lot-used", unit, part: "ic.driver", lot: "L-1" },
    { kind: "reading", unit, test: "t.supply-5v", value: 5.01, good: true },
    { kind: "noted", unit, says: "clean" },
  ]);
  const second = journal("t-2", [{ kind: "fitted", unit, into: "m-000001", place: "bd.driver" }]);
  let folder = "";
  let store: Store;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "pinwright-judge-"));
    const options = { now: () => "2027-01-04T09:00:00.000Z", newId: () => "id" };
    store = await openStore({ kind: "sqlite", file: join(folder, "store.sqlite") }, options);
    await store.records.take([...first, ...second], () => null);
  });
  afterAll(async () => {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const told = (...journals: (readonly Fact[])[]) => judge(store.records, journals);

  it("finds nothing where they are the same", async () => {
    expect(await told(first, second)).toSatisfy(isGood);
  });

  it("finds a fact that was lost", async () => {
    const longer = journal("t-2", [...second.map(({ body }) => body), { kind: "noted", unit, says: "x" }]);
    expect(await told(first, longer)).toMatchObject({ lost: 1, headsEqual: false, chainFaults: 1 });
  });

  it("finds a fact that no station wrote", async () => {
    expect(await told(first)).toMatchObject({ strange: 1, headsEqual: false, unitsEqual: false });
  });

  it("finds a fact that says something else, and that nobody finds it by what it should say", async () => {
    const other = first.map(({ body }) =>
      body.kind === "reading"
        ? { ...body, value: 4.99 }
        : body.kind === "lot-used"
          ? { ...body, lot: "L-2" }
          : body,
    );
    expect(await told(journal("t-1", other), second)).toMatchObject({
      ...{ lost: 0, strange: 3, headsEqual: false, chainFaults: 1, unitsEqual: false },
      ...{ wrongReadings: 1, wrongLots: 1, wrongHistories: 1 },
    });
  });

  it("finds a fact that was doubled, and one that came before the one before it", async () => {
    const { records } = store;
    const all = await records.after(0, 100);
    const [one] = all;
    if (one === undefined) throw new Error("Nothing was kept.");
    const holding = (list: readonly (typeof all)[number][]): typeof records => ({
      ...records,
      after: async (no) => list.filter((fact) => fact.no > no),
    });
    const doubled = [...all, { ...one, no: all.length + 1 }];
    expect(await judge(holding(doubled), [first, second])).toMatchObject({ doubled: 1, outOfOrder: 1 });
    const turned = all.map((fact, i) => ({ ...fact, fact: all[all.length - 1 - i]?.fact ?? fact.fact }));
    expect(await judge(holding(turned), [first, second])).toMatchObject({ doubled: 0, outOfOrder: 1 });
    const thinner = all.map((fact) => ({ ...fact, no: fact.no * 2 }));
    expect(await judge(holding(thinner), [first, second])).toMatchObject({ lost: 0, numbersMissing: 4 });
  });
});
