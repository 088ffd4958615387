import {
  BOOK_TABLES,
  type Book,
  type BookRow,
  type BookTableName,
  type BookTables,
  SHOP_SETTINGS,
  SHOP_TABLES,
  type Shop,
  type ShopNumbers,
  type ShopRow,
  type ShopTableName,
  type ShopTables,
  type Table,
} from "@pinwright/book";
import { type Machine, resolveMachine } from "../model/index.ts";

/** Rows of a book for a test: only the cells that matter; every other one is its column's blank. */
export type SomeTables = { readonly [N in BookTableName]?: readonly Partial<BookRow<N>>[] };
export type SomeShopTables = { readonly [N in ShopTableName]?: readonly Partial<ShopRow<N>>[] };

function filled(tables: Readonly<Record<string, Table>>, some: Readonly<Record<string, unknown>>): unknown {
  return Object.fromEntries(
    Object.entries(tables).map(([name, table]) => {
      const blanks = Object.fromEntries(
        Object.entries(table.columns).map(([c, column]) => [c, column.blank]),
      );
      const rows = some[name];
      return [name, Array.isArray(rows) ? rows.map((row: object) => ({ ...blanks, ...row })) : []];
    }),
  );
}

/** A book made of the rows given. */
export function createBook(some: SomeTables): Book {
  return {
    machine: {
      format: 1,
      id: "test",
      label: "Test",
      label_zh: "",
      revision: "A",
      date: "2026-01-01",
      owner: "",
      approved: "",
      languages: ["en"],
      slope_deg: 6.5,
      ball_mm: 27,
    },
    tables: filled(BOOK_TABLES, some) as BookTables,
    outlines: new Map(),
  };
}

/** A shop made of the rows given, with the usual numbers but for those given. */
export function createShop(some: SomeShopTables = {}, numbers: Partial<ShopNumbers> = {}): Shop {
  const usual = Object.fromEntries(Object.entries(SHOP_SETTINGS).map(([name, s]) => [name, s.value]));
  return {
    tables: filled(SHOP_TABLES, some) as ShopTables,
    numbers: { ...usual, ...numbers } as ShopNumbers,
  };
}

/** A machine resolved from the rows given. */
export function createMachine(some: SomeTables, shop: Shop = createShop()): Machine {
  return resolveMachine(createBook(some), shop);
}
