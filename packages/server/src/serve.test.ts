import { mkdtemp, rm, stat } from "node:fs/promises";
import { request as httpsRequest } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bookRowsSchema, statusSchema, TOKEN_HEADER } from "@pinwright/contract";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { textOf } from "./net/key-file.ts";
import { type Running, serve } from "./serve.ts";
import { settingsOf } from "./settings.ts";

describe("a server on its sockets", () => {
  let folder = "";
  let running: Running;
  const start = (): Promise<Running> =>
    serve(settingsOf(["--data", folder, "--port", "0", "--network-port", "0"], {}), "1", () => undefined);
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-serve-"));
    running = await start();
    // The examples are read from sources in another thread, which compiles them first.
  }, 60_000);
  afterAll(async () => {
    await running.close();
    await rm(folder, { recursive: true, force: true });
  });

  it("has the examples and a shop when it starts for the first time", async () => {
    const books = await (await fetch(`${running.address}/api/books`)).json();
    expect(books).toMatchObject([
      { id: "first-light", kind: "machine", label: "First Light" },
      { id: "shop", kind: "shop" },
      { id: "tidewatch", kind: "machine", label: "Tidewatch", labelZh: "守潮人" },
    ]);
    const rows = await fetch(`${running.address}/api/books/tidewatch/rows`);
    const { tables } = bookRowsSchema.parse(await rows.json());
    expect(Object.keys(tables.devices ?? {}).length).toBeGreaterThan(300);
    expect((await stat(folder)).mode & 0o077).toBe(0);
  });

  it("opens the network when the owner is there, without a new start, and is then asked by HTTPS", async () => {
    const { token } = statusSchema.parse(await (await fetch(`${running.address}/api/status`)).json());
    const made = await fetch(`${running.address}/api/set-up`, {
      method: "POST",
      headers: { "content-type": "application/json", [TOKEN_HEADER]: token ?? "", origin: running.address },
      body: JSON.stringify({ name: "Olga", password: "correct horse battery" }),
    });
    expect(made.status).toBe(200);
    const cookie = made.headers.get("set-cookie") ?? "";
    expect(cookie).toMatch(/^pinwright=/);
    const { addresses } = statusSchema.parse(await made.json());
    const port = Number(new URL(addresses[0] ?? "").port);
    const ca = (await textOf(join(folder, "keys", "authority.crt"))) ?? "";
    const body = JSON.stringify({ name: "olga", secret: "correct horse battery" });
    const headers = { "content-type": "application/json", "content-length": String(body.length) };
    const answer = await new Promise<{ status: number; cookie: string }>((done, failed) => {
      const request = httpsRequest(
        {
          host: "127.0.0.1",
          servername: "localhost",
          port,
          path: "/api/sign-in",
          method: "POST",
          headers,
          ca,
        },
        (response) => {
          response.resume();
          response.on("end", () =>
            done({ status: response.statusCode ?? 0, cookie: response.headers["set-cookie"]?.[0] ?? "" }),
          );
        },
      );
      request.on("error", failed);
      request.end(body);
    });
    expect(answer.status).toBe(200);
    expect(answer.cookie).toMatch(
      /^__Host-pinwright=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Max-Age=\d+; Secure$/,
    );
    expect((await fetch(`${running.address}/api/books`)).status).toBe(401);
    await running.close();
    running = await start();
    const status = statusSchema.parse(
      await (
        await fetch(`${running.address}/api/status`, { headers: { cookie: cookie.split(";")[0] ?? "" } })
      ).json(),
    );
    expect(status).toMatchObject({ accounts: true, person: { name: "Olga" } });
    expect(status.addresses.length).toBeGreaterThan(0);
  });
});
