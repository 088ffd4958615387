import { type BalanceEffort, fewestStations, leastTakt } from "@pinwright/kernel";
import type { StationLoad, StationPlan, WorkStep } from "../../model/index.ts";
import type { WorkPlace } from "./places.ts";
import type { PlacedStep, Shared } from "./share.ts";
import { smoothPlan } from "./smooth.ts";

/** A plan without what was asked. */
export type Parts = Omit<StationPlan, "question" | "taktS">;

/** A line that is shared out, with what cannot be beaten. */
export interface Half {
  readonly shared: Shared;
  readonly stations: readonly (readonly number[])[];
  /** Takt, or number of places where these are asked for. */
  readonly value: number;
  readonly lowerBound: number;
  /** What the seconds of its steps are multiplied by. */
  readonly factor: number;
}

type Solved = Pick<Half, "stations" | "value" | "lowerBound">;

/** Counted looks at a task and a place when a plan is made even. */
const MOST_LOOKS = 2_000_000;

/**
 * Balances of one or several questions. The same line of steps at as many places is balanced once: when everything takes
 * longer by the same part nothing but the figures changes, and two people of one station are missed alike.
 */
export class Balancing {
  readonly #effort: BalanceEffort;
  readonly #solved = new Map<string, Solved>();

  constructor(effort: BalanceEffort) {
    this.#effort = effort;
  }

  /** Least takt of some steps at so many places. */
  leastTakt(shared: Shared, places: number, factor: number): Half {
    const { stations, value, lowerBound } = this.#remember(shared, `takt ${places}`, () =>
      leastTaktOf(shared, places, this.#effort),
    );
    return { shared, stations, value: value * factor, lowerBound: lowerBound * factor, factor };
  }

  /** Fewest places of some steps, each no longer than the takt; the places that are needed are made even. */
  fewestPlaces(shared: Shared, taktS: number, factor: number): Half {
    const solved = this.#remember(shared, `places ${taktS / factor}`, () => {
      const found = fewestStations(shared.problem, taktS / factor, this.#effort);
      if (!found.found) throw new Error(`no plan for ${shared.steps.length} steps within ${taktS} s`);
      return { ...found, stations: smoothPlan(shared.problem, found.stations, MOST_LOOKS) };
    });
    return { shared, ...solved, factor };
  }

  #remember({ problem }: Shared, asked: string, solve: () => Solved): Solved {
    const key = JSON.stringify([asked, problem]);
    const known = this.#solved.get(key) ?? solve();
    this.#solved.set(key, known);
    return known;
  }
}

function leastTaktOf({ problem, steps }: Shared, places: number, effort: BalanceEffort): Solved {
  if (steps.length === 0)
    return { stations: Array.from({ length: places }, () => []), value: 0, lowerBound: 0 };
  const found = leastTakt(problem, places, effort);
  // The first places that `shareOf` gives are a plan, and the search starts from one like it.
  if (!found.found) throw new Error(`no plan for ${steps.length} steps at ${places} places`);
  const { stations, value, lowerBound, proven } = found;
  if (proven) return { stations, value, lowerBound };
  const even = smoothPlan(problem, stations, MOST_LOOKS);
  const evenS = Math.max(
    ...even.map((tasks) => tasks.reduce((sum, task) => sum + (problem.times[task] ?? 0), 0)),
  );
  return evenS < value ? { stations: even, value: evenS, lowerBound } : { stations, value, lowerBound };
}

/** Work of each place of a line. */
export function loadsOf(half: Half, places: readonly WorkPlace[]): readonly StationLoad[] {
  return places.map(({ id, stationId, labels, beside }, i) => {
    const own = [...(half.stations[i] ?? [])].sort((a, b) => a - b);
    const times = own.map((task) => half.shared.problem.times[task] ?? 0);
    const seconds = half.factor * times.reduce((sum, time) => sum + time, 0);
    const stepIds = own.flatMap((task) => half.shared.steps[task]?.id ?? []);
    return { placeId: id, stationId, labels, stepIds, seconds: tenth(seconds), beside };
  });
}

/** Seconds are told to a tenth. */
const tenth = (seconds: number): number => Math.round(seconds * 10) / 10;

/** Rounding in the sums of times. */
const ROUNDING = 1e-6;

/** A bound as it is told, and whether the value reaches it. */
export const boundOf = (
  value: number,
  lowerBound: number,
): { readonly lowerBound: number; readonly isProven: boolean } => ({
  lowerBound: tenth(Math.min(value, lowerBound)),
  isProven: lowerBound >= value - ROUNDING,
});

/** Steps that may be done anywhere. */
export const free = (steps: readonly WorkStep[]): readonly PlacedStep[] =>
  steps.map((step) => ({ step, places: null }));
