import type { Book, Shop } from "../book.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { BLANK_MACHINE } from "./machine.ts";
import { shopNumbers } from "./shop.ts";

const noRows = <K extends string>(tables: Readonly<Record<K, unknown>>): Record<K, readonly never[]> =>
  // The keys are exactly those of the schema; an empty list is a list of every row type.
  Object.fromEntries(Object.keys(tables).map((name) => [name, []])) as unknown as Record<K, readonly never[]>;

/** A book with every table and no row. */
export const emptyBook = (): Book => ({
  machine: BLANK_MACHINE,
  tables: noRows(BOOK_TABLES),
  outlines: new Map(),
});

/** A shop with every table, no row, and the default of every setting. */
export const emptyShop = (): Shop => ({
  tables: noRows(SHOP_TABLES),
  numbers: shopNumbers([]),
});
