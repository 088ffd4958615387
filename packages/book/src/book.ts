import type { Fault } from "./fault.ts";
import type { Machine } from "./machine.ts";
import type { Outline } from "./outline/outline.ts";
import type { ShopNumbers } from "./schema/shop-settings.ts";
import type { BookTables, ShopTables } from "./schema/tables/index.ts";

/**
 * One machine as it is defined. Rows keep the order of their file; a row of index `i` stands in line `i + 2` of
 * its canonical CSV. Rows, lists and the book itself are never changed: an edit makes a new book that shares
 * every row and every table which it did not touch, so identity (`===`) means "not edited".
 */
export interface Book {
  readonly machine: Machine;
  readonly tables: BookTables;
  /** Outlines by file name, in millimetres. */
  readonly outlines: ReadonlyMap<string, Outline>;
}

/** What several machines share. */
export interface Shop {
  readonly tables: ShopTables;
  /** Every known setting, with the default where the shop says nothing. */
  readonly numbers: ShopNumbers;
}

/** A book as far as it could be read, with everything that is wrong with it. */
export interface ReadBook {
  readonly book: Book;
  readonly faults: readonly Fault[];
}
