import { type BalanceEffort, leastTakt } from "@pinwright/kernel";
import type { StationLoad, StationPlan, WorkStep } from "../../model/index.ts";
import type { WorkPlace } from "./places.ts";
import type { PlacedStep, Shared } from "./share.ts";

/** A plan without what was asked. */
export type Parts = Omit<StationPlan, "question" | "taktS">;

/** A line that is shared out, with what cannot be beaten. */
export interface Half {
  readonly shared: Shared;
  readonly stations: readonly (readonly number[])[];
  readonly value: number;
  readonly lowerBound: number;
}

/** Least takt of some steps at so many places. */
export function halfOf(shared: Shared, places: number, effort: BalanceEffort): Half {
  if (shared.steps.length === 0) {
    return { shared, stations: Array.from({ length: places }, () => []), value: 0, lowerBound: 0 };
  }
  const found = leastTakt(shared.problem, places, effort);
  // The first places that `shareOf` gives are a plan, and the search starts from one like it.
  if (!found.found) throw new Error(`no plan for ${shared.steps.length} steps at ${places} places`);
  const { stations, value, lowerBound } = found;
  return { shared, stations, value, lowerBound };
}

export function loadsOf(half: Half, places: readonly WorkPlace[]): readonly StationLoad[] {
  return places.map(({ id, stationId, labels, beside }, i) => {
    const own = [...(half.stations[i] ?? [])].sort((a, b) => a - b);
    const seconds = own.reduce((sum, task) => sum + (half.shared.problem.times[task] ?? 0), 0);
    const stepIds = own.flatMap((task) => half.shared.steps[task]?.id ?? []);
    return { placeId: id, stationId, labels, stepIds, seconds: tenth(seconds), beside };
  });
}

/** Seconds are told to a tenth. */
const tenth = (seconds: number): number => Math.round(seconds * 10) / 10;

/** A bound as it is told, and whether the value reaches it. */
export const boundOf = (
  value: number,
  lowerBound: number,
): { readonly lowerBound: number; readonly isProven: boolean } => ({
  lowerBound: tenth(Math.min(value, lowerBound)),
  isProven: lowerBound >= value,
});

/** Steps that may be done anywhere. */
export const free = (steps: readonly WorkStep[]): readonly PlacedStep[] =>
  steps.map((step) => ({ step, places: null }));
