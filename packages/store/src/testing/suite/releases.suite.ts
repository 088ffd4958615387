import { createHash } from "node:crypto";
import { rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { RANK } from "@pinwright/book";
import { canonicalJson } from "@pinwright/contract";
import { sql } from "kysely";
import { afterEach, beforeEach, expect, it } from "vitest";
import { migrateWithin } from "../../database/migrate.ts";
import { openDatabase } from "../../database/open-database.ts";
import { openStore, restoreBackUp } from "../../open.ts";
import type { NewRelease } from "../../releases/release.ts";
import { releaseStore } from "../../releases/release-store.ts";
import type { Store, StorePlace } from "../../store.ts";
import { cell, done, edit, tablesOf } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, testOptions } from "../options.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

const DRAWN = "a".repeat(64);
const ITEMS: NewRelease["items"] = [
  { kind: "tables", id: "book", about: {}, body: bytes('{"devices":{}}') },
  { kind: "body", id: "hs.a.from-to.en", about: {}, body: bytes('{"marks":[]}') },
  { kind: "frame", id: "hs.a.from-to.en", about: { bodyHash: DRAWN }, body: bytes("frame 苍鹭 A") },
];

const release = (name: string, more: Partial<NewRelease> = {}): NewRelease => ({
  ...{ book: "heron", name, request: `request-${name}`, changeNo: 1, note: "第一批", program: "1.0.0" },
  ...{ findings: { error: 0, warning: 2, note: 1 }, accepted: [], items: ITEMS },
  ...more,
});

/** Released revisions. */
export function releasesSuite(fresh: FreshPlace): void {
  let place: StorePlace;
  let store: Store;
  beforeEach(async () => {
    place = await fresh();
    store = await openStore(place, testOptions());
    for (const id of ["heron", "egret"])
      await store.books.add({ id, kind: "machine", tables: tablesOf({}), note: "" }, ANN);
  });
  afterEach(() => store.close());

  it("hold what was given, under the hash of their manifest, which is the same on every store", async () => {
    const made = done(await store.releases.add(release("A"), ANN));
    expect(made).toMatchObject({ book: "heron", name: "A", no: 1, personName: "Ann", note: "第一批" });
    const manifest = done(await store.releases.manifest("heron", "A"));
    expect(sha256(manifest)).toBe(made.hash);
    // Written from what was given by nothing but JSON with sorted keys and SHA-256.
    const items = ITEMS.map(({ body, ...item }) => ({
      ...item,
      hash: createHash("sha256").update(body).digest("hex"),
      bytes: body.byteLength,
    })).sort((p, q) => (p.kind < q.kind ? -1 : 1));
    const { request: _, items: __, ...said } = release("A");
    const own = {
      ...said,
      no: 1,
      at: made.at,
      personName: "Ann",
      format: "pinwright-release",
      version: 1,
      items,
    };
    expect(manifest).toBe(canonicalJson(own));
    expect(done(await store.releases.list("heron"))).toEqual([made]);
    expect(done(await store.releases.get("heron", "A"))).toEqual(made);
    expect(await store.releases.get("heron", "B")).toEqual({ refused: "not-found" });
    expect(await store.releases.list("ibis")).toEqual({ refused: "not-found" });
  });

  it("give back every byte, and keep once what two of them hold", async () => {
    done(await store.releases.add(release("A"), ANN));
    const other = {
      kind: "frame",
      id: "hs.a.from-to.en",
      about: { bodyHash: DRAWN },
      body: bytes("frame B"),
    } as const;
    done(await store.releases.add(release("B", { items: [...ITEMS.slice(0, 2), other] }), ANN));
    const text = async (name: string, kind: string): Promise<string> =>
      new TextDecoder().decode(done(await store.releases.body("heron", name, kind, "hs.a.from-to.en")));
    expect([await text("A", "frame"), await text("B", "frame")]).toEqual(["frame 苍鹭 A", "frame B"]);
    expect(await text("A", "body")).toBe(await text("B", "body"));
    const database = await openDatabase(place);
    const [{ n } = { n: 0 }] = (
      await sql<{ n: number }>`select count(*) as n from release_bodies`.execute(database.db)
    ).rows;
    await database.close();
    expect(Number(n)).toBe(4);
    expect((await store.releases.printed("heron", DRAWN.slice(0, 12))).map((one) => one.release)).toEqual([
      "B",
      "A",
    ]);
    expect(await store.releases.printed("egret", DRAWN.slice(0, 12))).toEqual([]);
    expect(await store.releases.body("heron", "A", "frame", "none")).toEqual({ refused: "not-found" });
  });

  it("take a name once, answer the same request again, and are not made of a book that went on", async () => {
    const made = done(await store.releases.add(release("A"), ANN));
    expect(await store.releases.add(release("A"), ANN)).toEqual({ done: made });
    expect(await store.releases.add(release("A"), BEN)).toEqual({ refused: "taken" });
    expect(await store.releases.add(release("A", { request: "another-one" }), ANN)).toEqual({
      refused: "taken",
    });
    done(await store.books.change("heron", edit("request-x", cell("devices", "r1", RANK, "", "a0")), BEN));
    expect(await store.releases.add(release("B"), ANN)).toMatchObject({ refused: "conflict" });
    expect(done(await store.releases.add(release("B", { changeNo: 2 }), ANN))).toMatchObject({ no: 2 });
    const both = await Promise.all(
      ["C", "D"].map((name) => store.releases.add(release(name, { changeNo: 2 }), ANN)),
    );
    expect(both.map((outcome) => done(outcome).no).sort()).toEqual([3, 4]);
  });

  it("are there whole or not at all", async () => {
    const twice = [...ITEMS, { kind: "tables", id: "book", about: {}, body: bytes("again") }] as const;
    await expect(store.releases.add(release("A", { items: twice }), ANN)).rejects.toThrow();
    expect(done(await store.releases.list("heron"))).toEqual([]);
    expect(await store.releases.verify()).toEqual([]);
    done(await store.releases.add(release("A"), ANN));
  });

  it("show it when somebody got round that", async () => {
    done(await store.releases.add(release("A"), ANN));
    done(await store.releases.add(release("B"), ANN));
    const database = await openDatabase(place);
    const drop =
      place.kind === "sqlite"
        ? ["drop trigger release_bodies_no_update", "drop trigger release_items_no_delete"]
        : [
            "drop trigger release_bodies_stay on release_bodies",
            "drop trigger release_items_stay on release_items",
          ];
    for (const statement of drop) await sql.raw(statement).execute(database.db);
    const own =
      done(await store.releases.items("heron", "A")).find(({ kind }) => kind === "tables")?.hash ?? "";
    await sql`update release_bodies set body = ${Buffer.from("not gzip")} where hash = ${own}`.execute(
      database.db,
    );
    await sql`delete from release_items where release = 'B' and kind = 'body'`.execute(database.db);
    await database.close();
    await expect(store.releases.body("heron", "A", "tables", "book")).rejects.toMatchObject({
      code: "damaged",
    });
    expect(await store.releases.verify()).toEqual([
      { book: "heron", release: "A", item: "tables book", what: "changed" },
      { book: "heron", release: "B", item: "tables book", what: "changed" },
      { book: "heron", release: "B", item: "body hs.a.from-to.en", what: "look-up" },
    ]);
  });

  it("come back from a back-up as they were", async () => {
    const made = done(await store.releases.add(release("A"), ANN));
    const file = join(tmpdir(), `pinwright-release-${process.pid}-${place.kind}.zip`);
    await store.backUp(file);
    const restored = await restoreBackUp(file, await fresh(), testOptions());
    expect(done(await restored.releases.list("heron"))).toEqual([made]);
    expect(await restored.releases.verify()).toEqual([]);
    await restored.close();
    await rm(file);
  });

  it("of a store of the version that first had them open after every later step", async () => {
    const old = await fresh();
    const database = await openDatabase(old);
    await database.write((db) => migrateWithin(db, database.kind, 9));
    await sql`insert into books (id, kind, label, label_zh, change_no, created_at, changed_at, archived)
      values ('heron', 'machine', '', '', 1, '2026-03-31T09:00:00.000Z', '2026-03-31T09:00:00.000Z', 0)`.execute(
      database.db,
    );
    const made = done(await releaseStore(database, () => "2026-03-31T09:30:00.000Z").add(release("A"), ANN));
    await database.close();
    const later = await openStore(old, testOptions());
    expect(done(await later.releases.get("heron", "A"))).toEqual(made);
    expect(await later.releases.verify()).toEqual([]);
    expect(done(await later.releases.body("heron", "A", "tables", "book"))).toEqual(
      Buffer.from('{"devices":{}}'),
    );
    await later.close();
  });
}
