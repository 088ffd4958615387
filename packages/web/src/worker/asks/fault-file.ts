import { type BuiltRecords, type FaultFile, faultFileOf } from "@pinwright/engine";
import type { Model } from "../model.ts";

/**
 * What faults of the machine are found with, as the book stands; null while its wires are not known yet.
 * @param built what was built and what failed on it
 */
export function faultFile({ line, early }: Model, built: BuiltRecords): FaultFile | null {
  return early ? null : faultFileOf(line, { built, table: "later" });
}
