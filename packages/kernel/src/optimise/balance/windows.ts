import { type Line, mayDo, mirrored } from "./line.ts";
import type { Measure } from "./measure.ts";

/** First and last station, from 0, at which each task can be in any plan with this takt and so many stations. */
export interface Windows {
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** The windows, or `null` when some task fits nowhere: then there is no plan. */
export const windowsOf = (
  line: Line,
  takt: number,
  stations: number,
  measures: readonly Measure[],
): Windows | null => {
  const first = firstStations(line, takt, stations, measures);
  const back = firstStations(mirrored(line, stations), takt, stations, measures);
  if (first === null || back === null) return null;
  const last = back.map((s) => stations - 1 - s);
  return last.every((s, i) => s >= (first[i] ?? 0)) ? { first, last } : null;
};

/**
 * The first station at which each task can be: by the weight of the task with all its predecessors under each measure;
 * by one-machine heads (A. Scholl, R. Klein, INFORMS J. on Computing 9 (1997) 319–334, from memory): a task can start
 * only after its predecessors, each not before its own head, and not in the rest of a station that it does not fit
 * into; by its predecessors' stations; and by the stations that are allowed. `null` when there is no plan: a task
 * comes too late, or the end of the line does (bound LM4 of R. V. Johnson, Management Science 34 (1988) 240–253).
 */
const firstStations = (
  line: Line,
  takt: number,
  stations: number,
  measures: readonly Measure[],
): Int32Array | null => {
  const { n, time, preds, allPreds, order } = line;
  const first = new Int32Array(n);
  /** Least work, in time units, on the line before the task. */
  const head = new Float64Array(n);
  for (const i of order) {
    const all = allPreds[i] ?? new Int32Array(0);
    const t = time[i] ?? 0;
    let station = 0;
    for (const { weight, full } of measures) {
      let sum = weight[i] ?? 0;
      for (const j of all) sum += weight[j] ?? 0;
      station = Math.max(station, Math.ceil(sum / full) - 1);
    }
    for (const j of preds[i] ?? []) station = Math.max(station, first[j] ?? 0);
    let least = headBefore(all, head, time);
    least = Math.max(least, station * takt);
    const rest = takt * Math.ceil(least / takt) - least;
    if (t > rest) least += rest;
    station = Math.max(station, Math.ceil((least + t) / takt) - 1);
    const allowed = nextAllowed(line, i, station);
    if (allowed === null || allowed >= stations) return null;
    first[i] = allowed;
    head[i] = Math.max(least, allowed * takt);
  }
  return headBefore(order, head, time) > stations * takt ? null : first;
};

/** Least work before what follows all these tasks: those with the greatest heads begin after the least of them. */
const headBefore = (all: Int32Array, head: Float64Array, time: Float64Array): number => {
  const sorted = all.toSorted((a, b) => (head[b] ?? 0) - (head[a] ?? 0) || a - b);
  let work = 0;
  let most = 0;
  for (const j of sorted) {
    work += time[j] ?? 0;
    most = Math.max(most, (head[j] ?? 0) + work);
  }
  return most;
};

const nextAllowed = (line: Line, i: number, station: number): number | null => {
  if (mayDo(line, i, station)) return station;
  for (const s of line.allowed[i] ?? []) if (s >= station) return s;
  return null;
};
