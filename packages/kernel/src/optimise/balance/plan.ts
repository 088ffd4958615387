import type { Line } from "./line.ts";

/** Stations of a plan: one more than the last that is used. */
export const lengthOf = (stationOf: Int32Array): number => 1 + stationOf.reduce((a, b) => Math.max(a, b), -1);

/** Time of the station with the most work. */
export const heaviest = (line: Line, stationOf: Int32Array): number => {
  const loads = new Float64Array(lengthOf(stationOf));
  stationOf.forEach((s, i) => {
    loads[s] = (loads[s] ?? 0) + (line.time[i] ?? 0);
  });
  return loads.reduce((a, b) => Math.max(a, b), 0);
};
