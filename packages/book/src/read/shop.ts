import { SHOP_SETTINGS, type ShopNumbers, type ShopSettingName } from "../schema/shop-settings.ts";

/** Whether a setting is one that the program knows. */
export const isShopSetting = (id: string): id is ShopSettingName => Object.hasOwn(SHOP_SETTINGS, id);

/** Every known setting: the shop's value where it gives one, else the default. */
export function shopNumbers(rows: readonly { readonly id: string; readonly value: number }[]): ShopNumbers {
  const numbers: Record<string, number> = {};
  for (const [name, setting] of Object.entries(SHOP_SETTINGS)) numbers[name] = setting.value;
  for (const { id, value } of rows) if (isShopSetting(id)) numbers[id] = value;
  // Every key of SHOP_SETTINGS was set in the first loop and nothing else in the second.
  return numbers as ShopNumbers;
}
