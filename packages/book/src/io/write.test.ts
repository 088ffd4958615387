import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { withRows } from "../edit/with-rows.ts";
import { sampleFiles } from "../testing/files.ts";
import { testFolder, textsBelow } from "../testing/folder.ts";
import { sampleBook } from "../testing/sample.ts";
import { NotABook, writeBook } from "./index.ts";

const { at, put } = testFolder();

describe("all or nothing", () => {
  test("a folder that is no book, and a file that is none, are not overwritten", async () => {
    put([["notes.txt", "mine"]], "other");
    writeFileSync(at("file.zip"), "mine");
    writeFileSync(at("other.zip"), zipSync({ "a.txt": strToU8("mine") }));
    const budget = new ExcelJS.Workbook();
    budget.addWorksheet("budget");
    writeFileSync(at("budget.xlsx"), new Uint8Array(await budget.xlsx.writeBuffer()));
    for (const name of ["other", "file.zip", "other.zip", "budget.xlsx"]) {
      const before = name === "other" ? "" : readFileSync(at(name)).toString("hex");
      await expect(writeBook(at(name), sampleBook())).rejects.toThrow(NotABook);
      if (name !== "other") expect(readFileSync(at(name)).toString("hex")).toBe(before);
    }
    expect(textsBelow(at("other"))).toEqual(new Map([["notes.txt", "mine"]]));
  });

  test("what is not of the book stays, and tables without rows go", async () => {
    put(sampleFiles());
    put([
      ["README.md", "mine"],
      ["make/a.ts", "mine"],
      [".git/x", "mine"],
      ["outlines/notes.txt", "mine"],
      ["devicess.csv", "mine"],
    ]);
    await writeBook(at("book"), withRows(withRows(sampleBook(), "bom", []), "tooling", []), null);
    const found = textsBelow(at("book"));
    for (const path of ["README.md", "make/a.ts", ".git/x", "outlines/notes.txt", "devicess.csv"])
      expect(found.get(path)).toBe("mine");
    expect(found.has("bom.csv")).toBe(false);
    expect(found.has("shop/prices.csv")).toBe(true);
    expect(readdirSync(at())).toEqual(["book"]);
  });

  test.each(["book", "book.zip", "book.xlsx"])(
    "%s: a failure on the way leaves the old one, and nothing beside it",
    async (name) => {
      await writeBook(at(name), sampleBook());
      const before = name === "book" ? textsBelow(at(name)) : readFileSync(at(name)).toString("hex");
      const broken = sampleBook();
      const outlines = new Map(broken.outlines);
      Object.defineProperty(outlines, Symbol.iterator, {
        value: () => {
          throw new Error("the disk is full");
        },
      });
      await expect(writeBook(at(name), { ...broken, outlines })).rejects.toThrow("the disk is full");
      // A name that no file can have fails after other files were written.
      const long = new Map([[`${"x".repeat(300)}.svg`, { rings: [], source: "x" }]]);
      if (name === "book")
        await expect(writeBook(at(name), { ...broken, outlines: long })).rejects.toThrow("ENAMETOOLONG");
      expect(name === "book" ? textsBelow(at(name)) : readFileSync(at(name)).toString("hex")).toEqual(before);
      expect(readdirSync(at())).toEqual([name]);
    },
  );
});
