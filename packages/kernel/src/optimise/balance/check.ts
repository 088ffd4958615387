import type { BalanceProblem } from "./line.ts";

/** A rule that a plan breaks. */
export type BalanceFault =
  | { readonly kind: "missing" | "twice"; readonly task: number }
  | { readonly kind: "unknown" | "not-allowed"; readonly task: number; readonly station: number }
  | { readonly kind: "order"; readonly task: number; readonly later: number }
  | { readonly kind: "takt"; readonly station: number; readonly time: number };

/** Rounding in the sums of times. */
const ROUNDING = 1e-9;

/**
 * What a plan of stations breaks of the problem and the takt; nothing when it is feasible. Written apart from the
 * search, from the definition alone: each task once, no task at a station before one of its predecessors, no station
 * over the takt, each task where it is allowed.
 * @param stations tasks of each station along the line
 */
export const balanceFaults = (
  { times, before, allowed }: BalanceProblem,
  takt: number,
  stations: readonly (readonly number[])[],
): BalanceFault[] => {
  const faults: BalanceFault[] = [];
  const at = new Map<number, number>();
  stations.forEach((tasks, station) => {
    let time = 0;
    for (const task of tasks) {
      if (at.has(task)) faults.push({ kind: "twice", task });
      at.set(task, station);
      if (times[task] === undefined) faults.push({ kind: "unknown", task, station });
      time += times[task] ?? 0;
      const where = allowed?.[task] ?? null;
      if (where !== null && !where.includes(station)) faults.push({ kind: "not-allowed", task, station });
    }
    if (time > takt * (1 + ROUNDING)) faults.push({ kind: "takt", station, time });
  });
  times.forEach((_, task) => {
    if (!at.has(task)) faults.push({ kind: "missing", task });
  });
  for (const [task, later] of before) {
    if ((at.get(task) ?? 0) > (at.get(later) ?? Number.POSITIVE_INFINITY)) {
      faults.push({ kind: "order", task, later });
    }
  }
  return faults;
};
