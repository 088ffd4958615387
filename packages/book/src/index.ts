export type { Book, ReadBook, Shop } from "./book.ts";
export {
  type CellRows,
  type Cells,
  type CellTables,
  cellOf,
  MACHINE_TABLE,
  OUTLINE_TABLE,
  OUTLINE_TEXT,
  RANK,
  rowOrder,
} from "./changes/cell-tables.ts";
export { type Applied, applyChanges, type CellChange, type CellConflict, inverse } from "./changes/change.ts";
export { diffTables, keepUnread, matchRows } from "./changes/diff.ts";
export {
  deleteRows,
  insertRows,
  moveRows,
  orderRows,
  putOutline,
  setCell,
  setMachineValue,
} from "./changes/edits.ts";
export { cellTablesOf, cellTablesOfRaw } from "./changes/import.ts";
export { MACHINE_ROW, type RowIds, rawBookOf, rawShopOf } from "./changes/raw-book.ts";
export { type RowRenaming, renameRow } from "./changes/rename-row.ts";
export { bookDocs } from "./docs/book-docs.ts";
export {
  DRAWING_FORMS,
  type DrawingForm,
  drawingForm,
  drawingProblem,
  isDrawingName,
  safeDrawingName,
} from "./drawing/drawing-file.ts";
export { multiplyBook } from "./edit/multiply-book.ts";
export { type Renamed, renameId } from "./edit/rename-id.ts";
export { withRows } from "./edit/with-rows.ts";
export { FAULT_CODES, type Fault, type FaultCode } from "./fault.ts";
export { FaultLog, type FaultNote } from "./fault-log.ts";
export { FAULT_TEXTS } from "./fault-texts.ts";
export { LIMITS, type LimitName } from "./limits.ts";
export { LiveBook, type LiveFault, type LiveReading } from "./live/live-book.ts";
export { FORMAT, type Machine, machineSchema } from "./machine.ts";
export { circleRows } from "./mapping/circle-rows.ts";
export {
  chosenMapping,
  GUESSES,
  type Guess,
  guessMapping,
  type MappedHeading,
  type RememberedMapping,
} from "./mapping/guess.ts";
export { type MappedFault, type MappedRow, type MappedRows, mappedRows } from "./mapping/mapped-rows.ts";
export { type MergedRows, mergedRows, mergeRows } from "./mapping/merge-rows.ts";
export { MIGRATIONS, type Migration, migrate } from "./migrate/migrate.ts";
export { circlesOf, type DrawnCircle, type DrawnCircles } from "./outline/dxf/circles.ts";
export { FLATTEN_MM } from "./outline/flatten.ts";
export type { Outline, OutlinePoint, Ring } from "./outline/outline.ts";
export { readOutline } from "./outline/read.ts";
export { writeOutline } from "./outline/write.ts";
export { type ReadShop, readRawBook, readRawShop } from "./read/book.ts";
export { emptyBook, emptyShop } from "./read/empty.ts";
export { BLANK_MACHINE, MACHINE_FILE } from "./read/machine.ts";
export { plainDecimal } from "./read/plain-decimal.ts";
export type { RawBook, RawTable } from "./read/raw.ts";
export { shopNumbers } from "./read/shop.ts";
export { isId, isOutlineName } from "./read/words.ts";
export { BOOK_RULES } from "./rules/index.ts";
export { MOMENTS } from "./rules/moments-known.ts";
export type { Rule, RuleBreak } from "./rules/rule.ts";
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
export { NET_CLASSES } from "./schema/tables/places.ts";
export { editDistance, nearest } from "./text/nearest.ts";
export { rawTable } from "./write/table.ts";
