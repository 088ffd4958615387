export type { Book, ReadBook, Shop } from "./book.ts";
export { FAULT_CODES, type Fault, type FaultCode } from "./fault.ts";
export { FORMAT, type Machine, machineSchema } from "./machine.ts";
export type { Outline, OutlinePoint, Ring } from "./outline/outline.ts";
export { type CellKind, type Column, LANGUAGES } from "./schema/column.ts";
export {
  SHOP_SETTINGS,
  type ShopNumbers,
  type ShopSetting,
  type ShopSettingName,
} from "./schema/shop-settings.ts";
export type { Columns, Group, Row, Table } from "./schema/table.ts";
export {
  ALL_TABLES,
  BOOK_TABLES,
  type BookRow,
  type BookTableName,
  type BookTables,
  SHOP_TABLES,
  type ShopRow,
  type ShopTableName,
  type ShopTables,
} from "./schema/tables/index.ts";
