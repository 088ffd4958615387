import { plainDecimal } from "../read/plain-decimal.ts";
import { isShopSetting } from "../read/shop.ts";
import { SHOP_SETTINGS } from "../schema/shop-settings.ts";
import { nearest } from "../text/nearest.ts";
import { SHOP_DAYS } from "./shop-days.ts";
import { SHOP_INSTRUMENTS } from "./shop-instruments.ts";
import { SHOP_MONEY } from "./shop-money.ts";
import { type ShopRule, shopRule } from "./shop-rule.ts";
import { SHOP_RUNS } from "./shop-runs.ts";

const settingKnown = shopRule(
  "shop_settings",
  "A setting is one of those that are known.",
  ["id"],
  () =>
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

const settingNotNegative = shopRule(
  "shop_settings",
  "No setting is negative.",
  ["value"],
  () =>
    ({ value }) =>
      value >= 0
        ? null
        : {
            column: "value",
            value: plainDecimal(value),
            expected: "0 or more",
            nearest: plainDecimal(-value),
          },
);

const holderDiameters = shopRule(
  "holders",
  "The thinnest bundle is not thicker than the thickest.",
  ["min_diameter_mm", "max_diameter_mm"],
  () => (row) =>
    row.min_diameter_mm <= row.max_diameter_mm
      ? null
      : {
          column: "max_diameter_mm",
          value: plainDecimal(row.max_diameter_mm),
          expected: `${plainDecimal(row.min_diameter_mm)} or more, the thinnest bundle`,
          nearest: null,
        },
);

/** Every rule of the shop's tables. */
export const SHOP_RULES: readonly ShopRule[] = [
  settingKnown,
  settingNotNegative,
  holderDiameters,
  ...SHOP_DAYS,
  ...SHOP_MONEY,
  ...SHOP_RUNS,
  ...SHOP_INSTRUMENTS,
];
