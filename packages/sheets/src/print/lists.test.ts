import excel from "exceljs";
import { expect, test } from "vitest";
import { composeCutList } from "../cut-list/cut-list.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { formatsOf, renderDocument } from "./render.ts";

const line = await exampleLine("first-light");
const [harness] = line.harnesses.values();
if (harness === undefined) throw new Error("the example has no harness");
const cut = composeCutList(line, harness, OPTIONS);

test("a list is written as PDF, XLSX and CSV, and as no drawing", async () => {
  expect(formatsOf(cut)).toEqual(["pdf", "xlsx", "csv"]);
  await expect(renderDocument(cut, "dxf")).rejects.toThrow("DXF can be written of drawings only");
});

test("a workbook keeps numbers as numbers and has a sheet for each grid, with the same bytes every time", async () => {
  const bytes = await renderDocument(cut, "xlsx");
  const book = new excel.Workbook();
  const copy = new ArrayBuffer(bytes.byteLength);
  new Uint8Array(copy).set(bytes);
  await book.xlsx.load(copy);
  expect(book.worksheets.map((w) => w.name)).toEqual(cut.grids.map((g) => g.name));
  const [grid] = cut.grids;
  const row = book.worksheets[0]?.getRow(2);
  grid?.rows[0]?.forEach((value, i) => {
    expect(row?.getCell(i + 1).value ?? "").toEqual(value);
  });
  expect(await renderDocument(cut, "xlsx")).toEqual(bytes);
});

test("what a spreadsheet would run is neutralised in both", async () => {
  const grids = [
    {
      name: "x",
      header: ["a", "b"],
      rows: [
        ["=1+2", -3],
        ["@SUM(A1)", 4],
        ["-cmd", 5],
      ],
    },
  ];
  const document = { ...cut, grids };
  const csv = new TextDecoder().decode(await renderDocument(document, "csv"));
  expect(csv).toBe("a,b\n'=1+2,-3\n'@SUM(A1),4\n'-cmd,5\n");
  const book = new excel.Workbook();
  const bytes = await renderDocument(document, "xlsx");
  const copy = new ArrayBuffer(bytes.byteLength);
  new Uint8Array(copy).set(bytes);
  await book.xlsx.load(copy);
  expect(book.worksheets[0]?.getCell("A2").value).toBe("'=1+2");
  expect(book.worksheets[0]?.getCell("B2").value).toBe(-3);
});
