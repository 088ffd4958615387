import { RANK } from "@pinwright/book";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { Actor, Store } from "../../store.ts";
import { allSets, cell, done, edit, type PlainTables, plain, replay, tablesOf } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, testOptions } from "../options.ts";

const START: PlainTables = {
  devices: { r1: { [RANK]: "a0", x_mm: "0" }, r2: { [RANK]: "a1", x_mm: "0" } },
};

/** Taking back and making again, each person for themselves. */
export function undoSuite(fresh: FreshPlace): void {
  let store: Store;
  let requests = 0;
  beforeEach(async () => {
    store = await openStore(await fresh(), testOptions());
    await store.books.add({ id: "heron", kind: "machine", tables: tablesOf(START), note: "" }, ANN);
  });
  afterEach(() => store.close());

  const id = () => {
    requests += 1;
    return `request-${requests}`;
  };
  const set = async (actor: Actor, row: string, from: string, to: string) =>
    done(await store.books.change("heron", edit(id(), cell("devices", row, "x_mm", from, to)), actor));
  const undo = (actor: Actor) => store.books.undo("heron", id(), actor);
  const redo = (actor: Actor) => store.books.redo("heron", id(), actor);
  const places = async () => {
    const { devices } = plain(done(await store.books.rows("heron")).tables);
    return [devices?.r1?.x_mm, devices?.r2?.x_mm];
  };

  it("takes back one's own sets, last first, and makes them again in their order", async () => {
    await set(ANN, "r1", "0", "1");
    await set(ANN, "r2", "0", "5");
    await set(ANN, "r1", "1", "2");
    const seen: unknown[] = [];
    for (const step of [undo, undo, redo, redo, undo, undo, undo]) {
      done(await step(ANN));
      seen.push(await places());
    }
    expect(seen).toEqual([
      ["1", "5"],
      ["1", "0"],
      ["1", "5"],
      ["2", "5"],
      ["1", "5"],
      ["1", "0"],
      ["0", "0"],
    ]);
    expect(await undo(ANN)).toEqual({ refused: "nothing-to-undo" });
    for (const _ of [1, 2, 3]) done(await redo(ANN));
    expect(await places()).toEqual(["2", "5"]);
    expect(await redo(ANN)).toEqual({ refused: "nothing-to-redo" });
    expect(plain(replay(await allSets(store, "heron")))).toEqual(
      plain(done(await store.books.rows("heron")).tables),
    );
  });

  it("says which set takes back which", async () => {
    await set(ANN, "r1", "0", "1");
    expect(done(await undo(ANN))).toMatchObject({ no: 3, kind: "undo", reverses: 2, person: "ann" });
    expect(done(await redo(ANN))).toMatchObject({ no: 4, kind: "redo", reverses: 3 });
    expect(done(await store.books.history("heron", 9, 9)).map((head) => head.undoneBy)).toEqual([
      null,
      4,
      3,
      null,
    ]);
  });

  it("leaves what others did alone", async () => {
    await set(ANN, "r1", "0", "1");
    await set(BEN, "r2", "0", "5");
    done(await undo(ANN));
    expect(await places()).toEqual(["0", "5"]);
    expect(await undo(ANN)).toEqual({ refused: "nothing-to-undo" });
    expect(await redo(BEN)).toEqual({ refused: "nothing-to-redo" });
  });

  it("is refused where someone changed the cell since, and then changes nothing", async () => {
    await store.books.change(
      "heron",
      edit(id(), cell("devices", "r1", "x_mm", "0", "1"), cell("devices", "r2", "x_mm", "0", "1")),
      ANN,
    );
    const ben = await set(BEN, "r1", "1", "7");
    expect(await undo(ANN)).toEqual({
      refused: "conflict",
      conflicts: [
        {
          ...cell("devices", "r1", "x_mm", "1", "0"),
          found: "7",
          reason: "cell",
          by: { no: 3, personName: "Ben", at: ben.set.at },
        },
      ],
    });
    expect(await places()).toEqual(["7", "1"]);
    done(await undo(BEN));
    done(await undo(ANN));
    expect(await places()).toEqual(["0", "0"]);
  });

  it("makes nothing again once something else was done", async () => {
    await set(ANN, "r1", "0", "1");
    done(await undo(ANN));
    await set(ANN, "r1", "0", "2");
    expect(await redo(ANN)).toEqual({ refused: "nothing-to-redo" });
    done(await undo(ANN));
    done(await redo(ANN));
    expect(await places()).toEqual(["2", "0"]);
    expect(await redo(ANN)).toEqual({ refused: "nothing-to-redo" });
  });

  it("does not take back what the book began with", async () => {
    expect(await undo(ANN)).toEqual({ refused: "nothing-to-undo" });
  });

  it("is answered as before when it is asked for again", async () => {
    await set(ANN, "r1", "0", "1");
    await set(ANN, "r2", "0", "1");
    const first = done(await store.books.undo("heron", "once-only", ANN));
    expect(done(await store.books.undo("heron", "once-only", ANN))).toEqual(first);
    expect(await places()).toEqual(["1", "0"]);
    expect(await store.books.redo("heron", "once-only", ANN)).toEqual({ refused: "taken" });
  });

  it("takes back a deleted row and a very large import", async () => {
    const before = plain(done(await store.books.rows("heron")).tables);
    const rows = Array.from({ length: 3_500 }, (_, index): [string, Record<string, string>] => [
      `n${index}`,
      {
        ...Object.fromEntries(["a", "b", "c", "d"].map((name) => [name, `${name} of row ${index}`])),
        [RANK]: `b${index}`,
        x_mm: `${index}`,
        y_mm: "1",
        label: `row ${index}`,
        note: "imported",
      },
    ]);
    const imported = tablesOf({ devices: Object.fromEntries(rows) });
    const request = { id: id(), kind: "import", note: "big.xlsx" } as const;
    expect(done(await store.books.replace("heron", imported, request, ANN))?.cells).toBe(31_504);
    expect(done(await undo(ANN)).cells).toBe(31_504);
    expect(plain(done(await store.books.rows("heron")).tables)).toEqual(before);
    done(await redo(ANN));
    expect(done(await store.books.rows("heron")).tables.get("devices")?.size).toBe(3_500);
    done(await undo(ANN));
    // Sets of 31,504 cells come three at a time, however many are asked for.
    const numbers = done(await store.books.since("heron", 1, 1000)).map(({ no }) => no);
    expect(numbers).toEqual([2, 3, 4]);
    expect(done(await store.books.since("heron", 4, 1000)).map(({ no }) => no)).toEqual([5]);
  });
}
