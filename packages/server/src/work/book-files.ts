import { writeFile as write } from "node:fs/promises";
import { BOOK_TABLES, cellTablesOf, rawTable, SHOP_TABLES, type Table, writeOutline } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { jsonOfCells } from "./cells-json.ts";
import type { ResultOf, Task } from "./messages.ts";

const rawTables = (
  schema: Readonly<Record<string, Table>>,
  tables: Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>,
) =>
  new Map(Object.entries(schema).map(([name, table]) => [name, rawTable(table, tables[name] ?? [], name)]));

/** Reads a book and the shop in it. */
export async function readFile({ path }: Extract<Task, { kind: "read" }>): Promise<ResultOf<"read">> {
  const { book, shop, faults } = await readBook(path);
  const tables = cellTablesOf({
    machine: book.machine,
    tables: rawTables(BOOK_TABLES, book.tables),
    outlines: new Map([...book.outlines].map(([name, outline]) => [name, writeOutline(name, outline)])),
    unreadable: new Set(),
  });
  const shopTables =
    shop === null
      ? null
      : cellTablesOf({
          machine: undefined,
          tables: rawTables(SHOP_TABLES, shop.tables),
          outlines: new Map(),
          unreadable: new Set(),
        });
  return {
    tables: jsonOfCells(tables),
    shop: shopTables === null ? null : jsonOfCells(shopTables),
    faults: [...faults],
  };
}

export async function readForeign(
  _: Extract<Task, { kind: "read-foreign" }>,
): Promise<ResultOf<"read-foreign">> {
  return { sheets: [] };
}

export async function writeFile({ path }: Extract<Task, { kind: "write" }>): Promise<void> {
  await write(path, "", { flag: "wx", mode: 0o600 });
}
