import { diagnoseHarness, type HarnessDiagnosis, type Tug, testBench } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** What is wrong with a harness by what its tester read; null: there is no such harness. */
export function diagnoseBench(
  { line }: Model,
  {
    harnessId,
    measured,
    tugs,
  }: {
    readonly harnessId: string;
    /** Group of each place, in the order of the bench's places. */
    readonly measured: readonly number[];
    readonly tugs: readonly (readonly [string, Tug])[];
  },
): HarnessDiagnosis | null {
  const harness = line.harnesses.get(harnessId);
  if (harness === undefined) return null;
  return diagnoseHarness(testBench(line.machine, harness), measured, new Map(tugs));
}
