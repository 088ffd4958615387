import { mkdtemp, rm } from "node:fs/promises";
import { request as httpRequest } from "node:http";
import { request as httpsRequest } from "node:https";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { textOf } from "./key-file.ts";
import { Listeners } from "./listeners.ts";

interface Got {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** Asks over a real socket. */
function ask(address: string, path: string, more: { ca?: string; host?: string } = {}): Promise<Got> {
  const url = new URL(path, address);
  const send = url.protocol === "https:" ? httpsRequest : httpRequest;
  const headers = more.host === undefined ? {} : { host: more.host };
  return new Promise((resolve, reject) => {
    const request = send(
      url,
      { headers, agent: false, ...(more.ca === undefined ? {} : { ca: more.ca }) },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on("data", (part: Buffer) => parts.push(part));
        answer.on("end", () =>
          resolve({
            status: answer.statusCode ?? 0,
            headers: answer.headers,
            text: Buffer.concat(parts).toString("latin1"),
          }),
        );
      },
    );
    request.on("error", reject);
    request.end();
  });
}

describe("listeners", () => {
  let folder = "";
  let listeners: Listeners;
  let local = "";
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-listen-"));
    listeners = new Listeners({
      port: 0,
      networkPort: 0,
      folder,
      certificate: null,
      now: Date.now,
      log: () => undefined,
    });
    listeners.serve((request, place) => Response.json({ url: request.url, ...place }));
    local = await listeners.openLocal();
  });
  afterAll(async () => {
    await listeners.close();
    await rm(folder, { recursive: true, force: true });
  });

  it("serve this computer by HTTP, and nobody else, until the network is opened", async () => {
    const { text } = await ask(local, "/api/status");
    expect(JSON.parse(text)).toMatchObject({ address: "127.0.0.1", secure: false });
    const { host, port } = new URL(local);
    expect([...listeners.hosts()].sort()).toEqual([host, `[::1]:${port}`, `localhost:${port}`].sort());
    expect(listeners.addresses()).toEqual([]);
    expect(await textOf(join(folder, "authority.key"))).toBeNull();
  });

  it("serve the network by HTTPS, and by HTTP only the page that helps to trust it", async () => {
    await Promise.all([listeners.open(), listeners.open()]);
    const port = [...listeners.hosts()]
      .find((host) => host.startsWith("localhost:") && !local.endsWith(host.slice(9)))
      ?.slice(10);
    const ca = (await textOf(join(folder, "authority.crt"))) ?? "";
    const secure = `https://localhost:${port}`;
    const plain = `http://127.0.0.1:${port}`;
    expect(JSON.parse((await ask(secure, "/x", { ca })).text)).toMatchObject({ secure: true });
    await expect(ask(secure, "/x")).rejects.toThrow(/verify the first certificate|issuer/);
    const page = await ask(plain, "/");
    expect(page.status).toBe(200);
    const text = Buffer.from(page.text, "latin1").toString("utf8");
    for (const words of ["Certificate Trust Settings", "证书信任设置", "Android", "Windows", "<svg"])
      expect(text).toContain(words);
    expect(text).toMatch(/([0-9A-F]{2}:){31}[0-9A-F]{2}/);
    expect(text).toContain(`href="https://127.0.0.1:${port}"`);
    expect(text).not.toContain("<script");
    expect((await ask(plain, "/pinwright.crt")).headers["content-type"]).toBe("application/x-x509-ca-cert");
    const deep = await ask(plain, "/books/tidewatch?x=1");
    expect([deep.status, deep.headers.location]).toEqual([308, `https://127.0.0.1:${port}/books/tidewatch`]);
    // A name that is not ours is neither repeated nor led to.
    const strange = await ask(plain, "/", { host: "evil.example" });
    expect(strange.text).not.toContain("evil.example");
    expect((await ask(local, "/")).status).toBe(200);
  });

  it("survive strange words on the network's port", async () => {
    const port = Number([...listeners.hosts()].at(-1)?.split(":").at(-1));
    for (const bytes of [
      Buffer.from([0x16, 1, 2, 3, 255]),
      Buffer.from([0]),
      Buffer.from("GET\r\n\r\n"),
      Buffer.alloc(0),
    ]) {
      await new Promise<void>((resolve) => {
        const socket = connect(port, "127.0.0.1", () => socket.end(bytes));
        socket.on("error", () => resolve());
        socket.on("close", () => resolve());
        socket.resume();
      });
    }
    const ca = (await textOf(join(folder, "authority.crt"))) ?? "";
    expect((await ask(`https://localhost:${port}`, "/", { ca })).status).toBe(200);
  });
});
