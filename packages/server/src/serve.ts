import { randomBytes, randomUUID } from "node:crypto";
import { mkdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { openStore, type StoreOptions } from "@pinwright/store";
import { Listeners } from "./net/listeners.ts";
import { programRoot } from "./root.ts";
import { createServer } from "./server.ts";
import type { Settings } from "./settings.ts";

/** What the store cannot make up by itself, from the computer's clock and chance. */
export const STORE_OPTIONS: StoreOptions = { now: () => new Date().toISOString(), newId: randomUUID };

export interface Running {
  /** Address on this computer. */
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** Starts a server as it was told. */
export async function serve(
  settings: Settings,
  version: string,
  log: (line: string) => void,
): Promise<Running> {
  const { data, place, port, networkPort, certificate, web } = settings;
  await mkdir(data, { recursive: true, mode: 0o700 });
  const root = programRoot();
  const store = await openStore(place, STORE_OPTIONS);
  const listeners = new Listeners({
    port,
    networkPort,
    folder: join(data, "keys"),
    certificate:
      certificate === null
        ? null
        : {
            certificatePem: await readFile(certificate.certificateFile, "utf8"),
            keyPem: await readFile(certificate.keyFile, "utf8"),
          },
    now: Date.now,
    log,
  });
  try {
    // The port first: a second server on it stops here, before it empties what the first one uses.
    const address = await listeners.openLocal();
    const server = await createServer({
      store,
      paths: {
        temp: join(data, "temp", String(new URL(address).port)),
        web: web ?? join(root, "packages", "web", "dist"),
        examples: join(root, "examples"),
      },
      reach: listeners,
      version,
      now: Date.now,
      random: (bytes) => randomBytes(bytes),
      newId: randomUUID,
      log,
      shared: place.kind === "postgres",
    });
    // Last: what takes a moment is done before anybody waits for it.
    if (await server.hasAccounts()) await listeners.open();
    listeners.serve((request, from) => server.app.fetch(request, { place: from }));
    return {
      address,
      close: async () => {
        await server.close();
        await listeners.close();
        await store.close();
      },
    };
  } catch (error) {
    await listeners.close();
    await store.close();
    throw error;
  }
}
