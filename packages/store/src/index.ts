export { StoreError, type StoreErrorCode } from "./error.ts";
export { openStore } from "./open.ts";
export type * from "./store.ts";
