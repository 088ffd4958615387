import { createHash } from "node:crypto";
import { sql } from "kysely";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openDatabase } from "../../database/open-database.ts";
import { openStore } from "../../open.ts";
import type { Store, StorePlace } from "../../store.ts";
import { done } from "../cells.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, BEN, testOptions } from "../options.ts";

const bytes = (text: string): Uint8Array => Buffer.from(text);
const hashOf = (content: Uint8Array): string => createHash("sha256").update(content).digest("hex");

/** Files of books. */
export function filesSuite(fresh: FreshPlace): void {
  let place: StorePlace;
  let store: Store;
  beforeEach(async () => {
    place = await fresh();
    store = await openStore(place, testOptions());
    for (const id of ["heron", "egret"])
      await store.books.add({ id, kind: "machine", tables: new Map(), note: "" }, ANN);
  });
  afterEach(() => store.close());
  const put = (name: string, text: string, actor = ANN, book = "heron") =>
    store.files.put(book, [{ name, bytes: bytes(text) }], actor);
  const read = async (name: string, hash?: string, book = "heron") =>
    Buffer.from(done(await store.files.get(book, name, hash)).bytes).toString();

  it("come back byte by byte, in the order of their names", async () => {
    const all = Uint8Array.from({ length: 70_000 }, (_, i) => (i * 7) % 256);
    done(await store.files.put("heron", [{ name: "b.pdf", bytes: all }], ANN));
    done(await put("A.step", ""));
    const list = done(await store.files.list("heron"));
    expect(list.map(({ name, bytes: size, personName }) => [name, size, personName])).toEqual([
      ["A.step", 0, "Ann"],
      ["b.pdf", 70_000, "Ann"],
    ]);
    const { file, bytes: found } = done(await store.files.get("heron", "b.pdf"));
    expect(file.sha256).toBe(hashOf(all));
    expect(Buffer.compare(found, all)).toBe(0);
    expect(done(await store.files.list("egret"))).toEqual([]);
  });

  it("keep what a name had before, to be asked for by its hash in its own book only", async () => {
    done(await put("b.pdf", "first"));
    done(await put("b.pdf", "second", BEN));
    expect(await read("b.pdf")).toBe("second");
    expect(await read("b.pdf", hashOf(bytes("first")))).toBe("first");
    expect(done(await store.files.list("heron"))).toMatchObject([{ personName: "Ben", bytes: 6 }]);
    expect(await store.files.get("egret", "b.pdf", hashOf(bytes("first")))).toEqual({ refused: "not-found" });
    done(await put("b.pdf", "first", BEN));
    expect(await read("b.pdf")).toBe("first");
    expect(await read("b.pdf", hashOf(bytes("second")))).toBe("second");
    expect(done(await store.files.list("heron"))).toHaveLength(1);
  });

  it("are the same again without a trace, and shared by books", async () => {
    const [first] = done(await put("b.pdf", "same"));
    expect(done(await put("b.pdf", "same", BEN))).toEqual([first]);
    done(await put("other.pdf", "same", BEN, "egret"));
    const database = await openDatabase(place);
    const { rows } = await sql<{ n: number }>`select count(*) as n from file_bodies`.execute(database.db);
    await database.close();
    expect(Number(rows[0]?.n)).toBe(1);
  });

  it("are removed by name, and their content stays", async () => {
    done(await put("b.pdf", "text"));
    expect(done(await store.files.remove("heron", "b.pdf"))).toMatchObject({ name: "b.pdf" });
    expect(done(await store.files.list("heron"))).toEqual([]);
    expect(await store.files.get("heron", "b.pdf")).toEqual({ refused: "not-found" });
    expect(await store.files.remove("heron", "b.pdf")).toEqual({ refused: "not-found" });
    expect(await read("b.pdf", hashOf(bytes("text")))).toBe("text");
    done(await put("b.pdf", "text", BEN));
    expect(done(await store.files.list("heron"))).toMatchObject([{ personName: "Ben" }]);
  });

  it("are put all or none", async () => {
    done(await put("Post.step", "a"));
    const files = [
      { name: "new.pdf", bytes: bytes("new") },
      { name: "post.step", bytes: bytes("b") },
    ];
    expect(await store.files.put("heron", files, ANN)).toEqual({ refused: "taken" });
    const twins = ["x.pdf", "X.pdf"].map((name) => ({ name, bytes: bytes("x") }));
    expect(await store.files.put("heron", twins, ANN)).toEqual({ refused: "taken" });
    expect(done(await store.files.list("heron")).map(({ name }) => name)).toEqual(["Post.step"]);
    const bad = [
      { name: "new.pdf", bytes: bytes("new") },
      { name: "a\0.pdf", bytes: bytes("b") },
    ];
    await expect(store.files.put("heron", bad, ANN)).rejects.toMatchObject({ code: "bad-text" });
    expect(done(await store.files.list("heron"))).toHaveLength(1);
  });

  it("need a book, and come with a new one", async () => {
    expect(await put("b.pdf", "a", ANN, "none")).toEqual({ refused: "not-found" });
    expect(await store.files.list("none")).toEqual({ refused: "not-found" });
    expect(await store.files.remove("none", "b.pdf")).toEqual({ refused: "not-found" });
    const files = [{ name: "b.pdf", bytes: bytes("a") }];
    done(await store.books.add({ id: "swan", kind: "machine", tables: new Map(), note: "", files }, BEN));
    expect(await read("b.pdf", undefined, "swan")).toBe("a");
    const twins = [...files, { name: "B.pdf", bytes: bytes("b") }];
    const both = { id: "duck", kind: "machine", tables: new Map(), note: "", files: twins } as const;
    await expect(store.books.add(both, BEN)).rejects.toThrow("contradict");
    expect(await store.books.info("duck")).toBeNull();
  });

  it("have one present content each, however many put at once", async () => {
    const texts = Array.from({ length: 12 }, (_, i) => `text ${i % 5}`);
    await Promise.all(texts.map((text) => put("b.pdf", text)));
    const list = done(await store.files.list("heron"));
    expect(list).toHaveLength(1);
    for (const text of texts) expect(await read("b.pdf", hashOf(bytes(text)))).toBe(text);
  });

  it("that were changed behind its back are told", async () => {
    done(await put("b.pdf", "text"));
    const database = await openDatabase(place);
    const wrong = Buffer.from("tex_");
    await sql`update file_bodies set body = ${wrong}`.execute(database.db);
    await database.close();
    await expect(store.files.get("heron", "b.pdf")).rejects.toMatchObject({
      code: "damaged",
      message: expect.stringContaining("b.pdf of heron"),
    });
  });
}
