import type { WorkStep } from "../../model/index.ts";
import { isBenchWork } from "./allowed.ts";
import { type Balancing, boundOf, free, type Half, loadsOf, type Parts } from "./half.ts";
import { plainPlaces } from "./places.ts";
import { shareOf } from "./share.ts";

/** Benches and line, each shared out to its own places. */
type Division = readonly [bench: Half, line: Half];

const NOTHING = { unplaced: [], waysBack: [] };

/** Least takt at so many places that can do everything, divided between benches and line. */
export function onPlaces(
  steps: readonly WorkStep[],
  places: number,
  factor: number,
  balancing: Balancing,
): Parts {
  if (places < 1) throw new RangeError(`${places} places, expected 1 or more`);
  const bench = shareOf(steps, free(steps.filter(isBenchWork)));
  const line = shareOf(steps, free(steps.filter((step) => !isBenchWork(step))));
  if (places === 1 || bench.steps.length === 0 || line.steps.length === 0) {
    const half = balancing.leastTakt(shareOf(steps, free(steps)), places, factor);
    const benches = line.steps.length === 0 ? places : 0;
    const loads = loadsOf(half, plainPlaces(benches, places - benches));
    return { loads, ...boundOf(half.value, half.lowerBound), ...NOTHING };
  }
  const { benches, halves, lowerBound } = divide(places, (benches) => [
    balancing.leastTakt(bench, benches, factor),
    balancing.leastTakt(line, places - benches, factor),
  ]);
  const all = plainPlaces(benches, places - benches);
  return {
    loads: [...loadsOf(halves[0], all.slice(0, benches)), ...loadsOf(halves[1], all.slice(benches))],
    ...boundOf(taktOf(halves), lowerBound),
    ...NOTHING,
  };
}

const taktOf = ([bench, line]: Division): number => Math.max(bench.value, line.value);

/**
 * The division in which neither waits for the other. With one bench more the benches' takt falls and the line's rises,
 * so the best division is beside the one where they cross: with fewer benches no takt is below that of the benches
 * just before it, with as many or more none is below that of the line at it.
 */
function divide(
  places: number,
  at: (benches: number) => Division,
): { readonly benches: number; readonly halves: Division; readonly lowerBound: number } {
  let low = 1;
  let high = places - 1;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    const [one, two] = at(middle);
    if (one.value <= two.value) high = middle;
    else low = middle + 1;
  }
  const crossing = at(low);
  const [one, two] = crossing;
  // With all but one place for benches there is nothing beyond, and the benches' own takt counts too.
  const beyond = low === places - 1 ? Math.max(one.lowerBound, two.lowerBound) : two.lowerBound;
  if (low === 1) return { benches: low, halves: crossing, lowerBound: beyond };
  const fewer = at(low - 1);
  const lowerBound = Math.min(beyond, fewer[0].lowerBound);
  const isBetter = taktOf(fewer) < taktOf(crossing);
  return { benches: isBetter ? low - 1 : low, halves: isBetter ? fewer : crossing, lowerBound };
}
