import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe } from "vitest";
import type { StorePlace } from "../store.ts";
import { type Postgres, startPostgres } from "./postgres.ts";

/** Makes a place where nothing is kept yet. */
export type FreshPlace = (kind?: StorePlace["kind"]) => Promise<StorePlace>;

/** A server of one's own takes half a second to start, and many times that on a busy machine. */
const START_MS = 120_000;

/** Runs the same tests on SQLite and on a real PostgreSQL. */
export function onBothStores(suite: (fresh: FreshPlace) => void): void {
  let folder = "";
  let files = 0;
  let postgres: Postgres | undefined;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-store-"));
    postgres = await startPostgres({ durable: false });
  }, START_MS);
  afterAll(async () => {
    await postgres?.stop();
    await rm(folder, { recursive: true, force: true });
  }, START_MS);
  const fresh = async (kind: StorePlace["kind"]): Promise<StorePlace> => {
    files += 1;
    if (kind === "sqlite") return { kind, file: join(folder, `${files}.sqlite`) };
    if (postgres === undefined) throw new Error("PostgreSQL was not started.");
    return { kind, url: await postgres.newPlace() };
  };
  describe.each(["sqlite", "postgres"] as const)("on %s", (kind) => {
    suite((other) => fresh(other ?? kind));
  });
}
