import {
  type ElectricRatings,
  type ElectricSolution,
  type HarnessResult,
  type LineResult,
  rateElectric,
} from "@pinwright/engine";
import { sameMembers } from "@pinwright/kernel";

/** What the line says of currents and volts, and how near each is to what it is made for. */
export interface Electric {
  readonly solution: ElectricSolution;
  readonly ratings: ElectricRatings;
}

const known = new WeakMap<
  ElectricSolution,
  { readonly harnesses: readonly HarnessResult[]; readonly electric: Electric }
>();

/**
 * The electrical results of a line. Ratings are worked out when a view first asks for them, so that none that is not
 * open costs anything.
 */
export function electricOf(line: LineResult): Electric {
  const { electric: solution, machine } = line;
  const harnesses = [...line.harnesses.values()];
  const before = known.get(solution);
  if (before !== undefined && sameMembers(before.harnesses, harnesses)) return before.electric;
  const electric = { solution, ratings: rateElectric(machine, line.harnesses, solution) };
  known.set(solution, { harnesses, electric });
  return electric;
}
