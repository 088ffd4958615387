import { greedyPlan } from "./greedy.ts";
import { type BalanceProblem, type Line, lineOf, mayDo, timeOf, wholeUnits } from "./line.ts";
import { lengthOf } from "./plan.ts";
import { Probe, TaktBounds } from "./probe.ts";
import { TaktSearch } from "./takt.ts";

/** A plan of the line. */
export interface Balance {
  readonly found: true;
  /** Tasks of each station along the line, in an order that respects the precedence. */
  readonly stations: readonly (readonly number[])[];
  /** The number of stations, or the takt. */
  readonly value: number;
  /** No plan has a lower value. */
  readonly lowerBound: number;
  /** (value − bound) / bound. */
  readonly gap: number;
  /** True when the value is the least there is. */
  readonly proven: boolean;
  /** Counted steps of the search. */
  readonly steps: number;
}

/** No plan: proven that there is none, or none found with the steps at hand. */
export interface NoBalance {
  readonly found: false;
  readonly proven: boolean;
  readonly steps: number;
}

/** Counted limits of a search. */
export interface BalanceEffort {
  /** Steps of all searches together. */
  readonly steps: number;
}

const USUAL: BalanceEffort = { steps: 1_000_000 };

/**
 * The fewest stations that do the work with a given takt (SALBP-1), with a proven lower bound. Where tasks are allowed
 * at some stations only, stations without work may stand between others and count.
 * @throws RangeError when the takt is not positive, or as `lineOf`.
 */
export const fewestStations = (
  problem: BalanceProblem,
  takt: number,
  effort: BalanceEffort = USUAL,
): Balance | NoBalance => {
  if (!Number.isFinite(takt) || takt <= 0) throw new RangeError(`takt is ${takt}, expected more than 0`);
  const { line, unit } = lineOf(problem);
  const whole = wholeUnits(takt, unit);
  if (line.n === 0) return balanceOf(line, new Int32Array(0), 0, 0, 0, 0);
  // Beyond the last named station each task may have a station of its own.
  const most = line.n + line.allowed.reduce((last, set) => Math.max(last, 1 + (set?.at(-1) ?? -1)), 0);
  const bounds = new TaktBounds(line, whole);
  if (bounds.question(most) === null) return { found: false, proven: true, steps: 0 };
  let bound = 1;
  while (bounds.question(bound) === null) bound++;
  const quick = greedyPlan(line, whole, most, bound);
  let { steps } = quick;
  let best = quick.stationOf;
  let stations = best === null ? most + 1 : lengthOf(best);
  for (let m = bound; m < stations; m++) {
    const left = effort.steps - steps;
    const question = bounds.question(m);
    const probe = question === null ? null : new Probe(question);
    const answer = probe === null ? "no" : probe.run(left / (m + 1 < stations ? 2 : 1));
    steps += probe?.steps ?? 0;
    if (answer === "no") {
      if (m === bound) bound++;
    } else if (answer !== "open") {
      best = answer;
      stations = lengthOf(best);
    }
  }
  if (best === null) return { found: false, proven: bound > most, steps };
  return balanceOf(line, best, stations, stations, Math.min(bound, stations), steps);
};

/**
 * The least takt at which so many stations do the work (SALBP-2), with a proven lower bound. Some stations may stay
 * without work.
 * @throws RangeError when the number of stations is not a whole number from 1, or as `lineOf`.
 */
export const leastTakt = (
  problem: BalanceProblem,
  stations: number,
  effort: BalanceEffort = USUAL,
): Balance | NoBalance => {
  if (!Number.isInteger(stations) || stations < 1) {
    throw new RangeError(`${stations} stations, expected a whole number from 1`);
  }
  const { line, unit } = lineOf(problem);
  const plan = earliestPlan(line, stations);
  if (plan === null) return { found: false, proven: true, steps: 0 };
  const search = new TaktSearch(line, stations, plan);
  search.run(effort.steps);
  const { best, high, bound, steps } = search;
  return balanceOf(line, best, stations, timeOf(high, unit), timeOf(bound, unit), steps);
};

/** Each task at the first station that its predecessors and its allowed stations admit; `null`: there is no plan. */
const earliestPlan = (line: Line, stations: number): Int32Array | null => {
  const stationOf = new Int32Array(line.n);
  for (const i of line.order) {
    let station = 0;
    for (const j of line.preds[i] ?? []) station = Math.max(station, stationOf[j] ?? 0);
    while (station < stations && !mayDo(line, i, station)) station++;
    if (station >= stations) return null;
    stationOf[i] = station;
  }
  return stationOf;
};

const balanceOf = (
  line: Line,
  stationOf: Int32Array,
  count: number,
  value: number,
  lowerBound: number,
  steps: number,
): Balance => {
  const stations: number[][] = Array.from({ length: count }, () => []);
  for (const i of line.order) stations[stationOf[i] ?? 0]?.push(i);
  const gap = value === lowerBound ? 0 : (value - lowerBound) / lowerBound;
  return { found: true, stations, value, lowerBound, gap, proven: value === lowerBound, steps };
};
