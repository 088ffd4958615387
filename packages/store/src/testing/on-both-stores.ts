import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe } from "vitest";
import type { StorePlace } from "../store.ts";
import { type Postgres, startPostgres } from "./postgres.ts";

/** Makes a place where nothing is kept yet. */
export type FreshPlace = (kind?: StorePlace["kind"]) => Promise<StorePlace>;

/** Runs the same tests on SQLite and on a real PostgreSQL. */
export function onBothStores(suite: (fresh: FreshPlace) => void): void {
  let folder = "";
  let files = 0;
  let postgres: Postgres;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-store-"));
    postgres = await startPostgres({ durable: false });
  });
  afterAll(async () => {
    await postgres.stop();
    await rm(folder, { recursive: true, force: true });
  });
  const fresh = async (kind: StorePlace["kind"]): Promise<StorePlace> => {
    files += 1;
    return kind === "sqlite"
      ? { kind, file: join(folder, `${files}.pinwright`) }
      : { kind, url: await postgres.newPlace() };
  };
  describe.each(["sqlite", "postgres"] as const)("on %s", (kind) => {
    suite((other) => fresh(other ?? kind));
  });
}
