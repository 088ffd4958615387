import { plainDecimal } from "../read/plain-decimal.ts";
import { isShopSetting } from "../read/shop.ts";
import { SHOP_SETTINGS } from "../schema/shop-settings.ts";
import type { ShopRow, ShopTableName, ShopTables } from "../schema/tables/index.ts";
import { nearest } from "../text/nearest.ts";
import type { RuleBreak } from "./rule.ts";

/** A rule about one row of a shop's table. */
export interface ShopRule {
  readonly table: string;
  readonly about: string;
  readonly reads: readonly string[];
  readonly check: (tables: ShopTables) => Iterable<RuleBreak>;
}

function shopRule<N extends ShopTableName>(
  table: N,
  about: string,
  reads: readonly (keyof ShopRow<N> & string)[],
  judge: (row: ShopRow<N>) => Omit<RuleBreak, "at"> | null,
): ShopRule {
  return {
    table,
    about,
    reads,
    *check(tables) {
      const rows: readonly ShopRow<N>[] = tables[table];
      for (const [at, row] of rows.entries()) {
        const found = judge(row);
        if (found !== null) yield { at, ...found };
      }
    },
  };
}

const settingKnown = shopRule(
  "shop_settings",
  "A setting is one of those that are known.",
  ["id"],
  ({ id }) =>
    isShopSetting(id)
      ? null
      : {
          column: "id",
          value: id,
          expected: "a setting that `docs/book.md` lists; this one has no effect",
          nearest: nearest(id, Object.keys(SHOP_SETTINGS)),
        },
);

const settingNotNegative = shopRule("shop_settings", "No setting is negative.", ["value"], ({ value }) =>
  value >= 0
    ? null
    : { column: "value", value: plainDecimal(value), expected: "0 or more", nearest: plainDecimal(-value) },
);

const holderDiameters = shopRule(
  "holders",
  "The thinnest bundle is not thicker than the thickest.",
  ["min_diameter_mm", "max_diameter_mm"],
  (row) =>
    row.min_diameter_mm <= row.max_diameter_mm
      ? null
      : {
          column: "max_diameter_mm",
          value: plainDecimal(row.max_diameter_mm),
          expected: `${plainDecimal(row.min_diameter_mm)} or more, the thinnest bundle`,
          nearest: null,
        },
);

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Whether a text is a day of the Gregorian calendar as year-month-day. */
export function isDay(text: string): boolean {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (parts === null) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const leap = month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 1 : 0;
  return day >= 1 && day <= (DAYS[month - 1] ?? 0) + leap;
}

const calendarDay = shopRule("calendars", "A day is a real date as year-month-day.", ["day"], ({ day }) =>
  isDay(day)
    ? null
    : {
        column: "day",
        value: day,
        expected: "a real date as year-month-day, such as 2026-03-31",
        nearest: null,
      },
);

/** Every rule of the shop's tables. */
export const SHOP_RULES: readonly ShopRule[] = [
  settingKnown,
  settingNotNegative,
  holderDiameters,
  calendarDay,
];
