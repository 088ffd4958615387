import { writeFile as write } from "node:fs/promises";
import { type CellTables, cellTablesOf, cellTablesOfRaw, SHOP_TABLES } from "@pinwright/book";
import { readForeignSheet, readRawFiles, writeCells } from "@pinwright/book/io";
import { cellsOfJson, jsonOfCells } from "./cells-json.ts";
import type { ResultOf, Task } from "./messages.ts";
import { Refusal } from "./refusal.ts";

/** Reads a book and the shop in it, whatever is wrong with them. */
export async function readFile({ path, name }: Extract<Task, { kind: "read" }>): Promise<ResultOf<"read">> {
  const { found, faults } = await readRawFiles(path);
  // The file lies under a name of ours; whoever sent it knows it by another.
  const own = path.slice(Math.max(path.lastIndexOf("/"), path.lastIndexOf("\\")) + 1);
  const told = faults.map((fault) => (fault.file === own ? { ...fault, file: name } : fault));
  const tables = found === null ? null : cellTablesOf(found.raw);
  const shop = found === null || found.shop === null ? null : cellTablesOfRaw(found.shop);
  return {
    tables: tables === null || tables.size === 0 ? null : jsonOfCells(tables),
    shop: shop === null || shop.size === 0 ? null : jsonOfCells(shop),
    drawings: [...(found?.drawings ?? [])].map(([fileName, bytes]) => ({ name: fileName, bytes })),
    faults: told,
  };
}

/** Tables of a shop stand in a book's file as its shop. */
const isShop = (tables: CellTables): boolean =>
  tables.size > 0 && [...tables.keys()].every((name) => Object.hasOwn(SHOP_TABLES, name));

/** Writes a book, or a shop, to a file. */
export async function writeFile({
  path,
  format,
  tables,
  drawings,
}: Extract<Task, { kind: "write" }>): Promise<void> {
  const cells = cellsOfJson(tables);
  const bytes = isShop(cells)
    ? await writeCells(new Map(), cells, format)
    : await writeCells(cells, null, format, new Map(drawings.map(({ name, bytes }) => [name, bytes])));
  await write(path, bytes, { flag: "wx", mode: 0o600 });
}

/** Reads a spreadsheet or CSV with any headings. */
export async function readForeign({
  path,
  name,
}: Extract<Task, { kind: "read-foreign" }>): Promise<ResultOf<"read-foreign">> {
  const { sheets, faults } = await readForeignSheet(path, name);
  const [fault] = faults;
  if (sheets.length === 0)
    throw new Refusal(
      fault === undefined
        ? "There is no table in the file."
        : `${name} cannot be read. Expected: ${fault.expected}`,
    );
  // What is wrong with the file as a whole is told with its first table.
  const names = new Set(sheets.map((sheet) => sheet.name));
  return {
    sheets: sheets.map((sheet, i) => ({
      name: sheet.name,
      headerRow: sheet.headerRow,
      header: [...sheet.header],
      rows: sheet.rows.map((row) => [...row]),
      faults: faults.filter(({ file }) => file === sheet.name || (i === 0 && !names.has(file))),
    })),
  };
}
