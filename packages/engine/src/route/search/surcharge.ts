import type { RouteMeasure } from "./measure.ts";
import { PENALTY, type RouteProblem } from "./problem.ts";

/**
 * Makes lanes dearer, by wire, where a tree breaks a rule that the plain price of a wire does not see: every wire in
 * an overfull lane, and in a lane that is shared by classes that must be apart those of the class with fewer wires.
 * @param surcharges minutes by `lane × classes + class`; added to
 */
export function raiseSurcharges(
  problem: RouteProblem,
  measure: RouteMeasure,
  surcharges: Map<number, number>,
): void {
  const inLane = new Map<number, Map<number, number>>();
  const square = new Map<number, number>();
  problem.wires.forEach((wire, i) => {
    for (const lane of measure.paths[i] ?? []) {
      const counts = inLane.get(lane) ?? new Map<number, number>();
      counts.set(wire.classIndex, (counts.get(wire.classIndex) ?? 0) + 1);
      inLane.set(lane, counts);
      square.set(lane, (square.get(lane) ?? 0) + wire.squareMm2);
    }
  });
  const raise = (lane: number, classIndex: number, minutes: number): void => {
    const key = lane * problem.classes + classIndex;
    surcharges.set(key, (surcharges.get(key) ?? 0) + minutes);
  };
  for (const [lane, counts] of inLane) {
    const most = problem.lanes[lane]?.maxSquareMm2 ?? 0;
    const wires = [...counts.values()].reduce((sum, n) => sum + n, 0);
    if ((square.get(lane) ?? 0) > most * (1 + 1e-9))
      for (const classIndex of counts.keys()) raise(lane, classIndex, PENALTY.overfullMin / wires);
    for (const [x, y] of problem.apart) {
      const nx = counts.get(x) ?? 0;
      const ny = counts.get(y) ?? 0;
      if (nx > 0 && ny > 0) raise(lane, nx < ny ? x : y, PENALTY.apartMin / Math.min(nx, ny));
    }
  }
}
