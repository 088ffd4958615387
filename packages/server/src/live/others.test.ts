import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ServerEvent } from "@pinwright/contract";
import { openStore, type Store } from "@pinwright/store";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { Shelf } from "../books/shelf.ts";
import { SMALL } from "../testing/test-server.ts";
import { Announcer } from "./announcer.ts";
import { Hub } from "./hub.ts";
import { Others } from "./others.ts";

const ACTOR = { personId: "p1", personName: "Olga" };

describe("two servers on one store", () => {
  let folder = "";
  const stores: Store[] = [];
  let hub: Hub;
  let others: Others;
  let shelf: Shelf;
  const events: ServerEvent[] = [];

  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-others-"));
    let ids = 0;
    for (let i = 0; i < 2; i++)
      stores.push(
        await openStore(
          { kind: "sqlite", file: join(folder, "store.sqlite") },
          { now: () => "2026-03-31T09:30:00.000Z", newId: () => `id${++ids}` },
        ),
      );
    await here().books.add({ id: "small", kind: "machine", tables: SMALL, note: "" }, ACTOR);
    hub = new Hub("run", () => 0);
    hub.push = (event) => void events.push(event);
    shelf = new Shelf(here());
    const announcer = new Announcer(shelf, hub);
    others = new Others(here(), announcer, () => undefined);
  });
  afterEach(async () => {
    others.close();
    hub.close();
    for (const store of stores.splice(0)) await store.close();
    events.splice(0);
    await rm(folder, { recursive: true, force: true });
  });

  const at = (i: number): Store => {
    const store = stores[i];
    if (store === undefined) throw new Error("There are two stores.");
    return store;
  };
  const here = (): Store => at(0);
  const change = (store: Store, id: string, from: string, to: string) =>
    store.books.change(
      "small",
      { id, kind: "edit", note: "", changes: [{ table: "devices", row: "1", column: "x_mm", from, to }] },
      ACTOR,
    );
  const until = async (count: number): Promise<void> => {
    while (events.length < count) await new Promise((resolve) => setTimeout(resolve, 20));
  };

  it("hear of each other's changes within a second, once, and read books as they are now", async () => {
    await shelf.now("small");
    // The first look only learns how things stand.
    await new Promise((resolve) => setTimeout(resolve, 600));
    await change(at(1), "change-1", "0", "1");
    const before = performance.now();
    await until(1);
    expect(performance.now() - before).toBeLessThan(1000);
    await change(at(1), "change-2", "1", "2");
    expect((await shelf.now("small")).tables.get("devices")?.get("1")?.get("x_mm")).toBe("2");
    await until(2);
    await at(1).books.setArchived("small", true);
    await until(3);
    await new Promise((resolve) => setTimeout(resolve, 900));
    expect(events).toMatchObject([
      { type: "change", book: "small", no: 2 },
      { type: "change", book: "small", no: 3 },
      { type: "books" },
    ]);
  });
});
