import { createHash } from "node:crypto";
import { type FactBody, factText, NO_FACT } from "@pinwright/contract";
import { afterAll, beforeAll, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

let server: TestServer;
let lead: Visitor;
let person = "";
let [seq, link] = [0, NO_FACT];

/** Sends what a tablet wrote, a minute after the one before. */
async function write(...bodies: FactBody[]): Promise<void> {
  const facts = bodies.map((body) => {
    seq += 1;
    const at = new Date(Date.UTC(2027, 0, 4, 8, seq)).toISOString();
    const text = { stream: "t-1", seq, before: link, at, person, body };
    link = createHash("sha256").update(factText(text)).digest("hex");
    return { ...text, hash: link };
  });
  await lead.get("/api/facts", { method: "POST", body: { facts } });
}
const reading = (unit: string, good: boolean): FactBody => ({
  ...{ kind: "reading", unit, test: "t.current", value: 50, good, station: "st.boards" },
});
const MORNING = "2027-01-04T00:00:00.000Z";

beforeAll(async () => {
  server = await TestServer.start();
  const owner = await server.owner();
  lead = await server.person(owner, "Lea", "lead");
  person = (await lead.look()).person?.id ?? "";
  const board = { book: "small", what: "board", type: "bt.driver", run: "run.1", count: 4 };
  await lead.get("/api/units", { method: "POST", body: board });
  await lead.get("/api/units", {
    method: "POST",
    body: { ...board, what: "machine", type: "small", count: 1 },
  });
  const onBoard = { kind: "defect", unit: "b-000001", says: "", where: { item: "R1" } } as const;
  await write(
    reading("b-000001", false),
    { ...onBoard, defect: "d-1", what: "dry-joint" },
    { kind: "mended", unit: "b-000001", defect: "d-1", cause: "cold-iron", says: "", minutes: 3 },
    reading("b-000001", true),
    reading("b-000002", true),
    { ...onBoard, unit: "b-000002", defect: "d-2", what: "wrong-part" },
    reading("b-000003", true),
    { kind: "fitted", unit: "b-000003", into: "m-000001", place: "bd.1" },
    { kind: "handed", unit: "b-000001", stage: "st.assembly", site: "works" },
    { kind: "sent", unit: "b-000004", transport: "tr-1", to: "works" },
    { kind: "sent", unit: "b-000001", transport: "tr-1", to: "works" },
    { kind: "arrived", unit: "b-000001", transport: "tr-1", site: "works" },
  );
}, 60_000);
afterAll(() => server.close());

it("tells where units are and what keeps them, without those that are fitted and good", async () => {
  const floor = await lead.get(`/api/floor?book=small&since=${MORNING}`);
  expect(floor).toMatchObject({
    units: [
      { unit: "b-000001", stage: "st.assembly", site: "works", open: [], failed: [] },
      { unit: "b-000002", open: [{ defect: "d-2", kind: "wrong-part" }] },
      { unit: "b-000004", onTheWay: { transport: "tr-1", to: "works", at: "2027-01-04T08:10:00.000Z" } },
      { unit: "m-000001", filled: ["bd.1"] },
    ],
    countedIn: [{ unit: "b-000001", transport: "tr-1", at: "2027-01-04T08:12:00.000Z" }],
    released: [],
    today: { yields: [{ run: "run.1", what: "board", units: 3, first: 1 }], defects: 2 },
  });
  expect(await lead.get("/api/floor?book=other&since=2027-01-04T00:00:00.000Z")).toMatchObject({ units: [] });
});

it("tells defects, and how the tests went since the mend", async () => {
  expect(await lead.get("/api/defects?book=small")).toMatchObject({
    all: 2,
    defects: [
      { defect: "d-2", kind: "wrong-part", mended: null, retest: null },
      { defect: "d-1", type: "bt.driver", where: { item: "R1" }, mended: { minutes: 3 }, retest: "passed" },
    ],
  });
  expect(await lead.get("/api/defects?book=small&from=2028-01-01T00:00:00.000Z")).toEqual({
    all: 0,
    defects: [],
  });
});

it("counts first and last results by test, station and type", async () => {
  expect(await lead.get("/api/passes?book=small")).toEqual({
    tests: [
      {
        ...{ what: "board", type: "bt.driver", test: "t.current", station: "st.boards" },
        ...{ units: 3, first: 2, last: 3 },
      },
    ],
    types: [{ what: "board", type: "bt.driver", units: 3, first: 1 }],
    fails: 1,
    failed: [
      {
        ...{ unit: "b-000001", what: "board", type: "bt.driver", test: "t.current", station: "st.boards" },
        ...{ at: "2027-01-04T08:01:00.000Z", isGoodNow: true },
      },
    ],
  });
});
