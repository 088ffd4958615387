import { type CellTables, RANK } from "@pinwright/book";
import { parseScanFile } from "@pinwright/engine";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SimulatedInstrument } from "../instruments/testing/simulated-instrument.ts";
import { SimulatedTester } from "../instruments/testing/simulated-tester.ts";
import { SMALL, TestServer, type Visitor } from "../testing/test-server.ts";

type Rows = readonly Readonly<Record<string, string>>[];

/** Rows as cells, in their order. */
const cellsOf = (rows: Rows) =>
  new Map(
    rows.map((row, i) => [
      String(i + 1),
      new Map([[RANK, `a${i}`], ...Object.entries(row).filter(([, text]) => text !== "")]),
    ]),
  );

const TESTS: CellTables = new Map([
  ...SMALL,
  [
    "tests",
    cellsOf([
      {
        id: "t.12",
        scope: "machine",
        order: "1",
        kind: "measure",
        purpose: "supply",
        unit: "V",
        nominal: "12",
      },
      {
        id: "t.mains",
        scope: "machine",
        order: "2",
        kind: "measure",
        purpose: "supply",
        unit: "V",
        nominal: "230",
      },
      { id: "t.seq", scope: "machine", order: "3", kind: "sequence", purpose: "logic" },
      { id: "t.look", scope: "machine", order: "4", kind: "visual", purpose: "other" },
    ]),
  ],
  ["test_steps", cellsOf([{ test: "t.seq", no: "2", unit: "mA", min: "30", max: "70" }])],
]);

let server: TestServer;
let owner: Visitor;
let builder: Visitor;
const meter = new SimulatedInstrument();
const tester = new SimulatedTester(8, "bench-1");

/** Writes a shop's table anew, as a designer does. */
let sets = 0;
async function put(
  table: string,
  row: string,
  cells: Readonly<Record<string, string>>,
  was: Readonly<Record<string, string>> = {},
): Promise<void> {
  const changes = Object.entries(cells).map(([column, to]) => ({
    table,
    row,
    column,
    from: was[column] ?? "",
    to,
  }));
  await owner.post("/api/books/shop/changes", { id: `instruments-${++sets}`, changes });
}

const read = (id: string, body: unknown, visitor = builder) =>
  visitor.post(`/api/instruments/${id}/read`, body);

beforeAll(async () => {
  server = await TestServer.start({ small: TESTS });
  owner = await server.owner();
  builder = await server.person(owner, "Bo", "builder");
  const at = async (port: number) => ({ host: "127.0.0.1", port: String(port) });
  await put("instruments", "1", {
    ...{
      [RANK]: "a0",
      id: "meter",
      label: "Meter",
      label_zh: "万用表",
      kind: "scpi",
      station: "stn.test",
      wait_s: "1",
    },
    ...(await at(await meter.server.start())),
    calibrated_until: "2026-03-31",
  });
  await put("instruments", "2", {
    ...{ [RANK]: "a1", id: "tester", kind: "continuity", wait_s: "1" },
    ...(await at(await tester.server.start())),
  });
  await put("instruments", "3", { [RANK]: "a2", id: "gone", kind: "scpi", host: "127.0.0.1", port: "1" });
  const measures: Rows = [
    { instrument: "meter", measure: "dc", unit: "V", query: "MEAS:VOLT:DC?", min: "0", max: "60" },
    { instrument: "meter", measure: "ma", unit: "mA", query: "MEAS:CURR:DC?", factor: "1000" },
    { instrument: "gone", measure: "dc", unit: "V", query: "READ?" },
  ];
  for (const [i, row] of measures.entries())
    await put("instrument_measures", String(i + 1), { [RANK]: `a${i}`, ...row });
  meter.answers.set("MEAS:VOLT:DC?", "+1.20300000E+01").set("MEAS:CURR:DC?", "5.01E-2");
}, 60_000);
afterAll(async () => {
  await server.close();
  await meter.server.stop();
  await tester.server.stop();
});

describe("instruments", () => {
  it("are listed with what they measure, without where they are", async () => {
    const list = await builder.get("/api/instruments");
    expect(list).toEqual([
      {
        ...{ id: "meter", label: "Meter", labelZh: "万用表", kind: "scpi", station: "stn.test" },
        calibratedUntil: "2026-03-31",
        measures: [
          { unit: "V", min: 0, max: 60 },
          { unit: "mA", min: null, max: null },
        ],
      },
      expect.objectContaining({ id: "tester", kind: "continuity", measures: [] }),
      expect.objectContaining({ id: "gone" }),
    ]);
    expect(JSON.stringify(list)).not.toContain("127.0.0.1");
    expect(JSON.stringify(list)).not.toContain("MEAS");
  });

  it("are read by the unit of a test, and by that of a step, in their unit", async () => {
    expect(await read("meter", { book: "small", test: "t.12" })).toEqual({
      ...{ outcome: "read", value: 12.03, unit: "V", raw: 12.03, isOverdue: false },
    });
    expect(await read("meter", { book: "small", test: "t.seq", step: 2 })).toEqual({
      ...{ outcome: "read", value: 50.1, unit: "mA", raw: 0.0501, isOverdue: false },
    });
    expect(meter.asked.slice(-2)).toEqual(["MEAS:VOLT:DC?", "MEAS:CURR:DC?"]);
  });

  it("are not asked for what they do not measure", async () => {
    const asked = meter.asked.length;
    for (const test of ["t.mains", "t.look", "t.seq"])
      expect(await read("meter", { book: "small", test })).toEqual({
        ...{ outcome: "trouble", trouble: "not-measured", says: "" },
      });
    expect(await read("tester", { book: "small", test: "t.12" })).toMatchObject({ trouble: "not-measured" });
    expect(await builder.post("/api/instruments/meter/scan", {})).toMatchObject({ trouble: "not-measured" });
    expect(meter.asked).toHaveLength(asked);
  });

  it("take no address and no command from whoever works at the bench", async () => {
    for (const more of [
      { query: "OUTP ON" },
      { host: "127.0.0.1" },
      { address: { kind: "tcp" } },
      { unit: "V" },
    ])
      expect(
        await builder.refusal("/api/instruments/meter/read", {
          ...{ method: "POST", body: { book: "small", test: "t.12", ...more } },
        }),
      ).toMatchObject({ code: "bad-request" });
    for (const [path, body] of [
      ["none/read", { book: "small", test: "t.12" }],
      ["meter/read", { book: "small", test: "t.none" }],
      ["meter/read", { book: "none", test: "t.12" }],
      ["none/scan", {}],
    ] as const)
      expect(await builder.refusal(`/api/instruments/${path}`, { method: "POST", body })).toMatchObject({
        code: "not-found",
      });
    const body = {
      ...{
        id: "by-a-builder",
        changes: [{ table: "instruments", row: "1", column: "host", from: "127.0.0.1", to: "x" }],
      },
    };
    expect(await builder.refusal("/api/books/shop/changes", { method: "POST", body })).toMatchObject({
      code: "not-allowed",
    });
  });

  it("say what is wrong as an answer, and go on afterwards", async () => {
    expect(await read("gone", { book: "small", test: "t.12" })).toMatchObject({ trouble: "not-reached" });
    meter.answers.set("MEAS:VOLT:DC?", "+9.90000000E+37");
    expect(await read("meter", { book: "small", test: "t.12" })).toMatchObject({ trouble: "overload" });
    meter.answers.set("MEAS:VOLT:DC?", "12 V");
    expect(await read("meter", { book: "small", test: "t.12" })).toEqual({
      ...{ outcome: "trouble", trouble: "not-understood", says: "12 V" },
    });
    meter.answers.set("MEAS:VOLT:DC?", "-12");
    expect(await read("meter", { book: "small", test: "t.12" })).toMatchObject({ value: -12 });
  });

  it("whose calibration is over are read all the same, and it is told", async () => {
    server.wait(24 * 3_600_000);
    expect(await read("meter", { book: "small", test: "t.12" })).toMatchObject({
      outcome: "read",
      isOverdue: true,
    });
    server.wait(-24 * 3_600_000);
  });

  it("are asked one thing at a time, and too many who wait are told so", async () => {
    meter.server.delayMs = 15;
    meter.answers.set("MEAS:VOLT:DC?", "12");
    const all = await Promise.all(
      Array.from({ length: 12 }, () => read("meter", { book: "small", test: "t.12" })),
    );
    meter.server.delayMs = 0;
    const outcomes = all.map((one) => JSON.stringify(one)).sort();
    expect(outcomes.filter((one) => one.includes('"read"'))).toHaveLength(8);
    expect(outcomes.filter((one) => one.includes('"busy"'))).toHaveLength(4);
  });

  it("are looked for where the shop says from then on", async () => {
    const other = new SimulatedInstrument();
    other.answers.set("MEAS:VOLT:DC?", "13");
    const port = await other.server.start();
    const rows: unknown = await owner.get("/api/books/shop/rows");
    const was = JSON.stringify(rows).match(/"host":"127\.0\.0\.1","port":"(\d+)"/u)?.[1] ?? "";
    await put("instruments", "1", { port: String(port) }, { port: was });
    expect(await read("meter", { book: "small", test: "t.12" })).toMatchObject({ value: 13 });
    await other.server.stop();
  });
});

describe("a tester", () => {
  const place = (n: number) => ({
    ...{ id: `p${n}`, pointId: `p${n}`, landingId: "j", loose: false, column: n, row: 0, wires: [n] },
  });
  const bench = {
    ...{ harnessId: "h", splices: [], places: [1, 2, 3].map(place) },
    wires: [{ id: "w", number: 1, netId: "n", a: "p1", b: "p3" }],
  };

  it("gives its scan as a file of the protocol, with the harness in it", async () => {
    tester.plug(bench, { pointOf: new Map([1, 2, 3].map((n) => [`p${n}`, n])) }, []);
    const answer = await builder.post("/api/instruments/tester/scan", { unit: "h-000012" });
    expect(answer).toMatchObject({ outcome: "scanned", isOverdue: false });
    const text = typeof answer === "object" && answer !== null && "scan" in answer ? String(answer.scan) : "";
    expect(parseScanFile(text)).toEqual({
      ...{
        faults: [],
        file: { tester: "bench-1", unit: "h-000012", scan: { points: 8, groups: [[1, 3]] }, oneSided: [] },
      },
    });
  });

  it("that is broken says so", async () => {
    tester.broken = true;
    expect(await builder.post("/api/instruments/tester/scan", {})).toEqual({
      ...{ outcome: "trouble", trouble: "refused", says: "error broken" },
    });
    tester.broken = false;
    expect(
      await builder.refusal("/api/instruments/tester/scan", { method: "POST", body: { unit: "two words" } }),
    ).toMatchObject({ code: "bad-request" });
  });
});
