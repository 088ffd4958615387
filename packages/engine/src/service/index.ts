export * from "./faults/index.ts";
export * from "./file/index.ts";
export * from "./odds/index.ts";
export * from "./session/index.ts";
