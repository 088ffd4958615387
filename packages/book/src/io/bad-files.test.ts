import { existsSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { LIMITS } from "../limits.ts";
import { BOOK_TABLES } from "../schema/tables/index.ts";
import { sampleFiles } from "../testing/files.ts";
import { testFolder } from "../testing/folder.ts";
import { readBook } from "./index.ts";

const { at, put } = testFolder();

describe("files that are no use", () => {
  test("a path that leads nowhere, and a file that is no book", async () => {
    expect((await readBook(at("none"))).faults).toMatchObject([{ code: "file-missing" }]);
    writeFileSync(at("a.txt"), "hello");
    expect((await readBook(at("a.txt"))).faults).toMatchObject([{ code: "file-unreadable", file: "a.txt" }]);
    writeFileSync(at("a.zip"), "PK\u0003\u0004 and then nothing");
    expect((await readBook(at("a.zip"))).faults).toMatchObject([
      { code: "file-unreadable", expected: expect.stringContaining("no directory") },
    ]);
  });

  test.each(Object.keys(BOOK_TABLES))(
    "%s.csv with a byte that is not UTF-8 is named with byte and line",
    async (name) => {
      const text = sampleFiles().get(`${name}.csv`) ?? "";
      const heading = strToU8(text.slice(0, text.indexOf("\n") + 1));
      put([
        ["machine.json", sampleFiles().get("machine.json") ?? ""],
        [`${name}.csv`, Buffer.concat([heading, Buffer.from([0xc3, 0x28])])],
      ]);
      expect((await readBook(at("book"))).faults).toMatchObject([
        {
          code: "file-encoding",
          file: `${name}.csv`,
          row: 2,
          value: "0xc3",
          expected: expect.stringContaining(`byte ${heading.length} `),
        },
      ]);
    },
  );

  test("a bad byte is found wherever the pieces of the file end, and UTF-16 is told as such", async () => {
    const good = "é".repeat(40_000);
    const bytes = Buffer.concat([
      Buffer.from(`id,label\na,${"b".repeat(9)}\n`),
      Buffer.from(good.slice(0, 9_000)),
      Buffer.from("\n"),
      Buffer.from([0xed, 0xa0, 0x80]),
    ]);
    put([["devices.csv", bytes]]);
    expect((await readBook(at("book"))).faults).toContainEqual(
      expect.objectContaining({
        code: "file-encoding",
        row: 4,
        expected: expect.stringContaining(`byte ${bytes.length - 3} `),
      }),
    );
    put([["devices.csv", Buffer.from("\ufeffid,label\n", "utf16le")]]);
    expect((await readBook(at("book"))).faults).toContainEqual(
      expect.objectContaining({ code: "file-encoding", expected: expect.stringContaining("UTF-16") }),
    );
  });

  test("unknown files are named with the nearest table", async () => {
    put([
      ...sampleFiles(),
      ["devises.csv", "x"],
      ["prices.csv", "x"],
      ["shop/boards.csv", "x"],
      ["Machine.json", "x"],
      ["outlines/a.png", "x"],
      ["notes.md", "x"],
    ]);
    const { faults } = await readBook(at("book"));
    expect(faults.map((f) => [f.code, f.file, f.nearest])).toEqual([
      ["file-unknown", "Machine.json", "machine.json"],
      ["file-unknown", "devises.csv", "devices.csv"],
      ["file-unknown", "prices.csv", "shop/prices.csv"],
      ["file-unknown", "outlines/a.png", null],
      ["file-unknown", "shop/boards.csv", "../boards.csv"],
    ]);
  });

  test("references into a table that could not be read are not judged", async () => {
    put([...sampleFiles(), ["connectors.csv", Buffer.from([0xff])]]);
    expect((await readBook(at("book"))).faults.map((f) => f.code)).toEqual(["file-encoding"]);
  });
});

/** A ZIP in which the bytes of a name are exchanged for others of the same length, in both places. */
function zipNamed(name: string, content = "x"): Uint8Array {
  const placeholder = "q".repeat(Buffer.byteLength(name));
  const bytes = Buffer.from(
    zipSync({
      "machine.json": strToU8(sampleFiles().get("machine.json") ?? ""),
      [placeholder]: strToU8(content),
    }),
  );
  for (let i = bytes.indexOf(placeholder); i >= 0; i = bytes.indexOf(placeholder)) bytes.write(name, i);
  return bytes;
}

describe("ZIPs that mean harm", () => {
  test.each([
    "../devices.csv",
    "a/../../devices.csv",
    "/devices.csv",
    "C:devices.csv",
    "..\\devices.csv",
    "outlines//a.svg",
    "./devices.csv",
    "dev\u0001ices.csv",
  ])("an entry named %j is refused and named", async (name) => {
    writeFileSync(at("b.zip"), zipNamed(name));
    const { faults } = await readBook(at("b.zip"));
    expect(faults).toMatchObject([{ code: "zip-path" }]);
    expect(existsSync(at("..", "devices.csv"))).toBe(false);
  });

  test("links, passwords and entries that come twice are refused and named", async () => {
    const zip = Buffer.from(
      zipSync({
        "machine.json": strToU8(sampleFiles().get("machine.json") ?? ""),
        "devices.csv": [strToU8("/etc/passwd"), { os: 3, attrs: (0o120777 << 16) >>> 0 }],
      }),
    );
    writeFileSync(at("b.zip"), zip);
    expect((await readBook(at("b.zip"))).faults).toMatchObject([
      { code: "zip-entry", file: "devices.csv", expected: expect.stringContaining("link") },
    ]);
    const twice = zipNamed("machine.json");
    writeFileSync(at("b.zip"), twice);
    expect((await readBook(at("b.zip"))).faults).toMatchObject([
      { code: "zip-entry", expected: expect.stringContaining("once") },
    ]);
    const locked = Buffer.from(zipSync({ "machine.json": strToU8("{}") }));
    locked.writeUInt16LE(1, locked.indexOf("PK\u0001\u0002") + 8);
    writeFileSync(at("b.zip"), locked);
    expect((await readBook(at("b.zip"))).faults[0]).toMatchObject({
      code: "zip-entry",
      expected: expect.stringContaining("password"),
    });
  });

  test("damaged data is named, not read", async () => {
    const zip = Buffer.from(
      zipSync({ "machine.json": strToU8("{}"), "devices.csv": [strToU8("id,type\n"), { level: 0 }] }),
    );
    zip.write("xx", zip.indexOf("id,type"));
    writeFileSync(at("b.zip"), zip);
    expect((await readBook(at("b.zip"))).faults).toContainEqual(
      expect.objectContaining({
        code: "file-unreadable",
        file: "devices.csv",
        expected: expect.stringContaining("check sum"),
      }),
    );
  });

  test("a workbook that unpacks beyond the limit is refused before it is opened", async () => {
    const zeros = new Uint8Array(LIMITS.workbookBytes / 2 + 1);
    writeFileSync(at("b.xlsx"), zipSync({ "[Content_Types].xml": zeros, "xl/a.xml": zeros }, { level: 9 }));
    expect((await readBook(at("b.xlsx"))).faults).toMatchObject([{ code: "zip-too-large", file: "b.xlsx" }]);
  });
});

test("a link in a folder is followed, a broken one is named", async () => {
  put(sampleFiles());
  rmSync(at("book", "bom.csv"));
  symlinkSync(at("nowhere.csv"), at("book", "bom.csv"));
  expect((await readBook(at("book"))).faults).toMatchObject([
    { code: "file-unreadable", file: "bom.csv", expected: expect.stringContaining("ENOENT") },
  ]);
});
