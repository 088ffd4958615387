import { expect, test } from "vitest";
import { filesOf, readBookFiles, writeBookFiles } from "../csv/files.ts";
import { sampleFiles, TABLE_PATHS, toCells } from "./files.ts";
import { sampleBook, sampleShop } from "./sample.ts";

const REFERRING = new Set(["ref", "refs", "item", "items", "point", "local-point", "outline"]);

test("the sample has no fault, rows in every table, and a value in every column that refers", () => {
  const files = sampleFiles();
  expect(readBookFiles(filesOf(files)).faults).toEqual([]);
  for (const { path, table } of TABLE_PATHS) {
    const cells = toCells(files.get(path) ?? "");
    expect(cells.length, path).toBeGreaterThan(1);
    Object.entries(table.columns).forEach(([name, { kind }], at) => {
      if (REFERRING.has(kind))
        expect(
          cells.slice(1).some((row) => row[at] !== ""),
          `${path} ${name}`,
        ).toBe(true);
    });
  }
});

test("reading what was written gives the same tables, and writing it again the same bytes", () => {
  const { book, shop } = readBookFiles(filesOf(sampleFiles()));
  expect(book.tables).toEqual(sampleBook().tables);
  expect(shop).toEqual(sampleShop());
  expect(writeBookFiles(book, shop)).toEqual(sampleFiles());
});
