import { type ArrivedFact, arrivedFactSchema } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PASSWORD, TestServer, type Visitor } from "../testing/test-server.ts";

let server: TestServer;
let builder: Visitor;
let leadId = "";
beforeAll(async () => {
  server = await TestServer.start();
  const owner = await server.owner();
  builder = await server.person(owner, "Bo", "builder");
  leadId = (await (await server.person(owner, "Lea", "lead")).look()).person?.id ?? "";
  const body = { book: "small", what: "board", type: "bt.driver", count: 1 };
  await owner.get("/api/units", { method: "POST", body });
}, 60_000);
afterAll(() => server.close());

const lift = { kind: "override", unit: "b-000001", gate: "step", of: "st.1", why: "for the fair" };
const said = (given: { readonly name: string; readonly secret?: string; readonly stream?: string }) => ({
  method: "POST" as const,
  body: {
    secret: PASSWORD,
    stream: "p-0123456789abc",
    at: "2027-01-04T08:00:00.000Z",
    bodies: [lift],
    ...given,
  },
});
const PATH = "/api/facts/in-person";

async function history(): Promise<readonly ArrivedFact[]> {
  const facts: unknown = await builder.get("/api/units/b-000001");
  return arrivedFactSchema
    .array()
    .parse(facts)
    .filter(({ fact }) => fact.body.kind === "override");
}

describe("in person", () => {
  it("a lead lifts at the tablet of a builder, once however often it is sent, and the builder stays signed in", async () => {
    expect(await builder.get(PATH, said({ name: "Lea" }))).toEqual({ person: leadId });
    expect(await builder.get(PATH, said({ name: "Lea" }))).toEqual({ person: leadId });
    expect(await history()).toMatchObject([{ aside: null, fact: { person: leadId, seq: 1 } }]);
    expect((await builder.look()).person?.name).toBe("Bo");
  });

  it("a builder does not, nor a wrong secret, nor a stream that is another's", async () => {
    const own = "p-abcdefghijkl";
    expect(await builder.refusal(PATH, said({ name: "Bo", stream: own }))).toMatchObject({
      code: "not-allowed",
    });
    expect(
      await builder.refusal(PATH, said({ name: "Lea", secret: "not at all the secret", stream: own })),
    ).toMatchObject({ code: "wrong-secret" });
    expect(await builder.refusal(PATH, said({ name: "Lea", stream: "server" }))).toMatchObject({
      code: "bad-request",
    });
    expect(await history()).toHaveLength(1);
  });
});
