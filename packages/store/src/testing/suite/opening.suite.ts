import { copyFile, readFile, stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { sql } from "kysely";
import { describe, expect, it } from "vitest";
import { KEPT_TABLES } from "../../back-up/kept-tables.ts";
import { MIGRATIONS, STORE_VERSION } from "../../database/migrations/index.ts";
import { openDatabase } from "../../database/open-database.ts";
import { openStore, restoreBackUp } from "../../open.ts";
import type { StorePlace } from "../../store.ts";
import { done } from "../cells.ts";
import { contents } from "../contents.ts";
import { FILLED_SETTINGS } from "../filled-store.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, testOptions } from "../options.ts";

const FIXTURES = join(import.meta.dirname, "..", "fixtures");

/** Runs a statement on whatever is at a place. */
async function run(place: StorePlace, ...statements: readonly string[]): Promise<void> {
  const database = await openDatabase(place);
  for (const statement of statements) await sql.raw(statement).execute(database.db);
  await database.close();
}

/** Opening what is there, of this program, of others, of earlier and later ones. */
export function openingSuite(fresh: FreshPlace): void {
  it("finds again what was kept before", async () => {
    const place = await fresh();
    const first = await openStore(place, testOptions());
    done(await first.books.add({ id: "heron", kind: "machine", tables: new Map(), note: "" }, ANN));
    await first.close();
    const second = await openStore(place, testOptions());
    expect((await second.books.list()).map(({ id }) => id)).toEqual(["heron"]);
    await second.close();
  });

  it("makes one store of two that open at once", async () => {
    const place = await fresh();
    const stores = await Promise.all([1, 2, 3].map(() => openStore(place, testOptions())));
    for (const store of stores) await store.close();
  });

  it("refuses the store of a later program", async () => {
    const place = await fresh();
    await (await openStore(place, testOptions())).close();
    await run(place, `update store_version set version = ${STORE_VERSION + 1}`);
    await expect(openStore(place, testOptions())).rejects.toMatchObject({
      code: "newer",
      message: expect.stringContaining("later program"),
    });
  });

  it("refuses what is something else", async () => {
    const place = await fresh();
    await run(place, "create table recipes (id integer)", "insert into recipes values (1)");
    await expect(openStore(place, testOptions())).rejects.toMatchObject({
      code: "not-a-store",
      message: expect.stringContaining("recipes"),
    });
    await run(place, "insert into recipes values (2)");
  });

  it("says so when there is nothing that could be opened", async () => {
    const place = await fresh();
    const nowhere: StorePlace =
      place.kind === "sqlite"
        ? { kind: "sqlite", file: "/dev/null/store" }
        : { kind: "postgres", url: "postgres://nobody@127.0.0.1:1/nothing" };
    await expect(openStore(nowhere, testOptions())).rejects.toMatchObject({ code: "unreachable" });
    if (place.kind !== "sqlite") return;
    await writeFile(place.file, "not a database, but long enough to have a header".repeat(100));
    await expect(openStore(place, testOptions())).rejects.toMatchObject({ code: "not-a-store" });
  });

  it("waits for the disk at each commit, whatever the database would do by itself", async () => {
    const place = await fresh();
    const database = await openDatabase(place);
    const ask = async (question: string) => (await sql.raw(question).execute(database.db)).rows;
    if (place.kind === "sqlite") {
      expect(await ask("pragma journal_mode")).toEqual([{ journal_mode: "wal" }]);
      expect(await ask("pragma synchronous")).toEqual([{ synchronous: 2 }]);
    } else {
      expect(await ask("show synchronous_commit")).toEqual([{ synchronous_commit: "on" }]);
    }
    await database.close();
  });

  it("lets only its owner read the file", async () => {
    const place = await fresh();
    if (place.kind !== "sqlite") return;
    await (await openStore(place, testOptions())).close();
    expect((await stat(place.file)).mode & 0o777).toBe(0o600);
  });

  it("knows every table that it makes, for the back-up", async () => {
    const place = await fresh();
    await (await openStore(place, testOptions())).close();
    const database = await openDatabase(place);
    const tables = (await database.db.introspection.getTables())
      .filter(({ schema }) => schema === undefined || place.kind === "sqlite" || place.url.includes(schema))
      .map(({ name }) => name);
    await database.close();
    const left = ["sessions", "store_version"];
    expect(new Set(tables)).toEqual(new Set([...KEPT_TABLES.map(({ name }) => name), ...left]));
  });

  it("numbers its migrations without gap", () => {
    expect(MIGRATIONS.map(({ version }) => version)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  });

  describe.each(MIGRATIONS.map(({ version }) => version))("version %i", (version) => {
    const expected = async () =>
      JSON.parse(await readFile(join(FIXTURES, `version-${version}.json`), "utf8"));

    it("is read from a back-up of then with everything that was kept", async () => {
      const backUp = join(FIXTURES, `version-${version}.zip`);
      const store = await restoreBackUp(backUp, await fresh(), testOptions());
      expect(JSON.parse(JSON.stringify(await contents(store, FILLED_SETTINGS)))).toEqual(await expected());
      await store.close();
    });

    it("is opened as a file of then with everything that was kept", async () => {
      const place = await fresh();
      if (place.kind !== "sqlite") return;
      await copyFile(join(FIXTURES, `version-${version}.sqlite`), place.file);
      const store = await openStore(place, testOptions());
      expect(JSON.parse(JSON.stringify(await contents(store, FILLED_SETTINGS)))).toEqual(await expected());
      expect(await store.people.session("session")).not.toBeNull();
      await store.close();
    });
  });
}
