import { execFileSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { LIMITS } from "../limits.ts";
import { sampleFiles } from "../testing/files.ts";
import { testFolder } from "../testing/folder.ts";
import { sampleBook, sampleShop } from "../testing/sample.ts";
import { readBook, writeBook, writeCells } from "./index.ts";

const { at, put } = testFolder();

/** Bytes that no text holds: every byte there is. */
const PDF = Buffer.concat([Buffer.from("%PDF-1.7\n"), Buffer.from(Array.from({ length: 256 }, (_, i) => i))]);
const STEP = Buffer.from("ISO-10303-21;\nEND-ISO-10303-21;\n");
const DRAWINGS = new Map<string, Uint8Array>([
  ["post-b.step", STEP],
  ["bracket-a.pdf", PDF],
]);

const plain = (drawings: ReadonlyMap<string, Uint8Array>): Record<string, string> =>
  Object.fromEntries([...drawings].map(([name, bytes]) => [name, Buffer.from(bytes).toString("hex")]));

describe("drawings of a book", () => {
  test.each(["book", "book.zip"])("%s holds them byte by byte", async (name) => {
    await writeBook(at(name), sampleBook(), sampleShop(), undefined, DRAWINGS);
    const read = await readBook(at(name));
    expect(read.faults).toEqual([]);
    expect(plain(read.drawings)).toEqual(plain(DRAWINGS));
  });

  test("a workbook does not hold them", async () => {
    await writeBook(at("book.xlsx"), sampleBook(), null, undefined, DRAWINGS);
    const read = await readBook(at("book.xlsx"));
    expect(read.faults).toEqual([]);
    expect(read.drawings.size).toBe(0);
  });

  test("a ZIP has the same bytes whatever the order, and another program unpacks them", async () => {
    const pack = (drawings: ReadonlyMap<string, Uint8Array>) => writeCells(new Map(), null, "zip", drawings);
    const first = await pack(DRAWINGS);
    expect(Buffer.compare(first, await pack(new Map([...DRAWINGS].reverse())))).toBe(0);
    writeFileSync(at("c.zip"), first);
    const script =
      "import sys,zipfile;z=zipfile.ZipFile(sys.argv[1]);print(z.testzip());print(z.read('drawings/bracket-a.pdf').hex())";
    const [bad, hex] = execFileSync("python3", ["-c", script, at("c.zip")], { encoding: "utf8" }).split("\n");
    expect([bad, hex]).toEqual(["None", PDF.toString("hex")]);
  });

  test("a book that is written again without them keeps those of its folder", async () => {
    await writeBook(at("book"), sampleBook(), null, undefined, DRAWINGS);
    writeFileSync(at("book", "drawings", "notes.txt"), "mine");
    await writeBook(at("book"), sampleBook());
    expect(readdirSync(at("book", "drawings")).sort()).toEqual(["bracket-a.pdf", "notes.txt", "post-b.step"]);
    await writeBook(at("book"), sampleBook(), null, undefined, new Map([["post-b.step", STEP]]));
    expect(readdirSync(at("book", "drawings")).sort()).toEqual(["notes.txt", "post-b.step"]);
    await writeBook(at("book"), sampleBook(), null, undefined, new Map());
    expect(readdirSync(at("book", "drawings"))).toEqual(["notes.txt"]);
    expect(existsSync(at("book", "machine.json"))).toBe(true);
  });

  test("what is no drawing is a fault with the nearest name, and the rest is read", async () => {
    const folder = put([
      ...sampleFiles(),
      ["drawings/good.pdf", PDF],
      ["drawings/not a name.pdf", PDF],
      ["drawings/program.exe", PDF],
      ["drawings/lies.pdf", "<html>"],
      ["drawings/empty.step", ""],
      ["drawings/read.md", "notes"],
      ["drawings/.hidden", ""],
    ]);
    const { faults, drawings } = await readBook(folder);
    expect([...drawings.keys()]).toEqual(["good.pdf"]);
    expect(
      faults
        .map(({ code, file, nearest }) => [code, file, nearest])
        .sort(([, a], [, b]) => (`${a}` < `${b}` ? -1 : 1)),
    ).toEqual([
      ["file-unreadable", "drawings/empty.step", null],
      ["file-unreadable", "drawings/lies.pdf", null],
      ["file-unknown", "drawings/not a name.pdf", "not-a-name.pdf"],
      ["file-unknown", "drawings/program.exe", null],
    ]);
    expect(readFileSync(at("book", "drawings", "lies.pdf"), "utf8")).toBe("<html>");
  });

  test("a file beyond its limit is not read, however well it packs", async () => {
    const large = new Uint8Array(LIMITS.drawingBytes + 1);
    large.set(Buffer.from("%PDF-1.7"));
    writeFileSync(
      at("large.zip"),
      zipSync({ "machine.json": Buffer.from("{}"), "drawings/large.pdf": large, "drawings/good.pdf": PDF }),
    );
    const { faults, drawings } = await readBook(at("large.zip"));
    expect(faults).toContainEqual(
      expect.objectContaining({ code: "file-too-large", file: "drawings/large.pdf" }),
    );
    expect([...drawings.keys()]).toEqual(["good.pdf"]);
  });

  test("more files than the limit are named one by one", async () => {
    const many = Object.fromEntries(
      Array.from({ length: LIMITS.drawingFiles + 2 }, (_, i) => [`drawings/d${i}.step`, STEP]),
    );
    writeFileSync(at("many.zip"), zipSync({ "machine.json": Buffer.from("{}"), ...many }));
    const { faults, drawings } = await readBook(at("many.zip"));
    expect(drawings.size).toBe(LIMITS.drawingFiles);
    expect(faults.filter(({ code }) => code === "file-too-large")).toHaveLength(2);
  });
});
