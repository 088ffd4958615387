import type { CellTables } from "@pinwright/book";

/**
 * Tables of the shop that results come from: what parts and tools are there, and how the shop works. Never prices, orders,
 * stock or people: these change without a revision.
 */
const KEPT_TABLES = [
  "shop_settings",
  "stock_sheets",
  "reels",
  "holders",
  "pull_forces",
  "drivers",
  "coats",
] as const;

/** What of a shop a release copies. */
export const keptShop = (shop: CellTables): CellTables =>
  new Map(
    KEPT_TABLES.flatMap((name) => {
      const rows = shop.get(name);
      return rows === undefined ? [] : [[name, rows] as const];
    }),
  );
