import { createHash } from "node:crypto";
import { type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

/** A tablet that writes a stream. */
class Tablet {
  readonly #stream: string;
  readonly #person: string;
  #seq = 0;
  #hash = NO_FACT;

  constructor(stream: string, person: string) {
    this.#stream = stream;
    this.#person = person;
  }

  write(body: FactBody, person = this.#person): Fact {
    this.#seq += 1;
    const at = new Date(Date.UTC(2027, 0, 4, 8, this.#seq)).toISOString();
    const text = { stream: this.#stream, seq: this.#seq, before: this.#hash, at, person, body };
    this.#hash = createHash("sha256").update(factText(text)).digest("hex");
    return { ...text, hash: this.#hash };
  }
}

interface Taken {
  readonly heads: readonly { readonly seq: number }[];
  readonly aside: readonly { readonly seq: number; readonly why: string }[];
}

let server: TestServer;
let owner: Visitor;
let lead: Visitor;
let builder: Visitor;
const idOf = async (visitor: Visitor): Promise<string> => (await visitor.look()).person?.id ?? "";
const send = (visitor: Visitor, ...facts: Fact[]) =>
  visitor.get("/api/facts", { method: "POST", body: { facts } }) as Promise<Taken>;
const noted = (says: string): FactBody => ({ kind: "noted", unit: "b-000001", says });
const lift: FactBody = { kind: "override", unit: "b-000001", gate: "step", of: "st.1", why: "for the fair" };

beforeAll(async () => {
  server = await TestServer.start();
  owner = await server.owner();
  lead = await server.person(owner, "Lea", "lead");
  builder = await server.person(owner, "Bo", "builder");
}, 60_000);
afterAll(() => server.close());

describe("records", () => {
  it("gives serial numbers to a lead, and not for the shop", async () => {
    const body = { book: "small", what: "board", type: "bt.driver", count: 2 };
    expect(await lead.get("/api/units", { method: "POST", body })).toMatchObject([
      { unit: "b-000001", book: "small", type: "bt.driver" },
      { unit: "b-000002" },
    ]);
    expect(await builder.get("/api/units?what=board")).toHaveLength(2);
    expect(
      await lead.refusal("/api/units", { method: "POST", body: { ...body, book: "shop" } }),
    ).toMatchObject({
      code: "bad-request",
    });
    expect(
      await lead.refusal("/api/units", { method: "POST", body: { ...body, book: "none" } }),
    ).toMatchObject({
      code: "not-found",
    });
  });

  it("takes facts once and tells where the stream stands", async () => {
    const tablet = new Tablet("t-1", await idOf(builder));
    const facts = [tablet.write(noted("one")), tablet.write(noted("two"))];
    expect(await send(builder, ...facts)).toMatchObject({ heads: [{ seq: 2 }], aside: [] });
    expect(await send(builder, ...facts)).toMatchObject({ heads: [{ seq: 2 }], aside: [] });
    const history = await builder.get("/api/units/b-000001");
    expect(history).toHaveLength(3);
    expect(await builder.get("/api/facts?after=0")).toHaveLength(4);
    expect(await builder.get("/api/streams")).toMatchObject([
      { stream: "server" },
      { stream: "t-1", seq: 2 },
    ]);
  });

  it("lets nobody lift what keeps a unit but a lead who sends it in person", async () => {
    const [bo, lea] = [await idOf(builder), await idOf(lead)];
    const tablet = new Tablet("t-2", bo);
    expect(await send(builder, tablet.write(lift))).toMatchObject({
      heads: [{ seq: 1 }],
      aside: [{ seq: 1, why: "not-allowed" }],
    });
    expect((await send(builder, tablet.write(lift, lea))).aside).toMatchObject([{ why: "not-allowed" }]);
    expect(await send(lead, new Tablet("t-3", lea).write(lift))).toMatchObject({ aside: [] });
    const concession = (allowed: "book" | "concession"): FactBody => ({
      ...{
        kind: "alternate",
        unit: "b-000001",
        part: "wire.red",
        instead: "wire.pink",
        allowed,
        why: "reel ran out",
      },
    });
    const answer = await send(
      builder,
      tablet.write(concession("book")),
      tablet.write(concession("concession")),
    );
    expect(answer).toMatchObject({ heads: [{ seq: 4 }], aside: [{ seq: 4, why: "not-allowed" }] });
  });

  it("keeps what only the server writes aside, and the records of who may not come in any more", async () => {
    const forged = new Tablet("t-4", await idOf(builder)).write({
      kind: "released",
      unit: "b-000001",
      heads: [],
    });
    expect((await send(builder, forged)).aside).toMatchObject([{ why: "server-only" }]);
    const gone = await server.person(owner, "Gus", "builder");
    const tablet = new Tablet("t-5", await idOf(gone));
    const first = tablet.write(noted("before"));
    await send(gone, first);
    await owner.get(`/api/people/${first.person}`, { method: "PATCH", body: { active: false } });
    expect(await send(builder, tablet.write(noted("after")))).toMatchObject({
      heads: [{ seq: 2 }],
      aside: [{ seq: 2, why: "revoked" }],
    });
  });

  it("traces and reads, and wants to be told what to look for", async () => {
    const tablet = new Tablet("t-6", await idOf(builder));
    await send(
      builder,
      tablet.write({ kind: "lot-used", unit: "b-000002", part: "ic.1", lot: "L 7/2" }),
      tablet.write({ kind: "fitted", unit: "b-000002", into: "m-000001", place: "bd.1" }),
      tablet.write({ kind: "reading", unit: "b-000002", test: "t.current", value: 50.5, good: true }),
    );
    expect(await builder.get("/api/trace?part=ic.1&lot=L%207%2F2")).toEqual([
      { unit: "b-000002", isDirect: true },
      { unit: "m-000001", isDirect: false },
    ]);
    expect(await builder.get("/api/readings?test=t.current")).toMatchObject([
      { unit: "b-000002", value: 50.5 },
    ]);
    expect(await builder.refusal("/api/trace")).toMatchObject({ code: "bad-request" });
    expect(await builder.refusal("/api/facts", { method: "POST", body: { facts: [{}] } })).toMatchObject({
      code: "bad-request",
    });
  });
});
