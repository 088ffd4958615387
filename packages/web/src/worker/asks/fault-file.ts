import { type BuiltRecords, type FaultFile, faultFileOf } from "@pinwright/engine";
import type { Model } from "../model.ts";

/**
 * What faults of the machine are found with, as the book stands.
 * @param built what was built and what failed on it
 */
export function faultFile({ line }: Model, built: BuiltRecords): FaultFile {
  return faultFileOf(line, { built, revision: null, table: "later" });
}
