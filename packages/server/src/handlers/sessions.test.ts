import type { Fact, FactBody, PersonSession } from "@pinwright/contract";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { Tablet } from "../testing/tablet.ts";
import { PASSWORD, TestServer, Visitor } from "../testing/test-server.ts";

const HOUR_MS = 60 * 60_000;
const noted = (says: string): FactBody => ({ kind: "noted", unit: "b-000001", says });

describe("sessions of tablets", () => {
  let server: TestServer;
  let owner: Visitor;
  beforeEach(async () => {
    server = await TestServer.start();
    owner = await server.owner();
  }, 60_000);
  afterEach(() => server.close());

  /** A builder at a tablet, signed in with a short code. */
  const atTablet = async (name: string, code: string, address = "192.168.7.40") => {
    const known = await server.store.people.byName(name);
    if (known === null) await owner.post("/api/people", { name, role: "builder", code });
    const visitor = new Visitor(server, address);
    const id = (await visitor.signIn(name, code)).person?.id ?? "";
    return { visitor, id };
  };
  const send = (visitor: Visitor, ...facts: Fact[]) =>
    visitor.get("/api/facts", { method: "POST", body: { facts } }) as Promise<{ aside: object[] }>;
  const sessionsOf = (id: string) => owner.get(`/api/people/${id}/sessions`) as Promise<PersonSession[]>;
  const writers = async () =>
    ((await owner.get("/api/facts")) as { fact: Fact; aside: string | null }[]).map(({ fact, aside }) => [
      ...[fact.person, fact.body.kind === "noted" ? fact.body.says : "", aside],
    ]);

  it("end after a shift; what was written before is sent by the next person, in its writer's name", async () => {
    const wei = await atTablet("Wei", "4711");
    const tablet = new Tablet("t-1", wei.id);
    await send(wei.visitor, tablet.write(noted("in the morning")));
    const late = tablet.write(noted("just before the end"));
    server.wait(12 * HOUR_MS);
    const refused = await wei.visitor.refusal("/api/facts", { method: "POST", body: { facts: [late] } });
    expect(refused).toMatchObject({ status: 401, code: "not-signed-in" });
    expect(await wei.visitor.refusal("/api/books")).toMatchObject({ status: 401 });
    const ann = await atTablet("Ann", "1234");
    const after = tablet.write(noted("in the next shift"), ann.id);
    expect(await send(ann.visitor, late, after)).toMatchObject({ aside: [] });
    expect(await writers()).toEqual([
      [wei.id, "in the morning", null],
      [wei.id, "just before the end", null],
      [ann.id, "in the next shift", null],
    ]);
  });

  it("are seen and ended by the owner, one or all, at once; his own stays", async () => {
    const wei = await atTablet("Wei", "4711");
    const other = await atTablet("Wei", "4711", "192.168.7.41");
    const listed = await sessionsOf(wei.id);
    expect(listed.map(({ kind, from, isOwn }) => [kind, from, isOwn]).sort()).toEqual([
      ["floor", "192.168.7.40", false],
      ["floor", "192.168.7.41", false],
    ]);
    expect(JSON.stringify(listed)).not.toContain(wei.visitor.token);
    const lost = listed.find(({ from }) => from === "192.168.7.40");
    const path = `/api/people/${wei.id}/sessions/${lost?.id}`;
    await owner.get(path, { method: "DELETE" });
    expect(await wei.visitor.refusal("/api/books")).toMatchObject({ status: 401 });
    expect((await other.visitor.send("/api/books")).status).toBe(200);
    expect(await owner.refusal(path, { method: "DELETE" })).toMatchObject({ code: "not-found" });
    await owner.get(`/api/people/${wei.id}/sessions`, { method: "DELETE" });
    expect(await other.visitor.refusal("/api/books")).toMatchObject({ status: 401 });
    expect(await sessionsOf(wei.id)).toEqual([]);
    const own = (await owner.look()).person?.id ?? "";
    await new Visitor(server, "192.168.7.50").signIn("Olga", PASSWORD);
    await owner.get(`/api/people/${own}/sessions`, { method: "DELETE" });
    expect(await sessionsOf(own)).toMatchObject([{ isOwn: true, kind: "office", from: "127.0.0.1" }]);
    const log = (await owner.get("/api/audit?limit=3")) as { action: string; detail: string }[];
    expect(log.map(({ action, detail }) => [action, detail])).toContainEqual(["session-ended", "Wei: 1"]);
    // Whoever was signed out comes in again with the code, unless that is changed too.
    await wei.visitor.signIn("Wei", "4711");
    expect(await sessionsOf("nobody").catch(() => "refused")).toBe("refused");
  });

  it("of who was put away end; what that person wrote and did not send is kept aside, and told", async () => {
    const gus = await atTablet("Gus", "4711");
    const ann = await atTablet("Ann", "1234");
    const tablet = new Tablet("t-1", gus.id);
    await send(gus.visitor, tablet.write(noted("before")));
    await owner.post(`/api/people/${gus.id}`, { active: false }, "PATCH");
    expect(await gus.visitor.refusal("/api/books")).toMatchObject({ status: 401 });
    const answer = await send(
      ann.visitor,
      tablet.write(noted("after")),
      tablet.write(noted("Ann's"), ann.id),
    );
    expect(answer.aside).toEqual([{ stream: "t-1", seq: 2, why: "revoked" }]);
    expect(await ann.visitor.get("/api/records-aside")).toMatchObject([
      { aside: "revoked", fact: { person: gus.id, body: { says: "after" } } },
    ]);
    const history = (await ann.visitor.get("/api/units/b-000001")) as { fact: Fact }[];
    expect(history.map(({ fact: { seq } }) => seq)).toEqual([1, 3]);
  });
});
