import type { FactBody, KeptProblem } from "@pinwright/contract";
import { afterAll, beforeAll, expect, it } from "vitest";
import { Tablet } from "../testing/tablet.ts";
import { TestServer, type Visitor } from "../testing/test-server.ts";

let server: TestServer;
let lead: Visitor;
let tablet: Tablet;

const write = (...bodies: readonly FactBody[]) =>
  lead.post("/api/facts", { facts: bodies.map((body) => tablet.write(body)) });
const problems = async (query: string) => (await lead.get(`/api/problems?${query}`)) as KeptProblem[];

beforeAll(async () => {
  server = await TestServer.start();
  const owner = await server.owner();
  lead = await server.person(owner, "Lea", "lead");
  tablet = new Tablet("t-1", (await lead.look()).person?.id ?? "");
  const body = { kind: "problem", book: "small", from: "letter", says: "the ball hangs" } as const;
  await write(
    { ...body, problem: "p-1", about: [{ kind: "item", id: "sw.1" }], seenOn: "m-000007" },
    { ...body, problem: "p-2", about: [{ kind: "step", id: "st.1" }] },
    { ...body, problem: "p-3", book: "other", about: [{ kind: "item", id: "sw.1" }] },
    { kind: "problem-note", problem: "p-1", did: "measured", says: "0.4 mm" },
    { kind: "problem-ended", problem: "p-1", how: "changed", changeNo: 1, why: "longer" },
  );
}, 60_000);
afterAll(() => server.close());

it("tells the problems of a book, open ones first, with their course", async () => {
  const found = await problems("book=small");
  expect(found.map(({ problem, state }) => [problem, state])).toEqual([
    ["p-2", "open"],
    ["p-1", "ended"],
  ]);
  expect(found[1]).toMatchObject({ unit: "m-000007", notes: [{ did: "measured" }], revision: null });
});

it("tells those about one thing", async () => {
  expect((await problems("book=small&about=sw.1")).map(({ problem }) => problem)).toEqual(["p-1"]);
  expect(await problems("book=small&about=sw.2")).toEqual([]);
});

it("opens a problem again when whoever ended it takes that back", async () => {
  const ended = (await problems("book=small&about=sw.1"))[0]?.ended;
  if (ended == null) throw new Error("p-1 has ended");
  await write({ kind: "correction", stream: ended.stream, seq: ended.seq, why: "it still hangs" });
  expect((await problems("book=small&about=sw.1"))[0]).toMatchObject({ state: "open", ended: null });
});
