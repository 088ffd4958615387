export { StoreError, type StoreErrorCode } from "./error.ts";
export { openStore, restoreBackUp } from "./open.ts";
export type {
  FailedFirstRow,
  QualityStore,
  RecordedDefect,
  Span,
  TestYieldRow,
  UnitFirst,
} from "./records/quality.ts";
export type * from "./releases/release.ts";
export type { ServiceBookKey, ServiceBookStore } from "./service-books/service-book-store.ts";
export type * from "./store.ts";
