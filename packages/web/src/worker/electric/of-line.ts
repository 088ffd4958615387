import type { ElectricRatings, ElectricSolution, LineResult } from "@pinwright/engine";

/** What the line says of currents and volts, and how near each is to what it is made for. */
export interface Electric {
  readonly solution: ElectricSolution;
  readonly ratings: ElectricRatings;
}

const known = new WeakMap<ElectricRatings, Electric>();

/** The electrical results of a line: the same object for as long as neither is another. */
export function electricOf({ electric: solution, ratings }: LineResult): Electric {
  const before = known.get(ratings);
  if (before?.solution === solution) return before;
  const electric = { solution, ratings };
  known.set(ratings, electric);
  return electric;
}
