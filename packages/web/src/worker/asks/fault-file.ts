import { type FaultFile, faultFileOf } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** What faults of the machine are found with, as the book stands; null while its wires are not known yet. */
export function faultFile({ line, early }: Model, _param: null): FaultFile | null {
  return early ? null : faultFileOf(line, { table: "later" });
}
