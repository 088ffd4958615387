/**
 * Writes the fixtures of the present version of the store to `fixtures`: once for each version, before its release.
 *
 *     npx tsx packages/store/src/testing/make-fixture.ts
 */
import { existsSync } from "node:fs";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { STORE_VERSION } from "../database/migrations/index.ts";
import { openStore } from "../open.ts";
import { contents } from "./contents.ts";
import { FILLED_SETTINGS, fill } from "./filled-store.ts";
import { testOptions } from "./options.ts";

const folder = join(import.meta.dirname, "fixtures");
const path = (ending: string) => join(folder, `version-${STORE_VERSION}.${ending}`);

if (existsSync(path("sqlite"))) {
  throw new Error(`${path("sqlite")} is there; what a released version wrote is never made again.`);
}
await mkdir(folder, { recursive: true });
const store = await openStore({ kind: "sqlite", file: path("sqlite") }, testOptions());
await fill(store);
await store.backUp(path("zip"));
await writeFile(path("json"), `${JSON.stringify(await contents(store, FILLED_SETTINGS), null, 1)}\n`);
await store.close();
