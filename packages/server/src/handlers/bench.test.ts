import { createHash } from "node:crypto";
import { type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

/** A device that writes a stream, a minute apart. */
class Device {
  readonly #stream: string;
  readonly #person: string;
  #seq = 0;
  #hash = NO_FACT;
  #minute = 0;

  constructor(stream: string, person: string) {
    this.#stream = stream;
    this.#person = person;
  }

  /** Lets time go by, min. */
  pass(minutes: number): void {
    this.#minute += minutes;
  }

  write(body: FactBody): Fact {
    this.#seq += 1;
    this.#minute += 1;
    const at = new Date(Date.UTC(2027, 0, 4, 8, this.#minute)).toISOString();
    const text = { stream: this.#stream, seq: this.#seq, before: this.#hash, at, person: this.#person, body };
    this.#hash = createHash("sha256").update(factText(text)).digest("hex");
    return { ...text, hash: this.#hash };
  }
}

let server: TestServer;
let lead: Visitor;
let builder: Visitor;
let tablet: Device;
let office: Device;

const send = (visitor: Visitor, ...facts: Fact[]) =>
  visitor.get("/api/facts", { method: "POST", body: { facts } });
const summaries = () => lead.get("/api/unit-summaries?book=small");
const add = (what: string, type: string, count: number) =>
  lead.get("/api/units", { method: "POST", body: { book: "small", what, type, count } });
const tell = (...bodies: FactBody[]) => send(builder, ...bodies.map((body) => tablet.write(body)));

beforeAll(async () => {
  server = await TestServer.start();
  const owner = await server.owner();
  lead = await server.person(owner, "Lea", "lead");
  builder = await server.person(owner, "Bo", "builder");
  tablet = new Device("t-1", (await builder.look()).person?.id ?? "");
  office = new Device("t-2", (await lead.look()).person?.id ?? "");
  await add("board", "bt.driver", 3);
  await add("machine", "small", 1);
}, 60_000);
afterAll(() => server.close());

describe("where units stand", () => {
  it("follows what is recorded, corrections included", async () => {
    expect(await summaries()).toMatchObject([
      { unit: "b-000001", what: "board", within: null, openDefects: 0, releasedAt: null, stage: "" },
      { unit: "b-000002" },
      { unit: "b-000003" },
      { unit: "m-000001", what: "machine" },
    ]);
    const wrong = tablet.write({ kind: "handed", unit: "b-000001", stage: "st.pack", site: "south" });
    await send(builder, wrong);
    await tell(
      { kind: "fitted", unit: "b-000001", into: "m-000001", place: "bd.a" },
      { kind: "defect", unit: "b-000002", defect: "d-1", what: "dry-joint", says: "", where: {} },
      { kind: "reading", unit: "b-000003", test: "t.5v", value: 9, good: false },
      { kind: "sent", unit: "m-000001", transport: "tr-1", to: "north" },
    );
    expect(await summaries()).toMatchObject([
      { stage: "st.pack", site: "south", within: { unit: "m-000001", place: "bd.a" } },
      { openDefects: 1 },
      { failedTests: ["t.5v"] },
      { onTheWay: { transport: "tr-1", to: "north" } },
    ]);
    await tell(
      { kind: "correction", stream: wrong.stream, seq: wrong.seq, why: "another board" },
      { kind: "mended", unit: "b-000002", defect: "d-1", cause: "work", says: "" },
      { kind: "reading", unit: "b-000003", test: "t.5v", value: 5, good: true },
      { kind: "arrived", unit: "m-000001", transport: "tr-1", site: "north" },
    );
    expect(await summaries()).toMatchObject([
      { stage: "", site: "" },
      { openDefects: 0 },
      { failedTests: [] },
      { onTheWay: null, site: "north" },
    ]);
  });

  it("finds a unit nowhere once another was fitted in its place, and there again when that was a mistake", async () => {
    const swap = tablet.write({ kind: "fitted", unit: "b-000002", into: "m-000001", place: "bd.a" });
    await send(builder, swap);
    expect(await summaries()).toMatchObject([{ within: null }, { within: { unit: "m-000001" } }, {}, {}]);
    await tell({ kind: "correction", stream: swap.stream, seq: swap.seq, why: "was not fitted" });
    expect(await summaries()).toMatchObject([{ within: { unit: "m-000001" } }, { within: null }, {}, {}]);
  });

  it("counts what waited for a record before it as soon as that is here", async () => {
    const late = new Device("t-3", (await builder.look()).person?.id ?? "");
    const first = late.write({ kind: "noted", unit: "b-000003", says: "first" });
    const second = late.write({ kind: "handed", unit: "b-000003", stage: "st.test" });
    await send(builder, second);
    expect(await summaries()).toMatchObject([{}, {}, { stage: "" }, {}]);
    await send(builder, first);
    expect(await summaries()).toMatchObject([{}, {}, { stage: "st.test" }, {}]);
  });
});

describe("what is lifted", () => {
  it("does not hold a unit any more; a test only until it is taken again", async () => {
    await tell(
      { kind: "defect", unit: "b-000002", defect: "d-2", what: "scratch", says: "", where: {} },
      { kind: "reading", unit: "b-000002", test: "t.5v", value: 9, good: false },
    );
    const lift = { kind: "override", unit: "b-000002", why: "for the fair" } as const;
    office.pass(90);
    await send(
      lead,
      office.write({ ...lift, gate: "defect", of: "d-2" }),
      office.write({ ...lift, gate: "test", of: "t.5v" }),
    );
    expect(await summaries()).toMatchObject([{}, { openDefects: 0, failedTests: [] }, {}, {}]);
    tablet.pass(120);
    await tell({ kind: "reading", unit: "b-000002", test: "t.5v", value: 9, good: false });
    expect(await summaries()).toMatchObject([{}, { openDefects: 0, failedTests: ["t.5v"] }, {}, {}]);
  });
});

describe("recalls", () => {
  it("concern units with the lot and what they are in now, until they end", async () => {
    await tell(
      { kind: "lot-used", unit: "b-000001", part: "p.relay", lot: "L7" },
      { kind: "lot-used", unit: "b-000003", part: "p.relay", lot: "L7" },
    );
    await send(
      lead,
      office.write({ kind: "recall", recall: "rc-1", part: "p.relay", lot: "L7", why: "contacts weld" }),
    );
    expect(await lead.get("/api/recalls")).toMatchObject([
      {
        recall: "rc-1",
        lot: "L7",
        type: null,
        begun: { why: "contacts weld" },
        ended: null,
        units: 3,
        released: 0,
      },
    ]);
    expect(await summaries()).toMatchObject([
      { recalls: ["rc-1"] },
      { recalls: [] },
      { recalls: ["rc-1"] },
      { recalls: ["rc-1"] },
    ]);
    const lift = { kind: "override", unit: "b-000003", gate: "recall", of: "rc-1", why: "measured" } as const;
    await send(lead, office.write(lift));
    expect(await summaries()).toMatchObject([{ recalls: ["rc-1"] }, {}, { recalls: [] }, {}]);
    await tell({ kind: "removed", unit: "b-000001", from: "m-000001", place: "bd.a", why: "recall" });
    expect(await summaries()).toMatchObject([{ recalls: ["rc-1"] }, {}, {}, { recalls: [] }]);
    await send(lead, office.write({ kind: "recall-ended", recall: "rc-1", why: "all changed" }));
    expect(await lead.get("/api/recalls")).toMatchObject([{ recall: "rc-1", ended: { why: "all changed" } }]);
    expect(await summaries()).toMatchObject([{ recalls: [] }, {}, { recalls: [] }, {}]);
  });
});

describe("minutes of steps", () => {
  it("are counted by kind, type and step, without those that were corrected or not timed", async () => {
    const done = (unit: string, minutes?: number): FactBody => ({
      ...{ kind: "step-done", unit, step: "stage-1" },
      ...(minutes === undefined ? {} : { minutes }),
    });
    const wrong = tablet.write(done("b-000001", 900));
    await send(builder, wrong);
    await tell(
      { kind: "correction", stream: wrong.stream, seq: wrong.seq, why: "the clock ran over night" },
      ...[
        done("b-000001", 8),
        done("b-000002", 5),
        done("b-000003", 6),
        done("b-000003", 9),
        done("b-000003"),
      ],
    );
    expect(await lead.get("/api/step-minutes?book=small")).toEqual([
      {
        ...{ what: "board", type: "bt.driver", step: "stage-1", count: 4 },
        ...{ medianMinutes: 7, leastMinutes: 5, mostMinutes: 9 },
      },
    ]);
    expect(await lead.get("/api/step-minutes?book=other")).toEqual([]);
  });
});

describe("names of people", () => {
  it("are told to whoever looks, and nothing else of them", async () => {
    const names = await builder.get("/api/person-names");
    expect(names).toContainEqual({ id: (await lead.look()).person?.id, name: "Lea" });
    expect(JSON.stringify(names)).not.toContain("role");
  });
});
