import type { CellRows, Cells, CellTables } from "@pinwright/book";

/**
 * Tables of the shop that results come from: what parts and tools are there, and how the shop works. Never prices, orders,
 * stock or people: these change without a revision.
 */
export const KEPT_TABLES = [
  "shop_settings",
  "stock_sheets",
  "reels",
  "holders",
  "pull_forces",
  "drivers",
  "benches",
  "coats",
] as const;

/** What of these is money, or names what is not kept: columns of a table, and rows of settings by their id. */
const LEFT_OUT: Readonly<Record<string, readonly string[]>> = { benches: ["rate", "site"] };
const MONEY_SETTINGS: readonly (string | undefined)[] = [
  "labour_rate",
  "overhead_pct",
  "order_cost",
  "holding_pct",
];

const NO_COLUMNS: readonly string[] = [];

function keptRows(table: string, rows: CellRows): CellRows {
  const left = LEFT_OUT[table] ?? NO_COLUMNS;
  const isKept = (cells: Cells): boolean =>
    table !== "shop_settings" || !MONEY_SETTINGS.includes(cells.get("id"));
  return new Map(
    [...rows]
      .filter(([, cells]) => isKept(cells))
      .map(([row, cells]) => [row, new Map([...cells].filter(([column]) => !left.includes(column)))]),
  );
}

/** What of a shop a release copies. */
export const keptShop = (shop: CellTables): CellTables =>
  new Map(
    KEPT_TABLES.flatMap((name) => {
      const rows = shop.get(name);
      return rows === undefined ? [] : [[name, keptRows(name, rows)] as const];
    }),
  );
