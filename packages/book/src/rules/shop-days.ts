import type { ShopRow, ShopTableName } from "../schema/tables/index.ts";
import { isDay } from "./day.ts";
import { type ShopRule, shopRule } from "./shop-rule.ts";

/** Each of these columns holds a real date, or nothing where nothing is allowed. */
function days<N extends ShopTableName>(
  table: N,
  columns: readonly (keyof ShopRow<N> & string)[],
): readonly ShopRule[] {
  return columns.map((column) =>
    shopRule(table, `\`${column}\` is a real date as year-month-day.`, [column], () => (row) => {
      const value = String(row[column] ?? "");
      return value === "" || isDay(value)
        ? null
        : {
            column,
            value,
            expected: "a real date as year-month-day, such as 2026-03-31",
            nearest: null,
          };
    }),
  );
}

/** Every column of the shop's tables that holds a day. */
export const SHOP_DAYS: readonly ShopRule[] = [
  ...days("calendars", ["day"]),
  ...days("runs", ["ship", "begin"]),
  ...days("orders", ["day", "due"]),
  ...days("movements", ["day"]),
  ...days("samples", ["asked", "received", "decided"]),
  ...days("instruments", ["calibrated_until"]),
];
