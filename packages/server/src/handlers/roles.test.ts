import { atLeast, ROLES, ROUTES, type Role, type Route } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, Visitor } from "../testing/test-server.ts";

/** Every route with its path filled in; what it names need not be there, rights are asked before. */
const CALLS = Object.entries<Route>(ROUTES).map(([name, route]) => ({
  name,
  role: route.role,
  method: route.method.toUpperCase(),
  path: route.path.replace(":book", "none").replace(":no", "9").replace(/:\w+/g, "none"),
  takesBody: route.body !== undefined,
}));

describe("rights", () => {
  let server: TestServer;
  const visitors = new Map<Role, Visitor>();
  beforeAll(async () => {
    server = await TestServer.start();
    const owner = await server.owner();
    visitors.set("owner", owner);
    for (const role of ROLES.filter((r) => r !== "owner"))
      visitors.set(role, await server.person(owner, `one ${role}`, role));
  }, 60_000);
  afterAll(() => server.close());

  for (const { name, role, method, path, takesBody } of CALLS.filter((call) => call.role !== "anyone")) {
    it(`${name} is refused to nobody and to those below ${role}, and to those above without a token`, async () => {
      const body = takesBody ? { body: {} } : {};
      const nobody = await new Visitor(server, "192.168.7.66").refusal(path, { method, ...body });
      expect(nobody).toMatchObject({ status: 401, code: "not-signed-in" });
      for (const [of, visitor] of visitors) {
        if (role !== "anyone" && atLeast(of, role)) {
          if (method === "GET") continue;
          const forged = await visitor.refusal(path, {
            method,
            ...body,
            headers: { "x-pinwright-token": "x" },
          });
          expect(forged).toMatchObject({ status: 403, code: "forged" });
        } else
          expect(await visitor.refusal(path, { method, ...body })).toMatchObject({
            status: 403,
            code: "not-allowed",
          });
      }
    });
  }

  it("tells every way of asking what is not there, and the ways that are", async () => {
    const viewer = visitors.get("viewer") ?? new Visitor(server);
    expect(await viewer.refusal("/api/nothing")).toMatchObject({ status: 404, code: "not-found" });
    const response = await viewer.send("/api/books", { method: "DELETE" });
    expect([response.status, response.headers.get("allow")]).toEqual([405, "GET, POST"]);
    expect(await viewer.refusal("/api/books/none/rows")).toMatchObject({ code: "not-found" });
    expect(await viewer.refusal("/api/books/No%20Book/rows")).toMatchObject({ code: "not-found" });
    expect(await viewer.refusal("/api/books/small/history/x")).toMatchObject({ code: "not-found" });
  });
});
