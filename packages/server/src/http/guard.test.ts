import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { HOST, TestServer, Visitor } from "../testing/test-server.ts";
import { JSON_BYTES } from "./read-body.ts";

describe("what a strange page makes a browser send", () => {
  let server: TestServer;
  let owner: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
  });
  afterAll(() => server.close());

  it("is refused by its host, its origin, and where the browser says that it is from", async () => {
    const forged = { status: 403, code: "forged" };
    for (const host of [
      "evil.example",
      "evil.example:4180",
      "127.0.0.1",
      "127.0.0.1:80",
      "127.0.0.1.evil.example:4180",
    ])
      for (const path of ["/api/books", "/", "/api/status"])
        expect(await owner.refusal(path, { headers: { host } })).toMatchObject(forged);
    for (const origin of [
      "https://evil.example",
      "null",
      "http://127.0.0.1",
      "http://127.0.0.1:4181",
      "file://",
      "x",
    ])
      expect(await owner.refusal("/api/books", { headers: { origin } })).toMatchObject(forged);
    for (const site of ["cross-site", "same-site"])
      expect(await owner.refusal("/api/books", { headers: { "sec-fetch-site": site } })).toMatchObject(
        forged,
      );
    const own = { origin: `http://${HOST}`, "sec-fetch-site": "same-origin" };
    expect((await owner.send("/api/books", { headers: own })).status).toBe(200);
  });

  it("is refused without the token of the very session", async () => {
    const dan = await server.person(owner, "Dan", "owner");
    const sent = { method: "POST", body: { id: "undo-1234" } };
    for (const token of ["", "x", dan.token])
      expect(
        await owner.refusal("/api/books/small/undo", { ...sent, headers: { "x-pinwright-token": token } }),
      ).toMatchObject({ code: "forged" });
    expect(await owner.refusal("/api/books/small/undo", sent)).toMatchObject({ code: "nothing-to-undo" });
  });

  it("is refused with a form instead of JSON", async () => {
    const form = { method: "POST", bytes: new TextEncoder().encode('{"id":"undo-1234"}') };
    for (const type of ["text/plain", "application/x-www-form-urlencoded", "application/jsonp"])
      expect(
        await owner.refusal("/api/books/small/undo", { ...form, headers: { "content-type": type } }),
      ).toMatchObject({ status: 400, code: "bad-request" });
  });

  it("is refused with the cookie of someone who signed out, or one that was made up", async () => {
    const eve = await server.person(owner, "Eve", "viewer");
    const { cookie } = eve;
    await eve.post("/api/sign-out", undefined);
    for (const old of [cookie, `pinwright=${"A".repeat(43)}`, "pinwright=", `__Host-${cookie}`]) {
      const ghost = new Visitor(server, "10.0.0.8");
      ghost.cookie = old;
      expect(await ghost.refusal("/api/books")).toMatchObject({ code: "not-signed-in" });
    }
  });

  it("is refused when it is giant, before it is all there", async () => {
    let sent = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull: (stream) => {
        sent += 1024 * 1024;
        stream.enqueue(new Uint8Array(1024 * 1024).fill(32));
      },
    });
    const request = new Request(`http://${HOST}/api/books/small/undo`, {
      method: "POST",
      headers: {
        host: HOST,
        cookie: owner.cookie,
        "x-pinwright-token": owner.token,
        "content-type": "application/json",
      },
      body: endless,
      duplex: "half",
    });
    const response = await server.fetch(request, "10.0.0.1");
    expect([response.status, await response.json()]).toMatchObject([413, { code: "too-large" }]);
    expect(sent).toBeLessThan(JSON_BYTES + 4 * 1024 * 1024);
    const said = { method: "POST", body: {}, headers: { "content-length": String(JSON_BYTES + 1) } };
    expect(await owner.refusal("/api/books/small/undo", said)).toMatchObject({ code: "too-large" });
  });

  it("is told where it is wrong when it is no JSON, or other than the contract says", async () => {
    const bytes = (text: string) => ({
      method: "POST",
      bytes: new TextEncoder().encode(text),
      headers: { "content-type": "application/json" },
    });
    const path = "/api/books/small/changes";
    for (const text of [
      "",
      "{",
      '{"id":"\\u0000"}',
      '{"id":"\\ud800"}',
      "[".repeat(50_000),
      `${"[".repeat(30)}${"]".repeat(30)}`,
    ])
      expect(await owner.refusal(path, bytes(text))).toMatchObject({ status: 400, code: "bad-json" });
    const body = {
      id: "right-id",
      changes: [{ table: "nothing", row: "1", column: "x", from: "", to: "1" }],
      more: 1,
    };
    const problem = await owner.refusal(path, { method: "POST", body });
    expect(problem.places?.map((place) => place.at)).toEqual(["changes.0.table", ""]);
    const polluted = '{"id":"right-id","changes":[],"__proto__":{"polluted":true}}';
    expect(await owner.refusal(path, bytes(polluted))).toMatchObject({ code: "bad-request" });
    expect({}).not.toHaveProperty("polluted");
  });
});
