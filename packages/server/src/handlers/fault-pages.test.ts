import { readFaultFile } from "@pinwright/engine";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { TestServer, type Visitor } from "../testing/test-server.ts";

describe("what faults are found with", { timeout: 120_000 }, () => {
  let server: TestServer;
  let owner: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
    await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
  }, 120_000);
  afterAll(() => server.close());

  it("is made of the book as it is now, with its table", async () => {
    const file = readFaultFile(await owner.get("/api/books/light/fault-file"));
    expect(file.functions.length).toBeGreaterThan(5);
    expect(file.classes?.length).toBeGreaterThan(10);
    // The same again is the same file.
    expect(readFaultFile(await owner.get("/api/books/light/fault-file"))).toEqual(file);
  });

  it("is refused where there is no such release, machine or book", async () => {
    for (const path of ["light/fault-file?release=Z", "light/fault-file?unit=none", "none/fault-file"])
      expect(await owner.refusal(`/api/books/${path}`)).toMatchObject({ status: 404, code: "not-found" });
    expect(await owner.refusal("/api/books/light/fault-file?unit=")).toMatchObject({ status: 400 });
  });

  it("makes no page where the app is not built", async () => {
    expect(await owner.refusal("/api/books/light/fault-page?language=zh")).toMatchObject({
      code: "not-found",
      message: "The app is not built, so there is no page to fill in.",
    });
  });
});
