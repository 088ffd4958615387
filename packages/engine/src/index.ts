export * from "./colour/index.ts";
export * from "./lists/index.ts";
export * from "./model/index.ts";
export * from "./route/index.ts";
export * from "./wire/index.ts";
