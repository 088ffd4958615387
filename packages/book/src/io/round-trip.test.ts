import { writeFileSync } from "node:fs";
import ExcelJS from "exceljs";
import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { type ReadFiles, writeBookFiles } from "../csv/files.ts";
import { withRows } from "../edit/with-rows.ts";
import { BOOK_TABLES } from "../schema/tables/index.ts";
import { arbitraryRow } from "../testing/arbitrary.ts";
import { sampleFiles } from "../testing/files.ts";
import { testFolder, textsBelow } from "../testing/folder.ts";
import { SAMPLE_OUTLINES, sampleBook, sampleShop } from "../testing/sample.ts";
import { packXlsx, packZip, readBook, readShop, writeBook } from "./index.ts";
import { escapeOutline, unescapeOutline } from "./write-xlsx.ts";
import { cellToText } from "./xlsx-text.ts";

const { at, put } = testFolder();

function expectSample(read: ReadFiles) {
  expect(read.faults).toEqual([]);
  expect(read.book.tables).toEqual(sampleBook().tables);
  expect(read.book.machine).toEqual(sampleBook().machine);
  expect(read.shop).toEqual(sampleShop());
  expect(new Map([...read.book.outlines].map(([name, o]) => [name, o.source]))).toEqual(SAMPLE_OUTLINES);
}

describe("round trips", () => {
  test.each(["book", "book.zip", "book.xlsx"])("%s holds everything", async (name) => {
    await writeBook(at(name), sampleBook(), sampleShop());
    const read = await readBook(at(name));
    expectSample(read);
    // Back to a folder: the same bytes as canonical CSV.
    await writeBook(at("again"), read.book, read.shop);
    expect(textsBelow(at("again"))).toEqual(sampleFiles());
  });

  test.each(["zip", "xlsx"] as const)("the same book gives the same %s, on any day", async (format) => {
    const pack = () =>
      format === "zip" ? packZip(writeBookFiles(sampleBook())) : packXlsx(sampleBook(), null);
    const first = await pack();
    await new Promise((resolve) => setTimeout(resolve, 2100));
    expect(Buffer.compare(Buffer.from(first), Buffer.from(await pack()))).toBe(0);
  });

  test("a workbook gives back any text, number and blank as it was", { timeout: 120_000 }, async () => {
    const property = fc.asyncProperty(
      fc.uniqueArray(arbitraryRow(BOOK_TABLES.parts), {
        minLength: 1,
        maxLength: 20,
        selector: (row) => row.id,
      }),
      async (rows) => {
        // The rows were made from the columns of this table.
        const book = withRows(
          withRows(
            sampleBook(),
            "parts",
            rows as unknown as ReturnType<typeof sampleBook>["tables"]["parts"],
          ),
          "choices",
          [],
        );
        writeFileSync(at("any.xlsx"), await packXlsx(book, null));
        expect((await readBook(at("any.xlsx"))).book.tables.parts).toEqual(rows);
      },
    );
    await fc.assert(property, { seed: 6, numRuns: 8 });
  });

  test("a ZIP of the folder itself, as people make them, is read", async () => {
    const files = [...sampleFiles()].map(([path, text]) => [`my book/${path}`, strToU8(text)] as const);
    writeFileSync(
      at("b.zip"),
      zipSync({ ...Object.fromEntries(files), "__MACOSX/my book/._devices.csv": strToU8("x") }),
    );
    expectSample(await readBook(at("b.zip")));
  });
});

describe("the shop", () => {
  test("one in the book's folder counts before one beside it; without any there is none", async () => {
    const book = put(writeBookFiles(sampleBook()), "all/book");
    expect((await readBook(book)).shop).toBeNull();
    put([["shop_settings.csv", "id,value\ntie_min,0.5\n"]], "all/shop");
    expect((await readBook(book)).shop?.numbers.tie_min).toBe(0.5);
    put([["shop/shop_settings.csv", "id,value\ntie_min,0.7\n"]], "all/book");
    const { shop } = await readBook(book);
    expect(shop?.numbers).toMatchObject({ tie_min: 0.7, breakout_min: 0.9 });
  });

  test("a shop is read by itself", async () => {
    put(
      [
        ["suppliers.csv", "id,currency\na,EUR\n"],
        ["prices.csv", "part,supplier,from_quantity,price\np,aa,1,2\n"],
      ],
      "shop",
    );
    expect((await readShop(at("shop"))).faults).toMatchObject([
      { code: "ref-dangling", file: "shop/prices.csv", row: 2, column: "supplier" },
    ]);
    expect((await readShop(at("none"))).faults).toMatchObject([{ code: "file-missing" }]);
  });
});

describe("workbooks made by people", () => {
  async function readSheets(sheets: Readonly<Record<string, readonly (readonly ExcelJS.CellValue[])[]>>) {
    const workbook = new ExcelJS.Workbook();
    for (const [name, rows] of Object.entries(sheets))
      workbook.addWorksheet(name).addRows(rows.map((row) => [...row]));
    writeFileSync(at("p.xlsx"), new Uint8Array(await workbook.xlsx.writeBuffer()));
    return readBook(at("p.xlsx"));
  }

  const machine = [
    ["key", "value"],
    ["format", 1],
    ["id", "m"],
    ["label", "M"],
    ["revision", 2],
    ["date", new Date(Date.UTC(2026, 2, 31))],
    ["languages", "en zh"],
  ];

  test("dates, formulas, rich text, numbers as text, booleans and blanks", async () => {
    const { book, faults } = await readSheets({
      machine,
      parts: [
        ["id", "kind", "value", "mass_g", "wear", "label"],
        [
          "p.1",
          "screw",
          12.5,
          { formula: "1+1", result: 2 },
          true,
          { richText: [{ text: "a" }, { text: "b" }] },
        ],
        [],
        ["p.2", "screw", null, null, null, { text: "link", hyperlink: "http://example.com" }],
      ],
    });
    expect(faults).toEqual([]);
    expect(book.machine).toMatchObject({ revision: "2", date: "2026-03-31", languages: ["en", "zh"] });
    expect(book.tables.parts).toMatchObject([
      { id: "p.1", value: "12.5", mass_g: 2, wear: true, label: "ab" },
      { id: "p.2", value: "", mass_g: null, wear: false, label: "link" },
    ]);
  });

  test("errors, missing sheets and unknown sheets are named by worksheet, row and column", async () => {
    const { faults } = await readSheets({
      partz: [["id"]],
      parts: [
        ["id", "kind", "mass_g"],
        ["p.1", "screw", { error: "#DIV/0!" }],
        ["p.2", "srcew", 1],
      ],
    });
    expect(faults).toMatchObject([
      { code: "file-unknown", file: "partz", nearest: "parts" },
      { code: "file-missing", file: "machine.json" },
      { code: "number-form", file: "parts", row: 2, column: "mass_g", value: "#DIV/0!" },
      { code: "choice-unknown", file: "parts", row: 3, column: "kind", nearest: "screw" },
    ]);
  });

  test("an outline with a path for a name is refused", async () => {
    const { faults } = await readSheets({
      machine,
      outlines: [
        ["file", "part", "text"],
        ["../a.svg", 1, "x"],
      ],
    });
    expect(faults).toMatchObject([{ code: "outline-missing", file: "outlines", row: 2, value: "../a.svg" }]);
  });

  test("no text cell of a written workbook is a formula", async () => {
    const [part] = sampleBook().tables.parts;
    if (part === undefined) throw new Error("the sample has one");
    const book = withRows(sampleBook(), "parts", [{ ...part, label: "=1+1", value: "@x" }]);
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(Uint8Array.from(await packXlsx(book, null)).buffer);
    const values = workbook.getWorksheet("parts")?.getRow(2).values;
    expect(values).toContain("=1+1");
    workbook.eachSheet((sheet) =>
      sheet.eachRow((row) => row.eachCell((cell) => expect(cell.type).not.toBe(ExcelJS.ValueType.Formula))),
    );
    expect(workbook.getWorksheet("parts")?.getCell("B2").numFmt).toBe("@");
  });
});

test("outline text is escaped reversibly", () => {
  fc.assert(
    fc.property(
      fc.string({ unit: fc.constantFrom("\\", "u", "0", "d", "\r", "\n", "\t", "\u0000", "é", "x") }),
      (text) => {
        expect(unescapeOutline(escapeOutline(text))).toBe(text);
        expect(escapeOutline(text)).not.toMatch(/[^\P{Cc}\n\t]/u);
      },
    ),
    { seed: 7, numRuns: 300 },
  );
});

test("cell values that are nothing are blank", () => {
  expect([null, undefined, "", { formula: "A1", date1904: false }].map((v) => cellToText(v))).toEqual([
    "",
    "",
    "",
    "",
  ]);
});
