export type * from "./model/index.ts";
