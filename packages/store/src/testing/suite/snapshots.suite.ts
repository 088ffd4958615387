import { RANK } from "@pinwright/book";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { Store } from "../../store.ts";
import { cell, done, edit, plain, tablesOf } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, testOptions } from "../options.ts";

const START = { devices: { r1: { [RANK]: "a", note: "苍鹭\u2028𝄞\n" }, r0: { [RANK]: "b" } } };

/** States with a name. */
export function snapshotsSuite(fresh: FreshPlace): void {
  let store: Store;
  beforeEach(async () => {
    store = await openStore(await fresh(), testOptions());
    for (const id of ["heron", "egret"]) {
      await store.books.add({ id, kind: "machine", tables: tablesOf(START), note: "" }, ANN);
    }
  });
  afterEach(() => store.close());
  const change = (to: string, from: string) =>
    store.books.change("heron", edit(`to-${to}-xx`, cell("devices", "r1", "x_mm", from, to)), BEN);

  it("hold what the book held, whatever happens to it later", async () => {
    const kept = done(await store.books.addSnapshot("heron", "as ordered", BEN));
    expect(kept).toMatchObject({ name: "as ordered", changeNo: 1, personName: "Ben" });
    await change("1", "");
    expect(plain(done(await store.books.snapshotRows("heron", kept.id)))).toEqual(START);
    expect(done(await store.books.snapshots("heron"))).toEqual([kept]);
    expect(await store.books.snapshotRows("egret", kept.id)).toEqual({ refused: "not-found" });
  });

  it("have the same hash when they hold the same, and another when not", async () => {
    const hash = async (book: string, name: string) =>
      done(await store.books.addSnapshot(book, name, ANN)).hash;
    const first = await hash("heron", "one");
    expect(first).toMatch(/^[0-9a-f]{64}$/);
    expect(await hash("egret", "one")).toBe(first);
    await change("1", "");
    expect(await hash("heron", "two")).not.toBe(first);
    await store.books.undo("heron", "undo-it-1", BEN);
    expect(await hash("heron", "three")).toBe(first);
  });

  it("take a name once", async () => {
    const kept = done(await store.books.addSnapshot("heron", "one", ANN));
    await change("1", "");
    expect(await store.books.addSnapshot("heron", "one", ANN)).toEqual({ refused: "taken" });
    expect(done(await store.books.snapshots("heron"))).toEqual([kept]);
  });

  it("are given back by a replace, which can be undone", async () => {
    const kept = done(await store.books.addSnapshot("heron", "one", ANN));
    await change("1", "");
    const tables = done(await store.books.snapshotRows("heron", kept.id));
    const request = { id: "restore-1", kind: "restore", note: "one" } as const;
    done(await store.books.replace("heron", tables, request, ANN));
    expect(plain(done(await store.books.rows("heron")).tables)).toEqual(START);
    done(await store.books.undo("heron", "undo-it-1", ANN));
    expect(
      done(await store.books.rows("heron"))
        .tables.get("devices")
        ?.get("r1")
        ?.get("x_mm"),
    ).toBe("1");
  });
}
