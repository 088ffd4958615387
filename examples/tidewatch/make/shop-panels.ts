import { SHOP_TABLES, type ShopRow, type ShopTables } from "@pinwright/book";
import { fillRows } from "./author.ts";

/** What the cabinet shop has beside whole sheets: an offcut of an earlier machine, and the coats of a cabinet. */
export const panelShop: Partial<ShopTables> = {
  stock_sheets: fillRows<ShopRow<"stock_sheets">>(SHOP_TABLES.stock_sheets, [
    {
      id: "ply-18-rest-1",
      part: "sheet.ply-18",
      width_mm: 640,
      length_mm: 1210,
      thickness_mm: 18,
      measured_mm: 17.6,
      trim_mm: 2,
      count: 1,
      offcut: true,
    },
  ]),
  coats: fillRows<ShopRow<"coats">>(SHOP_TABLES.coats, [
    {
      id: "coat.primer",
      label: "Primer, sprayed",
      label_zh: "喷底漆",
      order: 1,
      minutes: 14,
      dry_hours: 3,
    },
    {
      id: "coat.base",
      label: "Sanding, base colour sprayed",
      label_zh: "砂光后喷底色",
      order: 2,
      minutes: 18,
      dry_hours: 4,
    },
    {
      id: "coat.clear",
      label: "Sanding, clear coat sprayed",
      label_zh: "砂光后喷清漆",
      order: 3,
      minutes: 20,
      dry_hours: 12,
    },
  ]),
};
