import { bookRowsSchema, importResultSchema } from "@pinwright/contract";
import { strToU8, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SMALL, TestServer, type Visitor } from "../testing/test-server.ts";

const zip = (files: Readonly<Record<string, string>>): Uint8Array<ArrayBuffer> =>
  new Uint8Array(
    zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)]))),
  );

const MACHINE = '{"id":"sent","label":"Sent"}';

describe("books and files", () => {
  let server: TestServer;
  let owner: Visitor;
  beforeAll(async () => {
    server = await TestServer.start();
    owner = await server.owner();
  });
  afterAll(() => server.close());

  const rows = async (book: string) =>
    bookRowsSchema.parse(await owner.get(`/api/books/${book}/rows`)).tables;
  const send = async (path: string, bytes: Uint8Array<ArrayBuffer>) =>
    importResultSchema.parse(await owner.get(path, { method: "POST", bytes }));
  const fetchFile = async (path: string): Promise<Uint8Array<ArrayBuffer>> => {
    const response = await owner.send(path);
    expect(response.headers.get("content-security-policy")).toContain("sandbox");
    return new Uint8Array(await response.arrayBuffer());
  };

  it("are made blank or of an example, under a name that is free", async () => {
    const book = { id: "mine", label: "Mine", labelZh: "我的", from: "blank" };
    expect(await owner.post("/api/books", book)).toMatchObject({
      id: "mine",
      label: "Mine",
      labelZh: "我的",
      changeNo: 1,
    });
    expect((await rows("mine")).machine?.machine).toMatchObject({ id: '"mine"', label: '"Mine"' });
    expect(await owner.refusal("/api/books", { method: "POST", body: book })).toMatchObject({
      code: "taken",
    });
    await owner.post("/api/books", { id: "light", label: "Light", from: "first-light" });
    expect(Object.keys((await rows("light")).devices ?? {}).length).toBeGreaterThan(5);
    expect(await owner.post("/api/books/mine", { archived: true }, "PATCH")).toMatchObject({
      archived: true,
    });
    expect(
      await owner.refusal("/api/books/shop", { method: "PATCH", body: { archived: true } }),
    ).toMatchObject({
      code: "not-allowed",
    });
  });

  for (const format of ["zip", "xlsx"])
    it(`go out as ${format} and come back the same, into a book and as another`, async () => {
      await owner.post("/api/books", { id: `out-${format}`, label: "Out", from: "first-light" });
      const file = await fetchFile(`/api/books/out-${format}/export?format=${format}`);
      const again = await send(`/api/books/out-${format}/import?name=x.${format}`, file);
      expect(again).toMatchObject({
        book: `out-${format}`,
        no: null,
        added: 0,
        changed: 0,
        removed: 0,
        faults: [],
      });
      const other = await send(`/api/import?name=Out+Two.${format}`, file);
      expect(other).toMatchObject({ book: `out-${format}-2`, no: 1, faults: [] });
      const [a, b] = [await rows(`out-${format}`), await rows(`out-${format}-2`)];
      expect(Object.keys(b).sort()).toEqual(Object.keys(a).sort());
    });

  it("come in with all their faults, and tell in a rehearsal what would change", async () => {
    const devices = "id,x_mm,strange\nsw.left,ten,\nsw.left,5,kept\n";
    const file = zip({ "machine.json": MACHINE, "devices.csv": devices });
    const path = "/api/import?name=with%20faults.zip";
    const rehearsed = await send(`${path}&rehearse=true`, file);
    expect(rehearsed).toMatchObject({ book: "sent", no: null });
    expect(rehearsed.faults.map((fault) => fault.code)).toEqual(
      expect.arrayContaining(["number-form", "id-duplicate", "column-unknown"]),
    );
    expect(await owner.refusal("/api/books/sent/rows")).toMatchObject({ code: "not-found" });
    expect(await send(path, file)).toMatchObject({ book: "sent", no: 1 });
    const found = Object.values((await rows("sent")).devices ?? {});
    expect(found).toMatchObject([{ x_mm: "ten" }, { x_mm: "5", strange: "kept" }]);

    const mended = zip({ "machine.json": MACHINE, "devices.csv": "id,x_mm\nsw.left,10\nsw.right,5\n" });
    const would = await send("/api/books/sent/import?name=a.zip&rehearse=true", mended);
    expect(would).toMatchObject({ no: null, added: 1, changed: 1, removed: 1 });
    expect((await send("/api/books/sent/import?name=a.zip", mended)).no).toBe(2);
    expect(await owner.get("/api/books/sent/history?limit=1")).toMatchObject([
      { kind: "import", note: "a.zip" },
    ]);
    await owner.post("/api/books/sent/undo", { id: "undo-import" });
    expect(Object.values((await rows("sent")).devices ?? {})).toMatchObject(found);
  });

  it("that are no books change nothing, and climb nowhere", async () => {
    const before = await owner.get("/api/books");
    for (const bytes of [strToU8("hello"), new Uint8Array([0x50, 0x4b, 3, 4, 9, 9])]) {
      const result = await send("/api/import?name=..%2F..%2Fx.zip", new Uint8Array(bytes));
      expect(result.book).toBeNull();
      expect(result.faults.length).toBeGreaterThan(0);
    }
    const climbing = zip({ "../../evil.csv": "x", "/etc/evil": "x", "outlines/../../../evil.dxf": "x" });
    const result = await send("/api/import?name=x.zip&rehearse=true", climbing);
    expect(result.faults.map((fault) => fault.code)).toContain("zip-path");
    const empty = { method: "POST", bytes: new Uint8Array(0) };
    expect(await owner.refusal("/api/import?name=x.zip", empty)).toMatchObject({ code: "unreadable" });
    expect(await owner.get("/api/books")).toEqual(before);
  });

  it("are brought back to a state with a name, as a change that can be undone", async () => {
    const snapshot = await owner.post("/api/books/small/snapshots", { name: "as it was" });
    expect(snapshot).toMatchObject({ name: "as it was", personName: "Olga" });
    const [{ id = "" } = {}] = await server.store.books
      .snapshots("small")
      .then((o) => ("done" in o ? o.done : []));
    await owner.post("/api/books/small/changes", {
      id: "after-snapshot",
      changes: [{ table: "devices", row: "1", column: "x_mm", from: "0", to: "99" }],
    });
    const restored = await owner.post(`/api/books/small/snapshots/${id}/restore`, { id: "restore-1" });
    expect(restored).toMatchObject({ book: "small", added: 0, changed: 1, removed: 0 });
    expect((await rows("small")).devices?.["1"]?.x_mm).toBe(SMALL.get("devices")?.get("1")?.get("x_mm"));
    await owner.post("/api/books/small/undo", { id: "undo-restore" });
    expect((await rows("small")).devices?.["1"]?.x_mm).toBe("99");
    const file = await fetchFile(`/api/books/small/export?format=zip&snapshot=${id}`);
    const would = await send("/api/books/small/import?name=s.zip&rehearse=true", file);
    expect(would).toMatchObject({ added: 0, changed: 1, removed: 0 });
    expect(
      await owner.refusal("/api/books/small/snapshots/none/restore", {
        method: "POST",
        body: { id: "restore-2" },
      }),
    ).toMatchObject({ code: "not-found" });
  });

  it("are read as tables with strange headings, as far as they are tables", async () => {
    const csv = strToU8("Our switches\nName;Left\nsw.a;1,5\n");
    const path = "/api/read-sheet?name=ours.csv";
    expect(await owner.get(path, { method: "POST", bytes: new Uint8Array(csv) })).toMatchObject([
      { header: ["Name", "Left"], rows: [["sw.a", "1,5"]], headerRow: 2, faults: [] },
    ]);
    const broken = { method: "POST", bytes: new Uint8Array([0x50, 0x4b, 3, 4, 9, 9]) };
    expect(await owner.refusal(path, broken)).toMatchObject({ status: 422, code: "unreadable" });
  });

  it("keep how strange headings were mapped", async () => {
    const mapping = { table: "devices", header: ["Name", "Left"], columns: ["id", "x_mm"] };
    await owner.post("/api/mappings", mapping, "PUT");
    expect(await owner.get("/api/mappings")).toEqual([mapping]);
  });
});
