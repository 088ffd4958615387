import { dominatorsOf } from "./dominators.ts";

/** Work to be shared out along a line of stations. */
export interface BalanceProblem {
  /** Time of each task, in any unit, taken to six decimals. */
  readonly times: readonly number[];
  /** Pairs of tasks: the first must be done at the station of the second or before it. */
  readonly before: readonly (readonly [number, number])[];
  /**
   * Stations, from 0 along the line, that may do a task; `null` or left out: any station. Skills are told like this: a
   * task that only some persons can do is allowed at their stations.
   */
  readonly allowed?: readonly (readonly number[] | null)[];
}

/** A problem made ready for the search: whole times and sets of tasks as bits. */
export interface Line {
  readonly n: number;
  /** 32-bit words of a set of tasks. */
  readonly words: number;
  /** Times in whole units. */
  readonly time: Float64Array;
  readonly total: number;
  /** Direct predecessors and successors. */
  readonly preds: readonly Int32Array[];
  readonly succs: readonly Int32Array[];
  /** All predecessors and successors. */
  readonly allPreds: readonly Int32Array[];
  readonly allSuccs: readonly Int32Array[];
  /** Tasks in an order that respects the precedence. */
  readonly order: Int32Array;
  /** Allowed stations in rising order; `null`: any. */
  readonly allowed: readonly (Int32Array | null)[];
  /** Tasks that may stand for others in a load, seen from the start of the line and from its end. */
  readonly dominators: Int32Array;
  readonly backDominators: Int32Array;
}

/** Decimals that count. */
const MICRO = 1e6;

/** The measures multiply times by up to so much and must stay exact. */
const HEADROOM = 64;

/** A line, with the size of its unit of time in millionths of the unit of the problem. */
export interface ScaledLine {
  readonly line: Line;
  readonly unit: number;
}

/**
 * Checks a problem and makes it a line with whole times: the unit is the greatest common divisor of the times.
 * @throws RangeError when a time is negative or not finite, a task or station is out of range, or the precedence has a
 * circle.
 */
export const lineOf = ({ times, before, allowed }: BalanceProblem): ScaledLine => {
  const n = times.length;
  const micro = times.map((time, i) => {
    if (!Number.isFinite(time) || time < 0)
      throw new RangeError(`time of task ${i} is ${time}, expected 0 or more`);
    return Math.round(time * MICRO);
  });
  const most = Number.MAX_SAFE_INTEGER / HEADROOM;
  if (micro.reduce((a, b) => a + b, 0) > most) {
    throw new RangeError(`times sum to more than ${Math.floor(most / MICRO)}`);
  }
  if (allowed !== undefined && allowed.length !== n) {
    throw new RangeError(`${allowed.length} sets of allowed stations, expected ${n}`);
  }
  const unit = micro.reduce(divisor, 0) || 1;
  const time = Float64Array.from(micro, (t) => t / unit);
  const { preds, succs } = neighbours(n, before);
  const order = precedenceOrder(preds, succs);
  const allPreds = closure(order, preds);
  const allSuccs = closure(order.toReversed(), succs);
  const stations = Array.from({ length: n }, (_, i) => stationSet(i, allowed?.[i] ?? null));
  const line: Line = {
    n,
    words: (n + 31) >> 5,
    time,
    total: time.reduce((a, b) => a + b, 0),
    preds,
    succs,
    allPreds,
    allSuccs,
    order,
    allowed: stations,
    dominators: dominatorsOf(time, allSuccs, stations),
    backDominators: dominatorsOf(time, allPreds, stations),
  };
  return { line, unit };
};

/** Whole units in a length of time. */
export const wholeUnits = (time: number, unit: number): number =>
  Math.floor(Math.min(Math.round(time * MICRO), Number.MAX_SAFE_INTEGER / HEADROOM) / unit);

/** The length of time of whole units. */
export const timeOf = (units: number, unit: number): number => (units * unit) / MICRO;

/** The same line walked from its end, when it has `stations` stations. */
export const mirrored = (line: Line, stations: number): Line => ({
  ...line,
  preds: line.succs,
  succs: line.preds,
  allPreds: line.allSuccs,
  allSuccs: line.allPreds,
  order: line.order.toReversed(),
  dominators: line.backDominators,
  backDominators: line.dominators,
  allowed: line.allowed.map((set) =>
    set === null
      ? null
      : set
          .filter((s) => s < stations)
          .map((s) => stations - 1 - s)
          .reverse(),
  ),
});

/** True when task `i` may be done at `station`. */
export const mayDo = (line: Line, i: number, station: number): boolean => {
  const set = line.allowed[i];
  return set === null || set === undefined || set.includes(station);
};

const divisor = (a: number, b: number): number => {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
};

const neighbours = (
  n: number,
  before: BalanceProblem["before"],
): { preds: Int32Array[]; succs: Int32Array[] } => {
  const preds = Array.from({ length: n }, () => new Set<number>());
  const succs = Array.from({ length: n }, () => new Set<number>());
  for (const [i, j] of before) {
    const from = succs[i];
    const to = preds[j];
    if (from === undefined || to === undefined) {
      throw new RangeError(`task ${from === undefined ? i : j} in a precedence, expected 0 to ${n - 1}`);
    }
    from.add(j);
    to.add(i);
  }
  const sorted = (sets: readonly Set<number>[]) => sets.map((set) => Int32Array.from(set).sort());
  return { preds: sorted(preds), succs: sorted(succs) };
};

/** Predecessors first; among the ready ones in the order of their becoming so. */
const precedenceOrder = (preds: readonly Int32Array[], succs: readonly Int32Array[]): Int32Array => {
  const waits = preds.map((set) => set.length);
  const order = waits.flatMap((count, i) => (count === 0 ? [i] : []));
  for (let k = 0; k < order.length; k++) {
    for (const j of succs[order[k] ?? 0] ?? []) {
      waits[j] = (waits[j] ?? 0) - 1;
      if (waits[j] === 0) order.push(j);
    }
  }
  if (order.length < preds.length) {
    const stuck = waits.findIndex((count) => count > 0);
    throw new RangeError(`task ${stuck} waits for a circle of tasks, expected a precedence without circles`);
  }
  return Int32Array.from(order);
};

/** All tasks reached from each one; `order` lists the reached before the reaching. */
const closure = (order: Int32Array, near: readonly Int32Array[]): Int32Array[] => {
  const n = near.length;
  const all: Int32Array[] = near.map(() => new Int32Array(0));
  const mark = new Int32Array(n).fill(-1);
  for (const i of order) {
    const reached: number[] = [];
    const add = (j: number): void => {
      if (mark[j] === i) return;
      mark[j] = i;
      reached.push(j);
    };
    for (const j of near[i] ?? []) {
      add(j);
      for (const k of all[j] ?? []) add(k);
    }
    all[i] = Int32Array.from(reached).sort();
  }
  return all;
};

const stationSet = (task: number, set: readonly number[] | null): Int32Array | null => {
  if (set === null) return null;
  for (const s of set) {
    if (!Number.isInteger(s) || s < 0) {
      throw new RangeError(`task ${task} is allowed at station ${s}, expected a whole number from 0`);
    }
  }
  return Int32Array.from(new Set(set)).sort();
};
