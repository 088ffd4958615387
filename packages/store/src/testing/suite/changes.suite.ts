import { RANK } from "@pinwright/book";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openStore } from "../../open.ts";
import type { Store } from "../../store.ts";
import { allSets, cell, done, edit, type PlainTables, plain, replay, tablesOf } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, testOptions } from "../options.ts";

const START: PlainTables = {
  machine: { machine: { [RANK]: "a0", label: '"Heron"', label_zh: '"苍鹭"' } },
  devices: { r1: { [RANK]: "a0", id: "sw.left" }, r2: { [RANK]: "a1", id: "sw.right" } },
};

const rename = (id: string, from: string, to: string) => edit(id, cell("devices", "r1", "id", from, to));

/** What a change set does to a book, and what it does not. */
export function changesSuite(fresh: FreshPlace): void {
  let store: Store;
  beforeEach(async () => {
    store = await openStore(await fresh(), testOptions());
    await store.books.add({ id: "heron", kind: "machine", tables: tablesOf(START), note: "begun" }, ANN);
  });
  afterEach(() => store.close());
  const tables = async () => plain(done(await store.books.rows("heron")).tables);

  describe("a book", () => {
    it("begins with its cells as change set 1", async () => {
      expect(await tables()).toEqual(START);
      const sets = await allSets(store, "heron");
      expect(sets).toMatchObject([{ no: 1, kind: "import", person: "ann", note: "begun", cells: 7 }]);
      expect(plain(replay(sets))).toEqual(START);
      expect(await store.books.info("heron")).toMatchObject({ label: "Heron", labelZh: "苍鹭", changeNo: 1 });
    });

    it("is not begun twice under one id", async () => {
      const again = { id: "heron", kind: "machine", tables: new Map(), note: "" } as const;
      expect(await store.books.add(again, BEN)).toEqual({ refused: "taken" });
      expect(await tables()).toEqual(START);
    });

    it("is listed by what its machine says, or by its id when that says nothing", async () => {
      const shop = { id: "shop", kind: "shop", tables: new Map(), note: "" } as const;
      await store.books.add(shop, ANN);
      const label = cell("machine", "machine", "label", '"Heron"', "not JSON");
      done(await store.books.change("heron", edit("request-1", label), ANN));
      expect((await store.books.list()).map((book) => [book.id, book.label])).toEqual([
        ["heron", "heron"],
        ["shop", "shop"],
      ]);
    });

    it("is put aside and taken back out", async () => {
      expect(done(await store.books.setArchived("heron", true)).archived).toBe(true);
      expect(done(await store.books.setArchived("heron", false)).archived).toBe(false);
    });

    it("that is not there is not found, whatever is asked of it", async () => {
      const { books } = store;
      expect(await books.info("egret")).toBeNull();
      for (const answer of [
        books.setArchived("egret", true),
        books.rows("egret"),
        books.change("egret", rename("request-1", "a", "b"), ANN),
        books.replace("egret", new Map(), { id: "request-1", kind: "import", note: "" }, ANN),
        books.undo("egret", "request-1", ANN),
        books.redo("egret", "request-1", ANN),
        books.since("egret", 0, 10),
        books.history("egret", 10, 10),
        books.changeSet("egret", 1),
        books.changeSet("heron", 2),
        books.snapshots("egret"),
        books.addSnapshot("egret", "x", ANN),
        books.snapshotRows("egret", "x"),
      ]) {
        expect(await answer).toEqual({ refused: "not-found" });
      }
    });
  });

  describe("a change", () => {
    it("is made whole, with its number and its author", async () => {
      const made = done(
        await store.books.change(
          "heron",
          edit(
            "request-1",
            cell("devices", "r1", "id", "sw.left", "sw.a"),
            cell("devices", "r3", RANK, "", "a2"),
          ),
          BEN,
        ),
      );
      expect(made).toMatchObject({ no: 2, repeated: false, set: { no: 2, person: "ben", cells: 2 } });
      const { devices } = await tables();
      expect(devices).toEqual({ ...START.devices, r1: { [RANK]: "a0", id: "sw.a" }, r3: { [RANK]: "a2" } });
      expect(done(await store.books.changeSet("heron", 2))).toEqual(made.set);
      const changedAt = made.set.at;
      expect(await store.books.info("heron")).toMatchObject({ changeNo: 2, changedAt });
    });

    it("that deletes a row leaves nothing of it", async () => {
      await store.books.change(
        "heron",
        edit("request-1", cell("devices", "r1", RANK, "a0", ""), cell("devices", "r1", "id", "sw.left", "")),
        ANN,
      );
      expect((await tables()).devices).toEqual({ r2: START.devices?.r2 });
    });

    it("that is sent again is answered as before and changes nothing", async () => {
      const request = rename("request-1", "sw.left", "sw.a");
      const first = done(await store.books.change("heron", request, ANN));
      await store.books.change("heron", rename("request-2", "sw.a", "sw.b"), BEN);
      const second = done(await store.books.change("heron", request, ANN));
      expect(second).toEqual({ ...first, repeated: true });
      expect((await tables()).devices?.r1?.id).toBe("sw.b");
    });

    it("that is sent twice at once is made once", async () => {
      const request = rename("request-1", "sw.left", "sw.a");
      const answers = await Promise.all([1, 2, 3].map(() => store.books.change("heron", request, ANN)));
      expect(answers.map((answer) => done(answer).no)).toEqual([2, 2, 2]);
      expect(answers.map((answer) => done(answer).repeated)).toEqual([false, true, true]);
    });

    it("is refused under an id that stands for something else", async () => {
      await store.books.change("heron", rename("request-1", "sw.left", "sw.a"), ANN);
      const others = [
        store.books.change("heron", rename("request-1", "sw.left", "sw.a"), BEN),
        store.books.change("heron", rename("request-1", "sw.a", "sw.c"), ANN),
        store.books.undo("heron", "request-1", ANN),
      ];
      for (const other of others) expect(await other).toEqual({ refused: "taken" });
      expect((await tables()).devices?.r1?.id).toBe("sw.a");
    });

    it("keeps every text as it was typed", async () => {
      const texts = [
        "'; drop table books; --",
        "a\u2028b\nc\td",
        "𝄞 苍鹭 é e\u0301",
        '{"#":"x"}',
        " ",
        "\\u0000",
      ];
      const changes = texts.map((text, index) => cell("devices", "r1", `c${index}`, "", text));
      const odd = ["__proto__", "constructor", "1", "row\u2029", "𝄞"].map((row) =>
        cell("devices", row, RANK, "", "b"),
      );
      const proto = cell("devices", "r1", "__proto__", "", "x");
      done(await store.books.change("heron", edit("request-1", ...changes, ...odd, proto), ANN));
      const kept = done(await store.books.rows("heron")).tables.get("devices");
      expect(texts.map((_, index) => kept?.get("r1")?.get(`c${index}`))).toEqual(texts);
      expect(kept?.get("r1")?.get("__proto__")).toBe("x");
      expect(odd.map(({ row }) => kept?.get(row)?.get(RANK))).toEqual(odd.map(() => "b"));
    });

    it("keeps a large drawing", async () => {
      const drawing = "0123456789".repeat(400_000);
      const made = edit(
        "request-1",
        cell("outlines", "a.svg", RANK, "", "a0"),
        cell("outlines", "a.svg", "text", "", drawing),
      );
      done(await store.books.change("heron", made, ANN));
      expect((await tables()).outlines?.["a.svg"]?.text === drawing).toBe(true);
    });

    it("of a row whose name cannot be kept is refused", async () => {
      for (const row of ["a\u0000b", "a\ud800"]) {
        const change = store.books.change(
          "heron",
          edit("request-1", cell("devices", row, RANK, "", "a")),
          ANN,
        );
        await expect(change).rejects.toMatchObject({ code: "bad-text" });
      }
      expect(await tables()).toEqual(START);
    });

    it("that is asked for together with a refused one is made all the same", async () => {
      const answers = await Promise.all(
        ["a", "b", "c"].map((to) =>
          store.books.change("heron", rename(`request-${to}`, "sw.left", `sw.${to}`), ANN),
        ),
      );
      const other = edit("request-d", cell("devices", "r2", "id", "sw.right", "sw.d"));
      expect(done(await store.books.change("heron", other, BEN)).no).toBe(3);
      expect(answers.filter((answer) => "done" in answer)).toHaveLength(1);
    });
  });

  describe("a conflict", () => {
    it("names who changed the cell, and changes nothing", async () => {
      const ann = done(await store.books.change("heron", rename("request-1", "sw.left", "sw.a"), ANN));
      const mine = edit(
        "request-2",
        cell("devices", "r2", "id", "sw.right", "sw.z"),
        cell("devices", "r1", "id", "sw.left", "sw.b"),
      );
      expect(await store.books.change("heron", mine, BEN)).toEqual({
        refused: "conflict",
        conflicts: [
          {
            ...cell("devices", "r1", "id", "sw.left", "sw.b"),
            found: "sw.a",
            reason: "cell",
            by: { no: 2, personName: "Ann", at: ann.set.at },
          },
        ],
      });
      expect((await tables()).devices?.r2?.id).toBe("sw.right");
      expect(await store.books.info("heron")).toMatchObject({ changeNo: 2 });
    });

    it("names the last of many who changed the cell, not of its row", async () => {
      await store.books.change("heron", rename("request-1", "sw.left", "sw.a"), ANN);
      await store.books.change("heron", rename("request-2", "sw.a", "sw.b"), BEN);
      await store.books.change("heron", edit("request-3", cell("devices", "r1", "note", "", "x")), ANN);
      const refused = await store.books.change("heron", rename("request-4", "sw.left", "sw.c"), ANN);
      expect(refused).toMatchObject({ conflicts: [{ by: { no: 3, personName: "Ben" } }] });
      const never = await store.books.change(
        "heron",
        edit("request-5", cell("devices", "r1", "x_mm", "3", "4")),
        ANN,
      );
      expect(never).toMatchObject({ conflicts: [{ found: "" }] });
      expect(JSON.stringify(never)).not.toContain('"by"');
    });

    it("names who deleted the row", async () => {
      const gone = [cell("devices", "r1", RANK, "a0", ""), cell("devices", "r1", "id", "sw.left", "")];
      await store.books.change("heron", edit("request-1", ...gone), BEN);
      for (const late of [
        cell("devices", "r1", "id", "sw.left", "sw.a"),
        cell("devices", "r1", "note", "", "x"),
      ]) {
        const refused = await store.books.change("heron", edit("request-2", late), ANN);
        expect(refused).toMatchObject({
          conflicts: [{ reason: "row-gone", by: { no: 2, personName: "Ben" } }],
        });
      }
    });

    it("names who filled in the row to delete", async () => {
      await store.books.change("heron", edit("request-1", cell("devices", "r1", "note", "", "x")), BEN);
      const gone = [cell("devices", "r1", RANK, "a0", ""), cell("devices", "r1", "id", "sw.left", "")];
      const refused = await store.books.change("heron", edit("request-2", ...gone), ANN);
      expect(refused).toMatchObject({
        conflicts: [{ reason: "row-used", found: "x", by: { no: 2, personName: "Ben" } }],
      });
    });
  });

  describe("replacing a book", () => {
    const wanted: PlainTables = {
      machine: { machine: { [RANK]: "a0", label: '"Egret"' } },
      devices: { r2: { [RANK]: "a1", id: "sw.right", note: "new" }, r9: { [RANK]: "a9" } },
    };
    const request = { id: "request-1", kind: "import", note: "egret.zip" } as const;

    it("is one set of what differs", async () => {
      const set = done(await store.books.replace("heron", tablesOf(wanted), request, ANN));
      expect(set?.changes).toEqual([
        cell("devices", "r1", RANK, "a0", ""),
        cell("devices", "r1", "id", "sw.left", ""),
        cell("devices", "r2", "note", "", "new"),
        cell("devices", "r9", RANK, "", "a9"),
        cell("machine", "machine", "label", '"Heron"', '"Egret"'),
        cell("machine", "machine", "label_zh", '"苍鹭"', ""),
      ]);
      expect(await tables()).toEqual(wanted);
      expect(await store.books.info("heron")).toMatchObject({ label: "Egret", labelZh: "" });
      expect(done(await store.books.replace("heron", tablesOf(wanted), request, ANN))).toEqual(set);
    });

    it("by what it is already makes no set", async () => {
      expect(done(await store.books.replace("heron", tablesOf(START), request, ANN))).toBeNull();
      expect(await allSets(store, "heron")).toHaveLength(1);
    });

    it("is refused when the book went on since", async () => {
      await store.books.change("heron", rename("request-2", "sw.left", "sw.a"), BEN);
      const refused = await store.books.replace("heron", tablesOf(wanted), request, ANN, 1);
      expect(refused).toEqual({ refused: "conflict", conflicts: [] });
      expect(done(await store.books.replace("heron", tablesOf(wanted), request, ANN, 2))?.no).toBe(3);
    });
  });

  it("tells what happened since a number, and lists it backwards", async () => {
    const names = ["sw.left", "sw.a", "sw.b", "sw.c", "sw.d"];
    for (const [index, to] of names.slice(1).entries()) {
      await store.books.change("heron", rename(`request-${index}`, names[index] ?? "", to), ANN);
    }
    const numbers = (list: readonly { readonly no: number }[]) => list.map(({ no }) => no);
    expect(numbers(done(await store.books.since("heron", 2, 2)))).toEqual([3, 4]);
    expect(done(await store.books.since("heron", 5, 2))).toEqual([]);
    const heads = done(await store.books.history("heron", 5, 3));
    expect(numbers(heads)).toEqual([4, 3, 2]);
    expect(heads[0]).not.toHaveProperty("changes");
  });
}
