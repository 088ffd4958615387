import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

let server: TestServer;
let lead: Visitor;
let viewer: Visitor;
let person = "";
let last = { seq: 0, hash: NO_FACT };

/** Records on a tablet. */
async function record(...bodies: FactBody[]): Promise<void> {
  const facts = bodies.map((body): Fact => {
    const seq = last.seq + 1;
    const at = new Date(Date.UTC(2026, 2, 31, 8, seq)).toISOString();
    const text = { stream: "tablet-1", seq, before: last.hash, at, person, body };
    last = { seq, hash: createHash("sha256").update(factText(text)).digest("hex") };
    return { ...text, hash: last.hash };
  });
  await lead.post("/api/facts", { facts });
}

/** What a PDF says, as an outside program reads it. */
async function textOf(path: string, visitor = viewer): Promise<string> {
  const response = await visitor.send(path);
  if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
  expect(response.headers.get("content-type")).toBe("application/pdf");
  expect(response.headers.get("content-disposition")).toMatch(/^inline; filename="records\./);
  const input = Buffer.from(await response.arrayBuffer());
  return execFileSync("pdftotext", ["-layout", "-", "-"], { input, encoding: "utf8" });
}

const sheet = (path: string, query: Readonly<Record<string, string>> = {}): string =>
  `/api/record-sheets/${path}?${new URLSearchParams({ language: "en", ...query })}`;

beforeAll(async () => {
  server = await TestServer.start();
  const owner = await server.owner();
  lead = await server.person(owner, "Lea Lee", "lead");
  viewer = await server.person(owner, "Vi", "viewer");
  person = (await lead.look()).person?.id ?? "";
  for (const [what, type, count] of [
    ["machine", "small", 1],
    ["board", "bt.driver", 3],
  ] as const)
    await lead.post("/api/units", { book: "small", what, type, count });
}, 60_000);
afterAll(() => server.close());

describe("sheets of the floor's records", () => {
  it("labels what is asked for, in its order, and refuses what is not there", async () => {
    const list = await textOf(sheet("labels", { book: "small", units: "b-000003,b-000001" }));
    expect(list.match(/b-00000\d/g)).toEqual(["b-000003", "b-000001"]);
    const roll = await textOf(sheet("labels", { book: "small", paper: "roll", what: "board" }));
    expect(roll.match(/b-00000\d/g)).toEqual(["b-000001", "b-000002", "b-000003"]);
    expect(await viewer.refusal(sheet("labels", { book: "small", units: "b-000009" }))).toMatchObject({
      code: "not-found",
    });
    expect(await viewer.refusal(sheet("labels", { book: "small", type: "none" }))).toMatchObject({
      code: "not-found",
    });
    expect(await viewer.refusal(sheet("labels", { book: "small", widthMm: "5" }))).toMatchObject({
      code: "bad-request",
    });
    expect(await viewer.refusal(sheet("labels", { book: "shop", units: "b-000001" }))).toMatchObject({
      code: "bad-request",
    });
  });

  it("says on the certificate that a unit is not released, what stands, and the heads of its streams", async () => {
    const defect = {
      kind: "defect",
      unit: "b-000001",
      defect: "d-1",
      what: "dry joint",
      says: "",
      where: {},
    } as const;
    await record({ kind: "noted", unit: "b-000001", says: "seen" }, defect);
    const text = await textOf(sheet("certificate/b-000001"));
    for (const own of ["NOT RELEASED", "dry joint", "d-1", "tablet-1", "server", last.hash, "Lea Lee"])
      expect(text).toContain(own);
    expect(await viewer.refusal(sheet("certificate/b-000009"))).toMatchObject({ code: "not-found" });
  });

  it("locks the crate of a machine that may not ship, and has none for a board", async () => {
    const text = await textOf(sheet("crate/m-000001"));
    expect(text).toContain("LOCKED");
    expect(await viewer.refusal(sheet("crate/b-000001"))).toMatchObject({ code: "bad-request" });
  });

  it("lists what is on the way, with what is inside it, until it is counted in", async () => {
    await record(
      { kind: "fitted", unit: "b-000002", into: "m-000001", place: "bd.one" },
      { kind: "sent", unit: "m-000001", transport: "tr-1", to: "works" },
      { kind: "sent", unit: "b-000003", transport: "tr-2", to: "works" },
    );
    const text = await textOf(sheet("transport", { book: "small", transport: "tr-1" }));
    for (const own of ["m-000001", "with 1 unit inside", "tr-1", "works"]) expect(text).toContain(own);
    expect(text).not.toContain("b-000003");
    await record({ kind: "arrived", unit: "m-000001", transport: "tr-1", site: "works" });
    expect(await textOf(sheet("transport", { book: "small" }))).not.toContain("m-000001");
  });
});
