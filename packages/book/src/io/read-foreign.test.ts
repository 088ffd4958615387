import { writeFileSync } from "node:fs";
import ExcelJS from "exceljs";
import fc from "fast-check";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { LIMITS } from "../limits.ts";
import { testFolder } from "../testing/folder.ts";
import { readForeignSheet } from "./read-foreign.ts";

const { at } = testFolder();

function read(content: string | Uint8Array, name: string) {
  writeFileSync(at(name), content);
  return readForeignSheet(at(name), name);
}

async function workbook(sheets: Readonly<Record<string, readonly (readonly ExcelJS.CellValue[])[]>>) {
  const book = new ExcelJS.Workbook();
  for (const [name, rows] of Object.entries(sheets)) {
    const sheet = book.addWorksheet(name);
    for (const row of rows) sheet.addRow([...row]);
  }
  return new Uint8Array(await book.xlsx.writeBuffer());
}

describe("readForeignSheet", () => {
  it.each([
    [",", "comma"],
    [";", "semicolon"],
    ["\t", "tab"],
    ["|", "bar"],
  ])("reads cells separated by %j", async (separator) => {
    const text = [
      ["Ref", "X (mm)", "Note"],
      ["S1", "12", "a b"],
      ["S2", "", '"q"'],
    ]
      .map((row) => row.join(separator))
      .join("\r\n");
    expect(await read(text, "list.csv")).toEqual({
      sheets: [
        {
          name: "list.csv",
          headerRow: 1,
          header: ["Ref", "X (mm)", "Note"],
          rows: [
            ["S1", "12", "a b"],
            ["S2", "", "q"],
          ],
        },
      ],
      faults: [],
    });
  });

  it("passes over a title, blank rows and blank columns", async () => {
    const { sheets, faults } = await read(
      "Switches of the upper field\n\nRef; X ;;\nS1;1;;\n;;;\n",
      "list.txt",
    );
    expect(faults).toEqual([]);
    expect(sheets).toEqual([{ name: "list.txt", headerRow: 3, header: ["Ref", "X"], rows: [["S1", "1"]] }]);
  });

  it("reads every worksheet, with numbers, dates, results and rich text as text", async () => {
    const bytes = await workbook({
      Switches: [
        ["Ref", "X", "When", "Sum", "Note", "Good"],
        [
          "S1",
          0.1,
          new Date(Date.UTC(2026, 2, 31)),
          { formula: "1+1", result: 2 },
          { richText: [{ text: "big " }, { text: "one" }] },
          true,
        ],
      ],
      Blank: [],
      Lamps: [["Ref"], ["L1"], [null, "beyond the heading"]],
    });
    const { sheets, faults } = await read(bytes, "list.xlsx");
    expect(faults).toEqual([]);
    expect(sheets).toEqual([
      {
        name: "Switches",
        headerRow: 1,
        header: ["Ref", "X", "When", "Sum", "Note", "Good"],
        rows: [["S1", "0.1", "2026-03-31", "2", "big one", "yes"]],
      },
      {
        name: "Lamps",
        headerRow: 1,
        header: ["Ref", ""],
        rows: [
          ["L1", ""],
          ["", "beyond the heading"],
        ],
      },
    ]);
  });

  it("refuses what is no table, with the reason", async () => {
    const codes = async (content: string | Uint8Array, name: string) =>
      (await read(content, name)).faults.map(({ code }) => code);
    expect(await codes("", "a.csv")).toEqual(["file-unreadable"]);
    expect(await codes(Uint8Array.of(0xff, 0xfe, 0x41, 0), "a.csv")).toEqual(["file-encoding"]);
    expect(await codes(Uint8Array.of(0x61, 0xe4, 0x62), "a.csv")).toEqual(["file-encoding"]);
    expect(await codes(zipSync({ "a.txt": strToU8("x") }), "a.xlsx")).toEqual(["file-unreadable"]);
    expect(await codes("PK\u0003\u0004", "a.xlsx")).toEqual(["file-unreadable"]);
    expect((await readForeignSheet(at("none"), "none")).faults.map(({ code }) => code)).toEqual([
      "file-missing",
    ]);
    expect((await readForeignSheet(at(), "folder")).faults.map(({ code }) => code)).toEqual(["file-missing"]);
  });

  it("stops at the limits", async () => {
    const long = await read(`a,b\n1,${"x".repeat(LIMITS.cellChars + 1)}\n`, "a.csv");
    expect(long).toMatchObject({ sheets: [], faults: [{ code: "cell-too-long", row: 2 }] });
    const wide = await read(`a|b\n${"1|".repeat(LIMITS.cellsPerRow)}\n`, "a.csv");
    expect(wide).toMatchObject({ sheets: [], faults: [{ code: "row-ragged", row: 2 }] });
    const cell = await read(
      await workbook({ S: [["a"], ["y".repeat(LIMITS.cellChars + 1)], ["z"]] }),
      "a.xlsx",
    );
    expect(cell.faults).toMatchObject([{ code: "cell-too-long", file: "S", row: 2, column: "a" }]);
    expect(cell.sheets[0]?.rows).toEqual([[""], ["z"]]);
  });

  it("stops when one long text stands in so many cells that they would fill the memory", async () => {
    const bytes = await workbook({ S: [["heading"], ["T"]] });
    const entries = unzipSync(bytes);
    const rows = Array.from(
      { length: 15_000 },
      (_, i) => `<row r="${i + 1}"><c r="A${i + 1}" t="s"><v>0</v></c></row>`,
    );
    const bomb = {
      ...entries,
      "xl/sharedStrings.xml": strToU8(
        `<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" count="1" uniqueCount="1"><si><t>${"x".repeat(LIMITS.cellChars)}</t></si></sst>`,
      ),
      "xl/worksheets/sheet1.xml": strToU8(
        `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows.join("")}</sheetData></worksheet>`,
      ),
    };
    const { faults, sheets } = await read(zipSync(bomb), "bomb.xlsx");
    expect(faults).toMatchObject([{ code: "file-too-large", file: "S" }]);
    const rowsKept = sheets[0]?.rows.length ?? 0;
    expect((rowsKept + 1) * LIMITS.cellChars).toBeLessThanOrEqual(LIMITS.bookBytes);
  });

  it("throws for no bytes whatever", async () => {
    const sound = await workbook({
      S: [
        ["a", "b"],
        [1, "x"],
      ],
    });
    const harmed = fc
      .array(fc.tuple(fc.nat(sound.length - 1), fc.nat(255)), { minLength: 1, maxLength: 4 })
      .map((edits) => {
        const bytes = Uint8Array.from(sound);
        for (const [i, byte] of edits) bytes[i] = byte;
        return bytes;
      });
    await fc.assert(
      fc.asyncProperty(fc.oneof(harmed, fc.uint8Array({ maxLength: 60 })), async (bytes) => {
        const { sheets, faults } = await read(bytes, "any.xlsx");
        expect(sheets.length + faults.length).toBeGreaterThan(0);
      }),
      { seed: 5, numRuns: 150 },
    );
  });
});
