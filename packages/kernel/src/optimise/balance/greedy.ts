import { has, put } from "./bits.ts";
import { type Line, mirrored } from "./line.ts";
import { Loads } from "./loads.ts";

/** What a task is worth in a load beside its time; values found by trial. */
interface Taste {
  /** For each unit of time of its successors. */
  readonly following: number;
  /** For each successor. */
  readonly successors: number;
  /** Against being one more task: few long tasks leave the short ones for later. */
  readonly one: number;
}

const TASTES: readonly Taste[] = [
  { following: 0.0001, successors: 0.0001, one: 0.1 },
  { following: 0.00001, successors: 0.00001, one: 0.03 },
  { following: 0.005, successors: 0.005, one: 0.01 },
  { following: 0.01, successors: 0.02, one: 0.03 },
];

/** Steps to look for the best load of one station, beside those of a first one. */
const LOOK = 500;

/** Steps for all stations of one plan together. */
const LOOKS = 40_000;

/** A plan by a quick rule, and the counted steps that it took. */
export interface Quick {
  /** Station of each task; `null` when none was found. */
  readonly stationOf: Int32Array | null;
  readonly steps: number;
}

/**
 * The best of several plans that fill station after station with the most valuable of the loads that a counted look
 * finds, from either end (T. R. Hoffmann, Management Science 9 (1963) 551–562; values of E. C. Sewell and S. H. Jacobson
 * 2012, from memory). Stops at a plan of `enough` stations.
 * @param most stations at hand
 */
export const greedyPlan = (line: Line, takt: number, most: number, enough: number): Quick => {
  let best: Int32Array | null = null;
  let least = most + 1;
  let steps = 0;
  const backwards = mirrored(line, most);
  const restricted = line.allowed.some((set) => set !== null);
  for (const forward of [true, false]) {
    const loads = new Loads(forward ? line : backwards, false);
    for (const taste of TASTES) {
      const stationOf = fillFrom(forward ? line : backwards, loads, takt, Math.min(most, least), taste);
      if (stationOf === null) continue;
      const count = 1 + stationOf.reduce((a, b) => Math.max(a, b), -1);
      // Seen from the end, empty stations stand before the line; where stations have names they must stay there.
      const length = forward || !restricted ? count : most;
      if (length >= least) continue;
      least = length;
      best = forward ? stationOf : stationOf.map((s) => length - 1 - s);
      if (least <= enough) return { stationOf: best, steps: steps + loads.steps };
    }
    steps += loads.steps;
  }
  return { stationOf: best, steps };
};

const fillFrom = (line: Line, loads: Loads, takt: number, most: number, taste: Taste): Int32Array | null => {
  const { n, words } = line;
  const value = valuesOf(line, taste);
  const stationOf = new Int32Array(n).fill(-1);
  const done = new Int32Array(words);
  let open = n;
  const look = mostTogether(line, takt) + Math.min(LOOK, Math.ceil((LOOKS * takt) / (line.total + takt)));
  for (let station = 0; open > 0; station++) {
    if (station >= most) return null;
    let best: Int32Array | null = null;
    let highest = Number.NEGATIVE_INFINITY;
    loads.from(done, 0, station, takt, takt, look, (load, count) => {
      let worth = 0;
      for (let k = 0; k < count; k++) worth += value[load[k] ?? 0] ?? 0;
      if (worth > highest) {
        highest = worth;
        best = load.slice(0, count);
      }
      return true;
    });
    for (const i of best ?? []) {
      put(done, 0, i);
      stationOf[i] = station;
      open--;
    }
    for (let i = 0; i < n; i++) {
      const last = line.allowed[i]?.at(-1);
      if (last !== undefined && last <= station && !has(done, 0, i)) return null;
    }
  }
  return stationOf;
};

const valuesOf = (
  { n, time, total, allSuccs }: Line,
  { following, successors, one }: Taste,
): Float64Array => {
  const mean = total / Math.max(1, n);
  return Float64Array.from({ length: n }, (_, i) => {
    const after = allSuccs[i] ?? new Int32Array(0);
    const work = after.reduce((sum, j) => sum + (time[j] ?? 0), 0);
    return (time[i] ?? 0) + following * work + mean * (successors * after.length - one);
  });
};

/** A number of tasks that no load exceeds. */
const mostTogether = ({ time }: Line, takt: number): number => {
  let rest = takt;
  let count = 0;
  for (const t of time.toSorted()) {
    rest -= t;
    if (rest < 0) break;
    count++;
  }
  return count;
};
