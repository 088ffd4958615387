import type { Finding } from "./finding.ts";
import type { HarnessResult } from "./harness.ts";
import type { Machine } from "./machine.ts";

/** Everything the line computes from a book, a shop and the options chosen. */
export interface LineResult {
  readonly machine: Machine;
  /** By harness id, in the order of the harnesses' numbers. */
  readonly harnesses: ReadonlyMap<string, HarnessResult>;
  readonly findings: readonly Finding[];
}
