export type * from "./finding.ts";
export type * from "./harness.ts";
export type * from "./line-result.ts";
export type * from "./machine.ts";
