import { slidingMinimum } from "./sliding-minimum.ts";

/** Price of a unit from a quantity on; it holds for the whole order. */
export interface PriceBreak {
  readonly from: number;
  readonly price: number;
}

/** What has to be there when, and what ordering it costs. Quantities and money are whole numbers. */
export interface LotProblem {
  /** Needed in each period, met from stock and from what is ordered in the period. */
  readonly demand: readonly number[];
  readonly stock: number;
  /** Cost of placing an order, one for each period. */
  readonly orderCost: readonly number[];
  /** Cost of a unit that is left at the end of a period, one for each period; what is left in the end costs too. */
  readonly holdingCost: readonly number[];
  /** Rising quantities; the first is the least order. */
  readonly breaks: readonly PriceBreak[];
  /** Orders are whole packs. */
  readonly pack: number;
}

/** Orders that meet the demand at the least cost. */
export interface LotPlan {
  /** Ordered in each period. */
  readonly orders: readonly number[];
  /** Orders, units and holding. It is the optimum: no plan costs less. */
  readonly cost: number;
}

/** Most levels of stock that are looked at in one period. */
export const MOST_STOCK_LEVELS = 4_000_000;

/**
 * The orders of least total cost for one item whose demand is known, with a cost for each order, prices that fall
 * with the quantity of an order, whole packs and a least order. Exact: a dynamic programme over periods and levels of
 * stock, as H. M. Wagner and T. M. Whitin, "Dynamic version of the economic lot size model", Management Science 5,
 * 1958, without their theorem, which price breaks break. Within one price the best order is a sliding minimum, so
 * that the time grows with periods × levels × prices.
 *
 * No order is placed when what is there lasts to the end, so that no stock above what is still needed and one largest
 * break is of use.
 * @throws RangeError for lengths that differ, numbers that are not whole or below zero, breaks that do not rise, a pack
 * below 1, more than `MOST_STOCK_LEVELS` levels of stock, or money beyond what is exact.
 */
export function bestLots(problem: LotProblem): LotPlan {
  const { demand, breaks, pack } = checked(problem);
  const periods = demand.length;
  const largest = Math.max(pack, breaks.at(-1)?.from ?? 0);
  const after = remaining(demand);
  let left: Levels = { least: leastStock(problem, periods), cost: new Float64Array(0) };
  const choices: Choices[] = [];
  for (let t = periods - 1; t >= 0; t--) {
    const least = leastStock(problem, t);
    const most = Math.max((after[t] ?? 0) + largest + pack, problem.stock);
    const count = Math.floor((most - least) / pack) + 1;
    if (count > MOST_STOCK_LEVELS)
      throw new RangeError(`${count} levels of stock in period ${t}, expected at most ${MOST_STOCK_LEVELS}`);
    const kept = keptCost(problem, t, least, count, left);
    const best = Float64Array.from(kept);
    const packs = new Int32Array(count);
    breaks.forEach(({ from, price }, j) => {
      const first = Math.max(1, Math.ceil(from / pack));
      const next = breaks[j + 1]?.from;
      const last = next === undefined ? count : Math.ceil(next / pack) - 1;
      if (last < first) return;
      // The price of stock at level k counts from level 0, so that one minimum serves every level below.
      const unit = price * pack;
      const minimum = slidingMinimum(kept, first, last, unit);
      for (let k = 0; k < count; k++) {
        const at = minimum[k] ?? -1;
        if (at < 0) continue;
        const cost = (problem.orderCost[t] ?? 0) + unit * (at - k) + (kept[at] ?? 0);
        if (cost < (best[k] ?? 0)) {
          best[k] = cost;
          packs[k] = at - k;
        }
      }
    });
    choices.unshift({ least, packs });
    left = { least, cost: best };
  }
  return planOf(problem, choices, left);
}

/** Least costs from a period on, by level of stock at its start: level k is `least` + k packs. */
interface Levels {
  readonly least: number;
  readonly cost: Float64Array;
}

interface Choices {
  readonly least: number;
  readonly packs: Int32Array;
}

/** Demand of each period and all after it. */
function remaining(demand: readonly number[]): readonly number[] {
  let sum = 0;
  return demand
    .toReversed()
    .map((d) => (sum += d))
    .toReversed();
}

/** The least stock that there can be at the start of a period: what is there differs from it by whole packs. */
function leastStock({ stock, demand, pack }: LotProblem, period: number): number {
  const used = demand.slice(0, period).reduce((sum, d) => sum + d, 0);
  return (((stock - used) % pack) + pack) % pack;
}

/** Cost from a period on when it starts with so much after ordering; infinite when that does not meet its demand. */
function keptCost(
  { demand, holdingCost, pack }: LotProblem,
  t: number,
  least: number,
  count: number,
  left: Levels,
): Float64Array {
  const need = demand[t] ?? 0;
  const hold = holdingCost[t] ?? 0;
  return Float64Array.from({ length: count }, (_, k) => {
    const end = least + k * pack - need;
    if (end < 0) return Number.POSITIVE_INFINITY;
    if (left.cost.length === 0) return hold * end;
    // Beyond the last level nothing more is needed: only holding is left to pay, and that is never the best.
    return hold * end + (left.cost[(end - left.least) / pack] ?? Number.POSITIVE_INFINITY);
  });
}

function planOf(problem: LotProblem, choices: readonly Choices[], first: Levels): LotPlan {
  const { demand, pack } = problem;
  if (demand.length === 0) return { orders: [], cost: 0 };
  let stock = problem.stock;
  const cost = first.cost[(stock - first.least) / pack] ?? Number.POSITIVE_INFINITY;
  if (!Number.isSafeInteger(cost)) throw new RangeError(`cost is ${cost}, beyond what is exact`);
  const orders = choices.map(({ least, packs }, t) => {
    const order = (packs[(stock - least) / pack] ?? 0) * pack;
    stock += order - (demand[t] ?? 0);
    return order;
  });
  return { orders, cost };
}

function checked(problem: LotProblem): LotProblem {
  const { demand, stock, orderCost, holdingCost, breaks, pack } = problem;
  const whole = (name: string, values: readonly number[]): void => {
    for (const value of values)
      if (!Number.isSafeInteger(value) || value < 0)
        throw new RangeError(`${name} has ${value}, expected a whole number, 0 or more`);
  };
  whole("demand", demand);
  whole("stock", [stock]);
  whole("orderCost", orderCost);
  whole("holdingCost", holdingCost);
  whole(
    "breaks",
    breaks.flatMap(({ from, price }) => [from, price]),
  );
  whole("pack", [pack]);
  if (pack < 1) throw new RangeError(`pack is ${pack}, expected 1 or more`);
  if (breaks.length === 0) throw new RangeError("breaks are empty, expected at least one price");
  breaks.forEach(({ from }, i) => {
    const before = breaks[i - 1]?.from ?? -1;
    if (from <= before)
      throw new RangeError(`break at ${from} after one at ${before}, expected a higher one`);
  });
  for (const [name, list] of [
    ["orderCost", orderCost],
    ["holdingCost", holdingCost],
  ] as const)
    if (list.length !== demand.length)
      throw new RangeError(`${name} has ${list.length} periods, expected ${demand.length}`);
  return problem;
}
