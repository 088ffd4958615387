import type { ShopNumbers } from "@pinwright/book";
import type { Machine, SolderWay, StuffingPlan } from "../../model/index.ts";
import { type Placement, placementsOf } from "../joints.ts";
import { stuffingOrder } from "./order.ts";
import { insertSeconds, partSeconds } from "./seconds.ts";
import { splitRuns } from "./split.ts";
import { stagesOf } from "./stages.ts";

/**
 * In which order the parts of a board type go in, cut into stages and split over benches that stand in line: each does
 * a run of the order and hands the board on. The busiest bench has the fewest seconds that any such split allows; the
 * bound holds for any sharing out of the parts, whatever their order. A type without parts has no stages.
 * @param benches people who stuff it in line; at least 1, at most one for each part
 * @param way how it is soldered: by hand the joints of a part follow it, in the bath only those that go in after the wash
 * @throws RangeError when `benches` is not a whole number from 1 up.
 */
export function stuffingPlan(
  machine: Machine,
  typeId: string,
  benches = 1,
  way: SolderWay = "hand",
): StuffingPlan {
  if (!Number.isInteger(benches) || benches < 1)
    throw new RangeError(`benches is ${benches}, expected a whole number from 1 up`);
  const { numbers } = machine.shop;
  const order = stuffingOrder(placementsOf(machine, typeId));
  const next = order.map((row, i) => partSeconds(numbers, row, order[i - 1], way));
  const first = order.map((row) => partSeconds(numbers, row, undefined, way));
  const split = splitRuns(next, first, benches);
  const turns = order.map((row, i) => {
    const starts = split.starts.filter((start) => start <= i);
    const begins = starts.at(-1) === i;
    return { row, bench: starts.length, seconds: (begins ? first[i] : next[i]) ?? 0 };
  });
  return {
    typeId,
    way,
    order: order.map((row) => row.reference),
    stages: stagesOf(turns),
    benches: split.starts.length,
    busiestSeconds: split.longest,
    busiestBound: leastBusiest(numbers, order, split.starts.length, way),
    boxes: [...new Set(order.map((row) => row.part))],
  };
}

/**
 * What the busiest of so many benches has at least, however the parts are shared out and in whatever order: the mean of
 * all work, in which one part of each kind is looked for and all others follow one like them; or the longest part.
 */
function leastBusiest(
  numbers: ShopNumbers,
  order: readonly Placement[],
  benches: number,
  way: SolderWay,
): number {
  if (order.length === 0) return 0;
  const likes = order.map((row) => partSeconds(numbers, row, row, way));
  const kinds = new Set(order.map((row) => row.part)).size;
  const looks = kinds * (insertSeconds(numbers, false) - insertSeconds(numbers, true));
  const sum = likes.reduce((total, seconds) => total + seconds, looks);
  return Math.max(sum / benches, ...likes);
}
