export type * from "./store.ts";
