import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type CellTables, LIMITS, RANK } from "@pinwright/book";
import { unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SMALL, TestServer, type Visitor } from "../testing/test-server.ts";

const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);
const sha256 = (content: Uint8Array): string => createHash("sha256").update(content).digest("hex");

const PDF = bytes("%PDF-1.7\n% a bracket, revision B\n");
const OLD = bytes("%PDF-1.7\n% a bracket, revision A\n");
const STEP = bytes("ISO-10303-21;\nEND-ISO-10303-21;\n");

const rows = (list: readonly Readonly<Record<string, string>>[]) =>
  new Map(list.map((cells, i) => [String(i + 1), new Map(Object.entries({ [RANK]: `a${i}`, ...cells }))]));

/** A book with a bracket at revision B and a post that nobody drew. */
const DRAWN: CellTables = new Map([
  ...SMALL,
  [
    "parts",
    rows([
      {
        id: "br.plate",
        label: "Plate",
        kind: "laser-cut",
        source: "have-made",
        revision: "B",
        material: "steel",
        thickness_mm: "2",
      },
      { id: "tu.post", label: "Post", kind: "turned", source: "have-made", revision: "A" },
    ]),
  ],
  [
    "drawings",
    rows([
      { part: "br.plate", revision: "A", file: "plate-a.pdf", kind: "drawing", sha256: sha256(OLD) },
      { part: "br.plate", revision: "B", file: "plate-b.pdf", kind: "drawing", sha256: sha256(PDF) },
      { part: "br.plate", revision: "B", file: "plate-b.step", kind: "model" },
    ]),
  ],
  [
    "dimensions",
    rows([{ part: "br.plate", mark: "1", label: "Hole", nominal: "4.2", minus: "0", plus: "0.1" }]),
  ],
]);

let server: TestServer;
let owner: Visitor;
let viewer: Visitor;
let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "pinwright-files-"));
  server = await TestServer.start({ drawn: DRAWN });
  owner = await server.owner();
  viewer = await server.person(owner, "Vera", "viewer");
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

const put = (name: string, content: Uint8Array<ArrayBuffer>, book = "drawn") =>
  owner.get(`/api/books/${book}/files/${name}`, { method: "PUT", bytes: content });

describe("files of a book", () => {
  it("are put, listed, read by a viewer byte by byte, replaced and deleted", async () => {
    expect(await put("plate-b.pdf", OLD)).toMatchObject({ name: "plate-b.pdf", sha256: sha256(OLD) });
    expect(await put("plate-b.pdf", PDF)).toMatchObject({ bytes: PDF.length, personName: "Olga" });
    await put("plate-b.step", STEP);
    expect(await viewer.get("/api/books/drawn/files")).toMatchObject([
      { name: "plate-b.pdf", sha256: sha256(PDF) },
      { name: "plate-b.step", sha256: sha256(STEP) },
    ]);
    const answer = await viewer.send("/api/books/drawn/files/plate-b.pdf");
    expect(Buffer.compare(Buffer.from(await answer.arrayBuffer()), PDF)).toBe(0);
    const before = await viewer.send(`/api/books/drawn/files/plate-b.pdf?sha256=${sha256(OLD)}`);
    expect(Buffer.compare(Buffer.from(await before.arrayBuffer()), OLD)).toBe(0);
    await put("gone.pdf", PDF);
    await owner.get("/api/books/drawn/files/gone.pdf", { method: "DELETE" });
    expect(await owner.refusal("/api/books/drawn/files/gone.pdf")).toMatchObject({ code: "not-found" });
  });

  it("are saved by the browser and never shown, whatever they hold", async () => {
    await put("drawn.svg", bytes('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'));
    const { headers } = await viewer.send("/api/books/drawn/files/drawn.svg");
    expect(headers.get("content-disposition")).toMatch(/^attachment; filename="drawn.svg"/);
    expect(headers.get("content-security-policy")).toContain("sandbox");
    expect(headers.get("x-content-type-options")).toBe("nosniff");
    await owner.get("/api/books/drawn/files/drawn.svg", { method: "DELETE" });
  });

  it.each([
    ["lies.pdf", bytes("<html>"), "unreadable"],
    ["empty.pdf", bytes(""), "unreadable"],
    ["lies.step", PDF, "unreadable"],
    ["program.exe", bytes("MZ"), "bad-request"],
    ["con.pdf", PDF, "bad-request"],
    ["..%2Fout.pdf", PDF, "bad-request"],
    ["a%20b.pdf", PDF, "bad-request"],
    [".pdf", PDF, "bad-request"],
  ])("%s is refused", async (name, content, code) => {
    const sent = { method: "PUT", bytes: content };
    expect(await owner.refusal(`/api/books/drawn/files/${name}`, sent)).toMatchObject({ code });
  });

  it("are refused beyond their size, by someone who only looks, and in the shop", async () => {
    const large = new Uint8Array(LIMITS.drawingBytes + 1);
    large.set(PDF);
    const path = "/api/books/drawn/files/large.pdf";
    expect(await owner.refusal(path, { method: "PUT", bytes: large })).toMatchObject({ code: "too-large" });
    expect(await viewer.refusal(path, { method: "PUT", bytes: PDF })).toMatchObject({ code: "not-allowed" });
    expect(await viewer.refusal("/api/books/drawn/files/plate-b.pdf", { method: "DELETE" })).toMatchObject({
      code: "not-allowed",
    });
    expect(await owner.refusal("/api/books/shop/files")).toMatchObject({ code: "bad-request" });
    expect(await owner.refusal("/api/books/none/files")).toMatchObject({ code: "not-found" });
    const twin = { method: "PUT", bytes: PDF };
    expect(await owner.refusal("/api/books/drawn/files/Plate-B.pdf", twin)).toMatchObject({ code: "taken" });
  });
});

describe("a book with files", () => {
  it("takes them along in a ZIP, into a new book and back into itself", async () => {
    await put("plate-b.pdf", PDF);
    const answer = await owner.send("/api/books/drawn/export?format=zip");
    const zip = new Uint8Array(await answer.arrayBuffer());
    expect(Object.keys(unzipSync(zip)).filter((path) => path.startsWith("drawings/"))).toEqual([
      "drawings/plate-b.pdf",
      "drawings/plate-b.step",
    ]);
    const rehearsed = await owner.get("/api/import?name=copy.zip&rehearse=true", {
      method: "POST",
      bytes: zip,
    });
    expect(rehearsed).toMatchObject({ files: 2, no: null });
    const made = await owner.get("/api/import?name=copy.zip", { method: "POST", bytes: zip });
    expect(made).toMatchObject({ files: 2 });
    const { book } = made as { book: string };
    expect(await owner.get(`/api/books/${book}/files`)).toMatchObject([
      { name: "plate-b.pdf", sha256: sha256(PDF) },
      { name: "plate-b.step", sha256: sha256(STEP) },
    ]);
    await owner.get(`/api/books/${book}/files/plate-b.step`, { method: "DELETE" });
    await put("more.pdf", OLD, book);
    await owner.get(`/api/books/${book}/import?name=copy.zip`, { method: "POST", bytes: zip });
    expect(await owner.get(`/api/books/${book}/files`)).toMatchObject([
      { name: "more.pdf" },
      { name: "plate-b.pdf" },
      { name: "plate-b.step" },
    ]);
  });

  it("exports a named state with the files that it spoke of", async () => {
    await put("plate-b.pdf", PDF);
    const kept = (await owner.post("/api/books/drawn/snapshots", { name: "as sent" })) as { id: string };
    await put("plate-b.pdf", OLD);
    const answer = await owner.send(`/api/books/drawn/export?format=zip&snapshot=${kept.id}`);
    const zip = unzipSync(new Uint8Array(await answer.arrayBuffer()));
    expect(sha256(zip["drawings/plate-b.pdf"] ?? new Uint8Array())).toBe(sha256(PDF));
    await put("plate-b.pdf", PDF);
  });
});

describe("a first-article check", () => {
  it("comes as a PDF, and not for a part or a sample that is not there", async () => {
    const path = "/api/books/drawn/first-article?date=2026-11-30&language=en&part=br.plate";
    const answer = await viewer.send(path);
    expect(answer.headers.get("content-type")).toBe("application/pdf");
    writeFileSync(join(folder, "check.pdf"), new Uint8Array(await answer.arrayBuffer()));
    const text = execFileSync("pdftotext", ["-layout", join(folder, "check.pdf"), "-"], { encoding: "utf8" });
    expect(text).toMatch(/4\.2 mm\s+\+0\.1 0\s+4\.2 … 4\.3/);
    expect(await viewer.refusal(`${path}x`)).toMatchObject({ code: "unreadable" });
    expect(await viewer.refusal(`${path}&sample=none`)).toMatchObject({ code: "unreadable" });
  });
});

describe("a pack that is sent out", () => {
  const order = {
    parts: [{ part: "br.plate", quantity: 25 }],
    date: "2026-11-30",
    due: "2026-12-11",
    language: "both",
  };
  const packed = async (body: unknown): Promise<Uint8Array> => {
    const answer = await viewer.send("/api/books/drawn/send-out", { method: "POST", body });
    if (!answer.ok) throw new Error(await answer.text());
    return new Uint8Array(await answer.arrayBuffer());
  };

  it("holds order sheet, drawings of the present revision only, and their hashes; another program reads it", async () => {
    await put("plate-b.pdf", PDF);
    await put("plate-a.pdf", OLD);
    const path = join(folder, "pack.zip");
    writeFileSync(path, await packed(order));
    const script = [
      "import csv,hashlib,io,json,sys,zipfile",
      "z=zipfile.ZipFile(sys.argv[1])",
      "names=z.namelist()",
      "rows=list(csv.reader(io.StringIO(z.read('contents.csv').decode('utf-8-sig'))))",
      "good=[hashlib.sha256(z.read(r[0])).hexdigest()==r[5] and len(z.read(r[0]))==int(r[4]) for r in rows[1:]]",
      "print(json.dumps([z.testzip(),names,[r[0] for r in rows[1:]],good]))",
    ].join("\n");
    const [bad, names, listed, good] = JSON.parse(
      execFileSync("python3", ["-c", script, path], { encoding: "utf8" }),
    );
    expect(bad).toBeNull();
    expect(names).toEqual([
      "order-sheet.pdf",
      "br.plate_B/first-article.pdf",
      "br.plate_B/plate-b.pdf",
      "br.plate_B/plate-b.step",
      "contents.csv",
    ]);
    expect(listed).toEqual(names.slice(0, -1));
    expect(good).toEqual([true, true, true, true]);
    writeFileSync(join(folder, "order.pdf"), unzipSync(await packed(order))["order-sheet.pdf"] ?? "");
    const text = execFileSync("pdftotext", ["-layout", join(folder, "order.pdf"), "-"], { encoding: "utf8" });
    for (const said of ["br.plate", "25", "2026-12-11", "steel", "2 mm", "plate-b.step", "外协订单"])
      expect(text).toContain(said);
    expect(text).not.toContain("plate-a");
  });

  it("has the same bytes each time", async () => {
    expect(Buffer.compare(await packed(order), await packed(order))).toBe(0);
  });

  it("does not go out with a wrong, missing or unknown drawing", async () => {
    const refusal = (body: unknown) => viewer.refusal("/api/books/drawn/send-out", { method: "POST", body });
    await put("plate-b.pdf", OLD);
    expect(await refusal(order)).toMatchObject({
      code: "unreadable",
      message: expect.stringContaining("plate-b.pdf of br.plate is not the one"),
    });
    await owner.get("/api/books/drawn/files/plate-b.pdf", { method: "DELETE" });
    expect((await refusal(order)).message).toContain("plate-b.pdf of br.plate is not there");
    await put("plate-b.pdf", PDF);
    const posts = {
      ...order,
      parts: [
        { part: "tu.post", quantity: 1 },
        { part: "none", quantity: 1 },
      ],
    };
    expect((await refusal(posts)).message).toMatch(/no part "none".*tu\.post has no drawing/);
    expect(await refusal({ ...order, parts: [] })).toMatchObject({ code: "bad-request" });
    expect(await refusal({ ...order, parts: [{ part: "br.plate", quantity: 0 }] })).toMatchObject({
      code: "bad-request",
    });
  });
});
