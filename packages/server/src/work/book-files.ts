import { writeFile as write } from "node:fs/promises";
import { type CellTables, cellTablesOf, cellTablesOfRaw, SHOP_TABLES } from "@pinwright/book";
import { readRawFiles, writeCells } from "@pinwright/book/io";
import { cellsOfJson, jsonOfCells } from "./cells-json.ts";
import type { ResultOf, Task } from "./messages.ts";

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
    faults: told,
  };
}

/** Tables of a shop stand in a book's file as its shop. */
const isShop = (tables: CellTables): boolean =>
  tables.size > 0 && [...tables.keys()].every((name) => Object.hasOwn(SHOP_TABLES, name));

/** Writes a book, or a shop, to a file. */
export async function writeFile({ path, format, tables }: Extract<Task, { kind: "write" }>): Promise<void> {
  const cells = cellsOfJson(tables);
  const bytes = isShop(cells)
    ? await writeCells(new Map(), cells, format)
    : await writeCells(cells, null, format);
  await write(path, bytes, { flag: "wx", mode: 0o600 });
}

export async function readForeign(
  _: Extract<Task, { kind: "read-foreign" }>,
): Promise<ResultOf<"read-foreign">> {
  return { sheets: [] };
}
