export { StoreError, type StoreErrorCode } from "./error.ts";
export { openStore, restoreBackUp } from "./open.ts";
export type * from "./store.ts";
