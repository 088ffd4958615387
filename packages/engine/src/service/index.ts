export * from "./faults/index.ts";
