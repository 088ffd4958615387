import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { RANK } from "@pinwright/book";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openStore, restoreBackUp } from "../../open.ts";
import type { Store } from "../../store.ts";
import { allSets, cell, done, edit, plain, replay, tablesOf } from "../cells.ts";
import { contents } from "../contents.ts";
import { FILLED_SETTINGS, fill } from "../filled-store.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, testOptions } from "../options.ts";

/** Back-ups, and what comes back of them. */
export function backUpSuite(fresh: FreshPlace): void {
  let folder: string;
  let file: string;
  let store: Store;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-back-up-"));
    file = join(folder, "today.zip");
    store = await openStore(await fresh(), testOptions());
  });
  afterEach(async () => {
    await store.close();
    await rm(folder, { recursive: true, force: true });
  });

  describe.each(["sqlite", "postgres"] as const)("restored into %s", (kind) => {
    it("gives back everything but sessions", async () => {
      await fill(store);
      await store.backUp(file);
      const restored = await restoreBackUp(file, await fresh(kind), testOptions());
      expect(await contents(restored, FILLED_SETTINGS)).toEqual(await contents(store, FILLED_SETTINGS));
      expect(await store.people.session("session")).not.toBeNull();
      expect(await restored.people.session("session")).toBeNull();
      // It goes on where it was: numbers, undo, and who changed what.
      const stale = edit("request-9", cell("devices", "r1", "id", "sw.left", "x"));
      expect(await restored.books.change("heron", stale, BEN)).toMatchObject({
        conflicts: [{ found: "sw.a", by: { no: 5, personName: "Ann" } }],
      });
      expect(done(await restored.books.undo("heron", "request-9", ANN)).no).toBe(7);
      await restored.audit.add({ personName: "Ann", action: "restore", detail: "", from: "" });
      expect((await restored.audit.list(9, 1))[0]?.no).toBe(3);
      await restored.close();
    });
  });

  it("is of one moment while others write, and keeps nobody from writing", async () => {
    const rows = Object.fromEntries(
      Array.from({ length: 3000 }, (_, i) => [`r${i}`, { [RANK]: `a${i}`, note: `${i}`.repeat(200) }]),
    );
    const start = tablesOf({ devices: rows });
    done(await store.books.add({ id: "heron", kind: "machine", tables: start, note: "" }, ANN));
    let done1 = false;
    let during = 0;
    const backUp = store.backUp(file).then(() => {
      done1 = true;
    });
    for (let n = 0; !done1; n += 1) {
      const both = ["r0", "r2999"].map((row) => cell("devices", row, "n", n === 0 ? "" : `${n}`, `${n + 1}`));
      done(await store.books.change("heron", edit(`request-${n}`, ...both), ANN));
      if (!done1) during += 1;
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    await backUp;
    expect(during).toBeGreaterThan(2);
    const restored = await restoreBackUp(file, await fresh(), testOptions());
    const { info, tables } = done(await restored.books.rows("heron"));
    const sets = await allSets(restored, "heron");
    expect(info.changeNo).toBe(sets.length);
    expect(plain(replay(sets))).toEqual(plain(tables));
    await restored.close();
    expect(await readdir(folder)).toEqual(["today.zip"]);
  });

  it("is refused when it is damaged, cut off or something else, and then nothing is written", async () => {
    await fill(store);
    await store.backUp(file);
    const whole = await readFile(file);
    const damaged = join(folder, "damaged.zip");
    const flipped = Buffer.from(whole);
    flipped.writeUInt8(flipped.readUInt8(1500) ^ 1, 1500);
    const place = await fresh();
    for (const bytes of [
      flipped,
      whole.subarray(0, -1),
      whole.subarray(1),
      Buffer.from("PK"),
      Buffer.alloc(0),
    ]) {
      await writeFile(damaged, bytes);
      await expect(restoreBackUp(damaged, place, testOptions())).rejects.toMatchObject({ code: "damaged" });
    }
    const missing = restoreBackUp(join(folder, "missing.zip"), place, testOptions());
    await expect(missing).rejects.toMatchObject({ code: "unreachable" });
    const restored = await restoreBackUp(file, place, testOptions());
    expect(await restored.books.list()).toHaveLength(3);
    await restored.close();
  });

  it("is not restored over a store", async () => {
    await store.backUp(file);
    const place = await fresh();
    const other = await openStore(place, testOptions());
    done(await other.books.add({ id: "egret", kind: "machine", tables: new Map(), note: "" }, ANN));
    await expect(restoreBackUp(file, place, testOptions())).rejects.toMatchObject({ code: "not-empty" });
    expect((await other.books.list()).map(({ id }) => id)).toEqual(["egret"]);
    await other.close();
  });

  it("leaves nothing behind when it cannot be written, nor takes what stands there", async () => {
    await writeFile(file, "yesterday");
    const taken = join(folder, "taken");
    await mkdir(join(taken, "folder"), { recursive: true });
    for (const wrong of [join(file, "below-a-file.zip"), taken]) {
      await expect(store.backUp(wrong)).rejects.toThrow();
    }
    expect(await readFile(file, "utf8")).toBe("yesterday");
    expect((await readdir(folder)).sort()).toEqual(["taken", "today.zip"]);
  });
}
