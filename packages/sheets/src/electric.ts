import { type ElectricRatings, type LineResult, rateElectric } from "@pinwright/engine";

const known = new WeakMap<LineResult, ElectricRatings>();

/** Everything electrical of a machine held against what it is made for; several sheets ask for it. */
export function ratingsOf(line: LineResult): ElectricRatings {
  const own = known.get(line) ?? rateElectric(line.machine, line.harnesses, line.electric);
  known.set(line, own);
  return own;
}
