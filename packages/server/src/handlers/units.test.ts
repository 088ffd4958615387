import { type CellTables, RANK } from "@pinwright/book";
import { type Block, type Fact, type FactBody, unitGateSchema } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Tablet } from "../testing/tablet.ts";
import { SMALL, TestServer, type Visitor } from "../testing/test-server.ts";

const rowsOf = (rows: readonly Readonly<Record<string, string>>[]) =>
  new Map(
    rows.map((cells, i) => [String(i + 1), new Map(Object.entries({ [RANK]: `a${i}`, ...cells }))] as const),
  );

const TEST = { scope: "board", kind: "measure", unit: "x", order: "10" } as const;
/** A book with a driver board that takes a bond test and a current, and a lamp board that takes a look. */
const BOOK: CellTables = new Map([
  ...SMALL,
  [
    "board_types",
    rowsOf(
      ["bt.driver", "bt.lamp"].map((id) => ({
        ...{ id, label: id, label_zh: id, revision: "A", width_mm: "50", depth_mm: "50", height_mm: "10" },
      })),
    ),
  ],
  [
    "tests",
    rowsOf([
      { ...TEST, id: "t.bond", board_type: "bt.driver", purpose: "bond", max: "0.1" },
      { ...TEST, id: "t.current", board_type: "bt.driver", purpose: "supply", min: "30", max: "70" },
      { ...TEST, id: "t.look", board_type: "bt.lamp", kind: "visual", purpose: "other" },
    ]),
  ],
]);

let server: TestServer;
let owner: Visitor;
let lead: Visitor;
let builder: Visitor;
let bo: string;
let lea: string;
let streams = 0;
const idOf = async (visitor: Visitor): Promise<string> => (await visitor.look()).person?.id ?? "";

beforeAll(async () => {
  server = await TestServer.start({ small: BOOK });
  owner = await server.owner();
  lead = await server.person(owner, "Lea", "lead");
  builder = await server.person(owner, "Bo", "builder");
  [bo, lea] = [await idOf(builder), await idOf(lead)];
}, 60_000);
afterAll(() => server.close());

/** What is written on a tablet, at its next minute. */
class Floor {
  readonly #tablet: Tablet;
  readonly #visitor: Visitor;

  constructor(visitor: Visitor, person: string, minute = 0) {
    this.#visitor = visitor;
    this.#tablet = new Tablet(`t-${++streams}`, person, minute);
  }

  async write(...bodies: FactBody[]): Promise<readonly Fact[]> {
    const facts = bodies.map((body) => this.#tablet.write(body));
    await this.#visitor.post("/api/facts", { facts });
    return facts;
  }
}

const begin = async (type: string, what = "board"): Promise<string> => {
  const [made] = (await lead.post("/api/units", { book: "small", what, type, count: 1 })) as {
    unit: string;
  }[];
  return made?.unit ?? "";
};
const reading = (unit: string, test: string, value?: number, good = true): FactBody => ({
  ...{ kind: "reading", unit, test, good },
  ...(value === undefined ? {} : { value }),
});
const lift = (unit: string, of: string, gate: "test" | "recall" | "fit" = "test"): FactBody => ({
  ...{ kind: "override", unit, gate, of, why: "for the fair" },
});
const textOf = ({ gate, of, why, firm, lifted }: Block): string =>
  `${gate} ${of} ${why}${firm ? " firm" : ""}${lifted ? " lifted" : ""}`;
const gateOf = async (unit: string) => {
  const gate = unitGateSchema.parse(await builder.get(`/api/units/${unit}/gate`));
  return { ...gate, blocks: gate.blocks.map(textOf) };
};
const release = (unit: string) =>
  lead.post(`/api/units/${unit}/release`, {}) as Promise<{ fact: { no: number } }>;
const refused = async (unit: string): Promise<readonly string[]> => {
  const problem = await lead.refusal(`/api/units/${unit}/release`, { method: "POST", body: {} });
  expect(problem).toMatchObject({ status: 409, code: "conflict" });
  return (problem.blocks ?? []).map(textOf);
};

/** A driver board that passed everything, and what was written of it. */
async function passed() {
  const unit = await begin("bt.driver");
  const floor = new Floor(builder, bo);
  await floor.write(reading(unit, "t.bond", 0.05), reading(unit, "t.current", 50));
  return { unit, floor };
}

describe("units", () => {
  it("are kept by what is missing, and released once that is there, once", async () => {
    const unit = await begin("bt.driver");
    expect(await gateOf(unit)).toMatchObject({
      ...{ blocks: ["test t.bond missing firm", "test t.current missing"], released: null, shippable: false },
    });
    expect(await refused(unit)).toEqual(["test t.bond missing firm", "test t.current missing"]);
    const floor = new Floor(builder, bo);
    await floor.write(reading(unit, "t.bond", 0.05), reading(unit, "t.current", 71));
    expect(await refused(unit)).toEqual(["test t.current failed"]);
    await floor.write(reading(unit, "t.current", 70));
    const first = await release(unit);
    expect(await gateOf(unit)).toMatchObject({ blocks: [], released: { person: lea }, shippable: true });
    expect(await release(unit)).toEqual(first);
    await floor.write({ kind: "noted", unit, says: "packed" });
    expect((await release(unit)).fact.no).toBe(first.fact.no);
    const all = (await builder.get(`/api/units/${unit}`)) as { fact: Fact }[];
    const releases = all.flatMap(({ fact: { body } }) => (body.kind === "released" ? [body] : []));
    expect(releases).toHaveLength(1);
    expect(releases[0]?.heads.map(([stream]) => stream)).toContain("server");
  });

  it("are released by two who try at once only once", async () => {
    const { unit } = await passed();
    const [one, two] = await Promise.all([release(unit), release(unit)]);
    expect(one.fact.no).toBe(two.fact.no);
  });

  it("may not ship any more after a defect, and are released anew once it is mended and tested", async () => {
    const { unit, floor } = await passed();
    const first = await release(unit);
    await floor.write({ kind: "defect", unit, defect: "d-1", what: "scratch", says: "", where: {} });
    expect(await gateOf(unit)).toMatchObject({ blocks: ["defect d-1 open"], shippable: false });
    expect(await refused(unit)).toEqual(["defect d-1 open"]);
    await floor.write({ kind: "mended", unit, defect: "d-1", cause: "fall", says: "" });
    expect(await refused(unit)).toEqual(["test t.bond not-retested firm", "test t.current not-retested"]);
    await floor.write(reading(unit, "t.bond", 0.05), reading(unit, "t.current", 50));
    expect(await gateOf(unit)).toMatchObject({ blocks: [], shippable: true });
    expect((await release(unit)).fact.no).toBeGreaterThan(first.fact.no);
  });

  it("may not ship during a recall of a part, by its lots, its type, its contents by the book, and what it is in", async () => {
    const { unit, floor } = await passed();
    const machine = await begin("small", "machine");
    await floor.write({ kind: "lot-used", unit, part: "ic.1", lot: "L7" });
    await floor.write({ kind: "fitted", unit, into: machine, place: "bd.1" });
    await release(unit);
    const office = new Floor(lead, lea);
    const called: [string, Extract<FactBody, { kind: "recall" }>][] = [
      ["lot", { kind: "recall", recall: "rc-lot", lot: "L7", why: "fire" }],
      ["part", { kind: "recall", recall: "rc-part", part: "ic.1", why: "fire" }],
      ["type", { kind: "recall", recall: "rc-type", part: "bt.driver", why: "fire" }],
    ];
    for (const [, recall] of called) {
      await office.write(recall);
      expect((await gateOf(unit)).blocks).toEqual([`recall ${recall.recall} recalled`]);
      expect((await gateOf(machine)).blocks).toContain(`recall ${recall.recall} recalled`);
      expect(await refused(unit)).toHaveLength(1);
      await office.write({ kind: "recall-ended", recall: recall.recall, why: "all back" });
      expect(await gateOf(unit)).toMatchObject({ blocks: [], shippable: true });
    }
    await office.write({ kind: "recall", recall: "rc-other", part: "ic.1", lot: "L8", why: "fire" });
    expect((await gateOf(unit)).blocks).toEqual([]);
  });

  it("are not found under a number that nobody gave, and kept when they never got one", async () => {
    expect(await lead.refusal("/api/units/b-999999/gate")).toMatchObject({ code: "not-found" });
    await new Floor(builder, bo).write({ kind: "noted", unit: "b-forged", says: "x" });
    expect(await refused("b-forged")).toEqual(["fit b-forged unknown firm"]);
    const machine = await begin("small", "machine");
    await new Floor(builder, bo).write({ kind: "fitted", unit: "b-forged", into: machine, place: "bd.1" });
    expect(await refused(machine)).toContain("fit b-forged unknown firm");
    expect(await refused(await begin("bt.gone"))).toEqual(["fit bt.gone unknown firm"]);
  });
});

describe("tests that protect people", () => {
  it("are lifted by nobody, and others by a lead with a reason", async () => {
    const unit = await begin("bt.driver");
    await new Floor(lead, lea).write(lift(unit, "t.bond"), lift(unit, "t.current"));
    expect((await gateOf(unit)).blocks).toEqual([
      "test t.bond missing firm",
      "test t.current missing lifted",
    ]);
    expect(await refused(unit)).toEqual(["test t.bond missing firm"]);
    await new Floor(owner, await idOf(owner)).write(lift(unit, "t.bond"));
    await new Floor(builder, bo).write(lift(unit, "t.bond"));
    expect(await refused(unit)).toEqual(["test t.bond missing firm"]);
    await new Floor(builder, bo).write(reading(unit, "t.bond", 0.05));
    await release(unit);
    expect(await gateOf(unit)).toMatchObject({ shippable: true, blocks: ["test t.current missing lifted"] });
  });

  it("do not become good by taking a bad reading back, nor by judging what has limits", async () => {
    const { unit, floor } = await passed();
    const [bad] = await floor.write(reading(unit, "t.bond", 4));
    await floor.write({ kind: "correction", stream: bad?.stream ?? "", seq: bad?.seq ?? 0, why: "slipped" });
    expect(await refused(unit)).toEqual(["test t.bond not-retested firm"]);
    await floor.write(reading(unit, "t.bond"));
    expect(await refused(unit)).toEqual(["test t.bond failed firm"]);
    await floor.write(reading(unit, "t.bond", 0.06));
    await release(unit);
  });

  it("are not passed beforehand by a clock that is ahead", async () => {
    const unit = await begin("bt.driver");
    const ahead = new Floor(builder, bo, 60 * 24 * 365);
    await ahead.write(reading(unit, "t.bond", 0.05), reading(unit, "t.current", 50));
    server.wait(60_000);
    const floor = new Floor(builder, bo, 60 * 24 * 2);
    await floor.write({ kind: "defect", unit, defect: "d-2", what: "scratch", says: "", where: {} });
    server.wait(60_000);
    await floor.write({ kind: "mended", unit, defect: "d-2", cause: "fall", says: "" });
    expect(await refused(unit)).toContain("test t.bond not-retested firm");
  });

  it("are not edited away after a unit was begun; what was released stays released", async () => {
    const { unit: released } = await passed();
    await release(released);
    const unit = await begin("bt.driver");
    await new Floor(builder, bo).write(reading(unit, "t.current", 50));
    const cell = (row: string, column: string, from: string, to: string) => ({
      ...{ table: "tests", row, column, from, to },
    });
    const change = (id: string, ...changes: object[]) =>
      owner.post("/api/books/small/changes", { id, note: "", changes });
    await change("purpose-0001", cell("1", "purpose", "bond", "other"));
    await new Floor(lead, lea).write(lift(unit, "t.bond"));
    expect(await refused(unit)).toEqual(["test t.bond missing firm"]);
    await change("purpose-0002", cell("1", "purpose", "other", "bond"));
    // A new unit is of the book as it is now; an old one keeps the test until another of its purpose takes its place.
    await change("rename-0001", cell("1", "id", "t.bond", "t.bond-2"));
    expect(await refused(unit)).toEqual(["test t.bond-2 missing firm"]);
    await change("purpose-0003", cell("1", "purpose", "bond", "logic"));
    expect(await refused(unit)).toEqual(["test t.bond missing firm", "test t.bond-2 missing"]);
    expect((await gateOf(await begin("bt.driver"))).blocks).toEqual([
      ...["test t.bond-2 missing", "test t.current missing"],
    ]);
    expect(await gateOf(released)).toMatchObject({ blocks: [], shippable: true });
    await change("rename-0002", cell("1", "id", "t.bond-2", "t.bond"));
    await change("purpose-0004", cell("1", "purpose", "logic", "bond"));
  });
});

describe("records", () => {
  it("are read again, also against a head that was kept elsewhere", async () => {
    const { heads } = (await lead.get("/api/records-check")) as { heads: { stream: string; seq: number }[] };
    expect(heads.map(({ stream }) => stream)).toContain("server");
    const [head] = heads;
    const asked = `/api/records-check?stream=${head?.stream}&seq=${head?.seq}`;
    const wrong = (await lead.get(`${asked}&hash=${"a".repeat(64)}`)) as { faults: object[] };
    expect(wrong.faults).toEqual([{ stream: head?.stream, seq: head?.seq, what: "changed" }]);
    expect(await lead.refusal(asked)).toMatchObject({ code: "bad-request" });
    expect(await builder.refusal("/api/records-check")).toMatchObject({ code: "not-allowed" });
  });
});
