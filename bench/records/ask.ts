import { randomBytes, randomUUID } from "node:crypto";
import { join } from "node:path";
import { statusSchema, TOKEN_HEADER } from "@pinwright/contract";
import { createServer } from "@pinwright/server";
import type { Store } from "@pinwright/store";

const HOST = "127.0.0.1:4180";

/** A server without sockets. */
export interface Asked {
  /** Text of a good answer. */
  readonly get: (path: string) => Promise<string>;
  readonly post: (path: string, body: unknown) => Promise<string>;
  readonly close: () => Promise<void>;
}

/** Opens a server on a store. @param temp a folder that it may empty */
export async function openServer(store: Store, temp: string): Promise<Asked> {
  const server = await createServer({
    store,
    paths: { temp, web: null, examples: join(import.meta.dirname, "../../examples") },
    reach: { hosts: () => new Set([HOST]), addresses: () => [], open: async () => undefined },
    version: "bench",
    now: Date.now,
    random: (bytes) => randomBytes(bytes),
    newId: randomUUID,
    log: (line) => process.stderr.write(`${line}\n`),
    shared: false,
  });
  let token = "";
  const ask = async (path: string, method: string, body: unknown): Promise<string> => {
    const headers = { host: HOST, "content-type": "application/json", [TOKEN_HEADER]: token };
    const request = new Request(`http://${HOST}${path}`, {
      method,
      headers,
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const response = await server.app.fetch(request, { place: { address: "127.0.0.1", secure: false } });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response.text();
  };
  token = statusSchema.parse(JSON.parse(await ask("/api/status", "GET", undefined))).token ?? "";
  return {
    get: (path) => ask(path, "GET", undefined),
    post: (path, body) => ask(path, "POST", body),
    close: () => server.close(),
  };
}
