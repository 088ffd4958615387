import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { PASSWORD, TestServer, Visitor } from "../testing/test-server.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

describe("accounts", () => {
  let server: TestServer;
  beforeEach(async () => {
    server = await TestServer.start();
  });
  afterEach(() => server.close());

  it("are made once, by whoever is at this computer; the network opens then", async () => {
    const far = new Visitor(server, "192.168.7.9");
    expect((await far.look()).person).toBeNull();
    expect(await far.refusal("/api/books")).toMatchObject({ code: "not-signed-in" });
    const here = new Visitor(server);
    expect(await here.look()).toMatchObject({ accounts: false, person: { id: "local", role: "owner" } });
    expect(server.opened).toBe(0);
    const owner = await server.owner();
    expect(server.opened).toBe(1);
    expect(await owner.look()).toMatchObject({
      accounts: true,
      person: { name: "Olga", role: "owner", hasPassword: true },
      addresses: ["https://office.local:4181"],
    });
    expect(await here.refusal("/api/books")).toMatchObject({ code: "not-signed-in" });
    const again = { method: "POST", body: { name: "Eve", password: PASSWORD } };
    expect(await here.refusal("/api/set-up", again)).toMatchObject({ status: 409, code: "taken" });
  });

  it("are set up by one of two who try at once", async () => {
    const tries = await Promise.all(
      ["Ann", "Ben"].map(async (name) => {
        const visitor = new Visitor(server);
        await visitor.look();
        return (await visitor.send("/api/set-up", { method: "POST", body: { name, password: PASSWORD } }))
          .status;
      }),
    );
    expect(tries.sort()).toEqual([200, 409]);
  });

  it("are not set up from a device on the network", async () => {
    const far = new Visitor(server, "192.168.7.9");
    const sent = { method: "POST", body: { name: "Eve", password: PASSWORD } };
    expect(await far.refusal("/api/set-up", sent)).toMatchObject({ code: "not-allowed" });
  });

  it("keep no secret that could be read", async () => {
    const owner = await server.owner();
    await owner.post("/api/people", { name: "Wei", role: "builder", code: "4711" });
    const known = await server.store.people.byName("wei");
    expect(known?.codeHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(JSON.stringify(await owner.get("/api/people"))).not.toMatch(/argon2|Hash/i);
    const secret = owner.cookie.split("=")[1] ?? "";
    expect(await server.store.people.session(secret)).toBeNull();
    const answer = await owner.send("/api/sign-in", {
      method: "POST",
      body: { name: "Olga", secret: PASSWORD },
    });
    expect(answer.headers.get("set-cookie")).toMatch(/; HttpOnly; SameSite=Strict; Max-Age=604800$/);
  });

  it("take a floor code for builders and viewers only, for a shift", async () => {
    const owner = await server.owner();
    for (const role of ["owner", "designer", "lead"]) {
      const sent = { method: "POST", body: { name: role, role, code: "4711", password: PASSWORD } };
      expect(await owner.refusal("/api/people", sent)).toMatchObject({
        status: 400,
        places: [{ at: "code" }],
      });
    }
    const wei = await owner.post("/api/people", { name: "Wei", role: "builder", code: "4711" });
    expect(wei).toMatchObject({ hasCode: true, hasPassword: false });
    const id = (await server.store.people.byName("Wei"))?.id ?? "";
    const raise = { method: "PATCH", body: { role: "lead" } };
    expect(await owner.refusal(`/api/people/${id}`, raise)).toMatchObject({ code: "bad-request" });
    const floor = new Visitor(server, "192.168.7.40");
    expect((await floor.signIn("wei", "4711")).person?.name).toBe("Wei");
    server.wait(12 * HOUR_MS - 1);
    expect((await floor.look()).person?.name).toBe("Wei");
    server.wait(1);
    expect((await floor.look()).person).toBeNull();
    expect((await owner.look()).person?.name).toBe("Olga");
    server.wait(7 * 24 * HOUR_MS);
    expect((await owner.look()).person).toBeNull();
  });

  it("tell an unknown name from a wrong secret by nothing, and make whoever guesses wait longer and longer", async () => {
    const owner = await server.owner();
    await owner.post("/api/people", { name: "Wei", role: "builder", code: "4711" });
    const guess = (name: string, secret: string, address: string) =>
      new Visitor(server, address).refusal("/api/sign-in", { method: "POST", body: { name, secret } });
    expect(await guess("Wei", "0000", "10.0.0.1")).toEqual(await guess("Nobody", "0000", "10.0.0.2"));
    const waits: number[] = [];
    for (let i = 0; i < 9; i++) {
      const answer = await new Visitor(server, `10.0.1.${i}`).send("/api/sign-in", {
        method: "POST",
        body: { name: " ＷEI ", secret: String(1000 + i) },
      });
      const wait = Number(answer.headers.get("retry-after") ?? "0");
      waits.push(wait);
      if (wait > 0) server.wait(wait * 1000);
    }
    // Four more are free; then every other is refused until the wait is over, and each wait is twice the one before.
    expect(waits).toEqual([0, 0, 0, 0, 0, 1, 0, 2, 0]);
    const right = new Visitor(server, "10.0.0.9");
    expect(await guess("Wei", "4711", "10.0.0.9")).toMatchObject({ status: 429, code: "too-many-tries" });
    server.wait(15 * MINUTE_MS);
    expect((await right.signIn("Wei", "4711")).person?.name).toBe("Wei");
  });

  it("do not let many guesses at once through", async () => {
    await server.owner();
    const tries = await Promise.all(
      Array.from({ length: 30 }, (_, i) =>
        new Visitor(server, `10.0.2.${i}`)
          .send("/api/sign-in", { method: "POST", body: { name: "Olga", secret: `wrong password ${i}` } })
          .then((r) => r.status),
      ),
    );
    expect(tries.filter((status) => status === 401).length).toBe(6);
    expect(tries.filter((status) => status === 429).length).toBe(24);
  });

  it("keep the last owner, and end the sessions of whoever may do less", async () => {
    const owner = await server.owner();
    const { id = "" } = (await server.store.people.byName("Olga")) ?? {};
    for (const body of [{ active: false }, { role: "designer" }])
      expect(await owner.refusal(`/api/people/${id}`, { method: "PATCH", body })).toMatchObject({
        code: "not-allowed",
      });
    const dan = await server.person(owner, "Dan", "designer");
    const danId = (await server.store.people.byName("Dan"))?.id ?? "";
    await owner.post(`/api/people/${danId}`, { name: "Daniel" }, "PATCH");
    expect((await dan.look()).person?.name).toBe("Daniel");
    await owner.post(`/api/people/${danId}`, { role: "viewer" }, "PATCH");
    expect((await dan.look()).person).toBeNull();
    await dan.signIn("Daniel", PASSWORD);
    await owner.post(`/api/people/${danId}`, { active: false }, "PATCH");
    expect((await dan.look()).person).toBeNull();
    const back = { method: "POST", body: { name: "Daniel", secret: PASSWORD } };
    expect(await dan.refusal("/api/sign-in", back)).toMatchObject({ code: "wrong-secret" });
  });

  it("write down who came, who did not get in, and what was changed, but no secrets", async () => {
    const owner = await server.owner();
    const eve = new Visitor(server, "10.9.9.9");
    await eve.refusal("/api/sign-in", { method: "POST", body: { name: "Olga", secret: "guess guess" } });
    await owner.post("/api/people", { name: "Wei", role: "builder", code: "4711" });
    await owner.post("/api/sign-out", undefined);
    const back = new Visitor(server);
    await back.signIn("Olga", PASSWORD);
    const log = await back.get("/api/audit?limit=10");
    expect(log).toMatchObject([
      { action: "sign-in", personName: "Olga", from: "127.0.0.1" },
      { action: "sign-out", personName: "Olga" },
      { action: "person-added", personName: "Olga", detail: "Wei: builder" },
      { action: "sign-in-refused", personName: "Olga", from: "10.9.9.9" },
      { action: "set-up", personName: "Olga" },
    ]);
    expect(JSON.stringify(log)).not.toContain("4711");
  });
});
