import { cellOf, RANK } from "@pinwright/book";
import { expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { Actor } from "../../store.ts";
import { allSets, cell, done, edit, plain, replay, tablesOf } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, testOptions } from "../options.ts";

const WRITERS = 8;
const WRITES = 25;

/** Many people writing at once, also from two programs. */
export function concurrencySuite(fresh: FreshPlace): void {
  it(`numbers the ${WRITERS * WRITES} sets of ${WRITERS} writers without gap or double, through two connections`, async () => {
    const place = await fresh();
    // Two stores on one place are what two servers are on one database.
    const stores = [await openStore(place, testOptions()), await openStore(place, testOptions())];
    const [store] = stores;
    if (store === undefined) throw new Error("no store");
    const rows = Object.fromEntries(Array.from({ length: WRITERS }, (_, i) => [`r${i}`, { [RANK]: "a" }]));
    const start = tablesOf({ devices: { ...rows, shared: { [RANK]: "b", count: "0" } } });
    done(await store.books.add({ id: "heron", kind: "machine", tables: start, note: "" }, ANN));
    let conflicts = 0;

    /** Changes a cell of its own, and tries to count the shared one up by what it saw. */
    const writer = async (index: number): Promise<number[]> => {
      const { books } = stores[index % stores.length] ?? store;
      const actor: Actor = { personId: `p${index}`, personName: `Person ${index}` };
      const numbers: number[] = [];
      for (let n = 0; n < WRITES; n += 1) {
        const own = cell("devices", `r${index}`, "n", n === 0 ? "" : `${n - 1}`, `${n}`);
        numbers.push(done(await books.change("heron", edit(`own-${index}-${n}`, own), actor)).no);
        const seen = cellOf(done(await books.rows("heron")).tables, "devices", "shared", "count");
        const shared = cell("devices", "shared", "count", seen, `${Number(seen) + 1}`);
        const counted = await books.change("heron", edit(`shared-${index}-${n}`, shared), actor);
        if ("done" in counted) numbers.push(counted.done.no);
        else conflicts += 1;
      }
      return numbers;
    };
    const numbers = (await Promise.all(Array.from({ length: WRITERS }, (_, index) => writer(index)))).flat();

    const counted = WRITERS * WRITES - conflicts;
    expect(numbers.sort((a, b) => a - b)).toEqual(
      Array.from({ length: WRITERS * WRITES + counted }, (_, i) => i + 2),
    );
    const { tables } = done(await store.books.rows("heron"));
    // No count was lost: each one that was acknowledged added one.
    expect(cellOf(tables, "devices", "shared", "count")).toBe(`${counted}`);
    expect(plain(replay(await allSets(store, "heron")))).toEqual(plain(tables));
    for (const one of stores) await one.close();
  });

  it("lets nobody miss a set who asks for what is new while others write", async () => {
    const store = await openStore(await fresh(), testOptions());
    const start = tablesOf({ devices: { r1: { [RANK]: "a" } } });
    done(await store.books.add({ id: "heron", kind: "machine", tables: start, note: "" }, ANN));
    let writing = true;
    const write = async () => {
      for (let n = 0; n < 100; n += 1) {
        done(await store.books.change("heron", edit(`c-${n}`, cell("devices", "r1", `c${n}`, "", "1")), ANN));
      }
      writing = false;
    };
    const follow = async () => {
      const seen: number[] = [];
      for (;;) {
        const last = !writing;
        const sets = done(await store.books.since("heron", seen.at(-1) ?? 0, 7));
        seen.push(...sets.map(({ no }) => no));
        if (last && sets.length === 0) return seen;
      }
    };
    const [, seen] = await Promise.all([write(), follow()]);
    expect(seen).toEqual(Array.from({ length: 101 }, (_, i) => i + 1));
    await store.close();
  });
}
