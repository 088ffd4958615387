import { SHOP_TABLES, type ShopRow, type ShopTableName, type ShopTables } from "@pinwright/book";
import { fillRows } from "./author.ts";
import { DRIVERS } from "./drivers.ts";
import { currencies, suppliers } from "./shop-suppliers.ts";
import { wireTypes } from "./wire-types.ts";

const shopRows = <N extends ShopTableName>(name: N, written: readonly Partial<ShopRow<N>>[]): ShopRow<N>[] =>
  fillRows<ShopRow<N>>(SHOP_TABLES[name], written);

const holder = (
  id: string,
  kind: ShopRow<"holders">["kind"],
  label: string,
  label_zh: string,
  min_diameter_mm: number,
  max_diameter_mm: number,
) => ({ id, kind, label, label_zh, min_diameter_mm, max_diameter_mm, part: `hw.${id}` });

/** Ties, sleeves and saddles that the harness bench has; each is a part of the book, too. */
export const HOLDERS = [
  holder("tie-80", "tie", "Cable tie 80 × 2.4", "扎带 80 × 2.4", 1, 15),
  holder("tie-100", "tie", "Cable tie 100 × 2.5", "扎带 100 × 2.5", 1.5, 22),
  holder("tie-150", "tie", "Cable tie 150 × 3.6", "扎带 150 × 3.6", 2, 35),
  holder("tie-200", "tie", "Cable tie 200 × 4.8", "扎带 200 × 4.8", 3, 50),
  holder("sleeve-6", "sleeve", "Braided sleeve 6 mm", "编织套管 6 mm", 4, 9),
  holder("sleeve-10", "sleeve", "Braided sleeve 10 mm", "编织套管 10 mm", 8, 15),
  holder("sleeve-16", "sleeve", "Braided sleeve 16 mm", "编织套管 16 mm", 13, 24),
  holder("sleeve-24", "sleeve", "Braided sleeve 24 mm", "编织套管 24 mm", 20, 34),
  holder("saddle-8", "saddle", "Saddle, one screw, 8 mm", "单螺钉线夹 8 mm", 0, 8),
  holder("saddle-14", "saddle", "Saddle, one screw, 14 mm", "单螺钉线夹 14 mm", 7, 14),
  holder("saddle-22", "saddle", "Saddle, one screw, 22 mm", "单螺钉线夹 22 mm", 13, 22),
  holder("clip-34", "clip", "Clamp, two screws, 34 mm", "双螺钉压线夹 34 mm", 18, 34),
] as const;

/** The shop in which Tidewatch is built. */
export const shop: Partial<ShopTables> = {
  currencies,
  suppliers,
  holders: shopRows("holders", HOLDERS),
  shop_settings: shopRows("shop_settings", [
    { id: "takt_min", value: 90, remark: "Five machines a day and a half, with the people there are." },
  ]),
  drivers: shopRows("drivers", DRIVERS),
  reels: shopRows(
    "reels",
    (wireTypes.tables.wire_types ?? []).map(({ id, colours }) => ({
      id: `reel.${id}`,
      wire_type: id,
      colours,
      length_m: 305,
    })),
  ),
  stock_sheets: shopRows("stock_sheets", [
    {
      id: "ply-18",
      part: "sheet.ply-18",
      width_mm: 1220,
      length_mm: 2440,
      thickness_mm: 18,
      measured_mm: 17.6,
      trim_mm: 5,
    },
    {
      id: "ply-13",
      part: "sheet.ply-13",
      width_mm: 1220,
      length_mm: 2440,
      thickness_mm: 13,
      measured_mm: 12.8,
      trim_mm: 5,
    },
    {
      id: "ply-12",
      part: "sheet.ply-12",
      width_mm: 1220,
      length_mm: 2440,
      thickness_mm: 12,
      measured_mm: 11.7,
      trim_mm: 5,
    },
    {
      id: "ply-9",
      part: "sheet.ply-9",
      width_mm: 1220,
      length_mm: 2440,
      thickness_mm: 9,
      measured_mm: 8.8,
      trim_mm: 5,
    },
  ]),
  sites: shopRows("sites", [
    { id: "works", label: "Works", label_zh: "总厂" },
    { id: "joinery", label: "Cabinet shop", label_zh: "木工厂" },
  ]),
  benches: shopRows("benches", [
    {
      id: "harness-1",
      label: "Harness bench 1",
      label_zh: "线束台一",
      site: "works",
      people: 2,
      kind: "harness",
    },
    {
      id: "harness-2",
      label: "Harness bench 2",
      label_zh: "线束台二",
      site: "works",
      people: 2,
      kind: "harness",
    },
    { id: "boards-1", label: "Board bench", label_zh: "电路板台", site: "works", people: 3, kind: "board" },
    { id: "mechanisms-1", label: "Mechanism bench", label_zh: "机构台", site: "works", people: 2 },
    { id: "playfield-1", label: "Playfield cradle 1", label_zh: "台面支架一", site: "works", people: 2 },
    { id: "playfield-2", label: "Playfield cradle 2", label_zh: "台面支架二", site: "works", people: 2 },
    { id: "final", label: "Final assembly", label_zh: "总装", site: "works", people: 2 },
    { id: "test", label: "Test", label_zh: "测试", site: "works", people: 1, kind: "test" },
    { id: "pack", label: "Packing", label_zh: "包装", site: "works", people: 1, kind: "pack" },
    { id: "saw", label: "Panel saw", label_zh: "锯台", site: "joinery", people: 1, kind: "panel" },
    { id: "paint", label: "Paint booth", label_zh: "喷漆房", site: "joinery", people: 2, kind: "paint" },
  ]),
  calendars: shopRows("calendars", [
    { site: "works", day: "2026-12-25" },
    { site: "works", day: "2026-12-28" },
    { site: "joinery", day: "2026-12-25" },
  ]),
};
