import type { PackPlan, PackProblem } from "./problem.ts";

/**
 * The orders of least cost, exactly, where prices fall with the quantity of an order. Since prices and costs are the
 * same in every period and do not rise with quantity, no order comes before it is needed: two that fall together cost
 * no more than apart, and each that waits is held for less. What has been ordered so far therefore says by itself when
 * the next order is due: in the period that needs the next pack. So the programme runs over packs, not over periods and
 * levels of stock; within one price the best order is a sliding minimum.
 *
 * Time grows with packs × (prices + periods).
 */
export function breakPlan(problem: PackProblem): PackPlan {
  const { demand, orderCost, breaks } = problem;
  const { starts, all } = startsOf(demand);
  const most = all + Math.max(1, breaks.at(-1)?.from ?? 0);
  const { until, heldFor } = holding(problem, starts, all, most);
  // Least cost from a pack on, with its order; with all packs there, nothing.
  const cost = new Float64Array(most + 1);
  const orderTo = new Int32Array(most + 1);
  for (let t = demand.length - 1; t >= 0; t--) {
    const first = starts[t] ?? 0;
    const end = first + (demand[t] ?? 0);
    if (end === first) continue;
    cost.fill(Number.POSITIVE_INFINITY, first, end);
    // A pack that comes in this period is not held in those before.
    const saved = until[t] ?? 0;
    const worth = (x: number): number => (cost[x] ?? 0) + (heldFor[x] ?? 0);
    for (const [j, { from, price }] of breaks.entries()) {
      const shortest = Math.max(1, from);
      const next = breaks[j + 1]?.from;
      const longest = next === undefined ? most : next - 1;
      if (longest < shortest) continue;
      const unit = price - saved;
      const window = { first, end, shortest, longest, most };
      slide(
        window,
        (x) => worth(x) + x * unit,
        (x, best, value) => {
          const total = orderCost + value - x * unit - (heldFor[x] ?? 0);
          if (total < (cost[x] ?? 0)) {
            cost[x] = total;
            orderTo[x] = best;
          }
        },
      );
    }
  }
  const orders = demand.map(() => 0);
  let have = 0;
  for (const [t, need] of demand.entries()) {
    const start = starts[t] ?? 0;
    if (need === 0 || have >= start + need) continue;
    const to = orderTo[have] ?? have;
    orders[t] = to - have;
    have = to;
  }
  const least = cost[0] ?? 0;
  return { orders, cost: least, lowerBound: least };
}

/** First pack of each period, and how many there are. */
function startsOf(demand: readonly number[]): { readonly starts: readonly number[]; readonly all: number } {
  let sum = 0;
  const starts = demand.map((d) => {
    const start = sum;
    sum += d;
    return start;
  });
  return { starts, all: sum };
}

/**
 * Cost of holding a pack from the first period until each (`until`), and of all packs up to each one from the first
 * period until they are opened (`heldFor`); what nobody needs is held to the end.
 */
function holding(
  { demand, holdingCost }: PackProblem,
  starts: readonly number[],
  all: number,
  most: number,
): { readonly until: Float64Array; readonly heldFor: Float64Array } {
  const until = new Float64Array(demand.length + 1);
  for (const [t, cost] of holdingCost.entries()) until[t + 1] = (until[t] ?? 0) + cost;
  const heldFor = new Float64Array(most + 1);
  for (const [t, need] of demand.entries())
    for (let i = 0, x = starts[t] ?? 0; i < need; i++, x++)
      heldFor[x + 1] = (heldFor[x] ?? 0) + (until[t] ?? 0);
  const end = until[demand.length] ?? 0;
  for (let x = all; x < most; x++) heldFor[x + 1] = (heldFor[x] ?? 0) + end;
  return { until, heldFor };
}

interface Windows {
  /** Packs of one period: from the first, before the end. */
  readonly first: number;
  readonly end: number;
  /** Fewest and most packs of an order. */
  readonly shortest: number;
  readonly longest: number;
  /** Last place that there is. */
  readonly most: number;
}

/**
 * For each x of a period, from the last to the first, the place p of least value that an order from x can reach, given
 * to `found`. An order that is due covers its period: p lies at or beyond its end, where all values are known.
 */
function slide(
  { first, end, shortest, longest, most }: Windows,
  value: (p: number) => number,
  found: (x: number, p: number, value: number) => void,
): void {
  const size = Math.max(0, Math.min(most, end - 1 + longest) - end + 1);
  const places = new Int32Array(size);
  const values = new Float64Array(size);
  let head = 0;
  let tail = 0;
  let lowest = Math.min(most, end - 1 + longest) + 1;
  for (let x = end - 1; x >= first; x--) {
    for (const low = Math.max(end, x + shortest); lowest > low; ) {
      lowest--;
      const v = value(lowest);
      while (tail > head && (values[tail - 1] ?? 0) >= v) tail--;
      places[tail] = lowest;
      values[tail] = v;
      tail++;
    }
    while (tail > head && (places[head] ?? 0) > x + longest) head++;
    if (tail > head) found(x, places[head] ?? 0, values[head] ?? 0);
  }
}
