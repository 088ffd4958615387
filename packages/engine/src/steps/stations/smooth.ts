import type { BalanceProblem } from "@pinwright/kernel";

/** Tasks along a line of stations, and the work of each station. */
interface Spread {
  readonly stationOf: number[];
  readonly loads: number[];
}

/**
 * A plan made more even: tasks are moved to a less loaded station, or exchanged with a shorter task of one, as long as
 * precedence and allowed stations let them and the sum of the squares of the loads falls. Each move that falls it evens
 * out two stations, so what is too much at one flows over several to where there is room. A plan that is even is given
 * back as it is.
 *
 * The search of the kernel fills one station after the other and proves bounds; where tasks are fixed to stations in the
 * middle of the line its plans may be far from even, and this mends them.
 * @param stations tasks of each station along the line
 * @param most counted looks at a task and a station
 */
export function smoothPlan(
  { times, before, allowed }: BalanceProblem,
  stations: readonly (readonly number[])[],
  most: number,
): readonly (readonly number[])[] {
  const spread = spreadOf(times, stations);
  const near = neighboursOf(times.length, before);
  const windows = new Windows(spread, near, allowed ?? [], stations.length);
  let looks = 0;
  for (let moved = true; moved && looks < most; ) {
    moved = false;
    for (let task = 0; task < times.length && looks < most; task++) {
      looks += stations.length;
      if (moveTask(task, times, spread, windows)) moved = true;
    }
    if (moved) continue;
    looks += times.length;
    moved = swapTask(times, spread, windows);
  }
  return stations.map((_, s) => times.flatMap((_time, task) => (spread.stationOf[task] === s ? [task] : [])));
}

function spreadOf(times: readonly number[], stations: readonly (readonly number[])[]): Spread {
  const stationOf = times.map(() => 0);
  const loads = stations.map((tasks, s) => {
    let load = 0;
    for (const task of tasks) {
      stationOf[task] = s;
      load += times[task] ?? 0;
    }
    return load;
  });
  return { stationOf, loads };
}

interface Neighbours {
  readonly preds: readonly (readonly number[])[];
  readonly succs: readonly (readonly number[])[];
}

function neighboursOf(n: number, before: BalanceProblem["before"]): Neighbours {
  const preds = Array.from({ length: n }, (): number[] => []);
  const succs = Array.from({ length: n }, (): number[] => []);
  for (const [i, j] of before) {
    preds[j]?.push(i);
    succs[i]?.push(j);
  }
  return { preds, succs };
}

/** Where a task can be while all others stay. */
class Windows {
  readonly #spread: Spread;
  readonly #near: Neighbours;
  readonly #allowed: readonly (ReadonlySet<number> | null)[];
  readonly #stations: number;

  constructor(
    spread: Spread,
    near: Neighbours,
    allowed: readonly (readonly number[] | null)[],
    stations: number,
  ) {
    this.#spread = spread;
    this.#near = near;
    this.#allowed = allowed.map((set) => (set === null ? null : new Set(set)));
    this.#stations = stations;
  }

  first(task: number): number {
    let first = 0;
    for (const p of this.#near.preds[task] ?? []) first = Math.max(first, this.#spread.stationOf[p] ?? 0);
    return first;
  }

  last(task: number): number {
    let last = this.#stations - 1;
    for (const s of this.#near.succs[task] ?? []) last = Math.min(last, this.#spread.stationOf[s] ?? last);
    return last;
  }

  allows(task: number, station: number): boolean {
    return this.#allowed[task]?.has(station) ?? true;
  }
}

/** Puts a task where it evens the line most; false: it stays. */
function moveTask(task: number, times: readonly number[], spread: Spread, windows: Windows): boolean {
  const { stationOf, loads } = spread;
  const time = times[task] ?? 0;
  const from = stationOf[task] ?? 0;
  let to = from;
  let least = (loads[from] ?? 0) - time - ROUNDING;
  for (let s = windows.first(task); s <= windows.last(task); s++) {
    const load = loads[s] ?? 0;
    if (s === from || load >= least || !windows.allows(task, s)) continue;
    least = load;
    to = s;
  }
  if (to === from || time <= 0) return false;
  shift(task, to, time, spread);
  return true;
}

/** Rounding in the sums of times: what is gained less than this is no gain. */
const ROUNDING = 1e-6;

function shift(task: number, to: number, time: number, { stationOf, loads }: Spread): void {
  const from = stationOf[task] ?? 0;
  loads[from] = (loads[from] ?? 0) - time;
  loads[to] = (loads[to] ?? 0) + time;
  stationOf[task] = to;
}

/** Exchanges a task of the most loaded station for a shorter one elsewhere; false: none evens the line. */
function swapTask(times: readonly number[], spread: Spread, windows: Windows): boolean {
  const { stationOf, loads } = spread;
  const full = loads.reduce((most, load, s) => (load > (loads[most] ?? 0) ? s : most), 0);
  for (let a = 0; a < times.length; a++) {
    if (stationOf[a] !== full) continue;
    const [first, last] = [windows.first(a), windows.last(a)];
    for (let b = 0; b < times.length; b++) {
      const other = stationOf[b] ?? full;
      if (other === full || other < first || other > last) continue;
      const gain = (times[a] ?? 0) - (times[b] ?? 0);
      const room = (loads[full] ?? 0) - (loads[other] ?? 0);
      if (gain <= ROUNDING || gain >= room - ROUNDING || !windows.allows(a, other)) continue;
      if (!windows.allows(b, full)) continue;
      shift(a, other, times[a] ?? 0, spread);
      if (full < windows.first(b) || full > windows.last(b)) {
        shift(a, full, times[a] ?? 0, spread);
        continue;
      }
      shift(b, full, times[b] ?? 0, spread);
      return true;
    }
  }
  return false;
}
