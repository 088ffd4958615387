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
  // Least cost from a pack on, and its order; with all packs there, nothing. Held up to a pack, what follows costs `worth`.
  const cost = new Float64Array(most + 1);
  const orderTo = new Int32Array(most + 1);
  const worth = Float64Array.from(heldFor);
  const queue: Queue = { places: new Int32Array(most + 1), values: new Float64Array(most + 1) };
  for (let t = demand.length - 1; t >= 0; t--) {
    const first = starts[t] ?? 0;
    const end = first + (demand[t] ?? 0);
    if (end === first) continue;
    cost.fill(Number.POSITIVE_INFINITY, first, end);
    // A pack that comes in this period is not held in those before.
    const saved = until[t] ?? 0;
    for (const [j, { from, price }] of breaks.entries()) {
      const shortest = Math.max(1, from);
      const next = breaks[j + 1]?.from;
      if (next !== undefined && next <= shortest) continue;
      const reach = { first, end, shortest, unit: price - saved };
      if (next === undefined) openEnded(reach, worth, cost, orderTo);
      else windowed({ ...reach, longest: next - 1 }, worth, cost, orderTo, queue);
    }
    for (let x = first; x < end; x++) {
      cost[x] = (cost[x] ?? 0) + orderCost - (heldFor[x] ?? 0);
      worth[x] = (cost[x] ?? 0) + (heldFor[x] ?? 0);
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

/** Orders at one price in one period: from its packs, no shorter than so many, at so much a pack less what it is not held. */
interface Reach {
  readonly first: number;
  readonly end: number;
  readonly shortest: number;
  readonly unit: number;
}

/** Candidates in rising value, kept between calls so that nothing is made anew. */
interface Queue {
  readonly places: Int32Array;
  readonly values: Float64Array;
}

/**
 * Holds against the best order so far, from each pack x of a period, the best at the lowest price, which no quantity ends.
 * An order that is due covers its period: it reaches its end or beyond, where all is known. `cost` leaves the cost of
 * ordering out until all prices have been tried.
 */
function openEnded(
  { first, end, shortest, unit }: Reach,
  worth: Float64Array,
  cost: Float64Array,
  orderTo: Int32Array,
): void {
  let best = Number.POSITIVE_INFINITY;
  let place = 0;
  let p = worth.length;
  for (let x = end - 1; x >= first; x--) {
    const low = x + shortest > end ? x + shortest : end;
    while (p > low) {
      p--;
      const value = (worth[p] ?? 0) + p * unit;
      if (value <= best) {
        best = value;
        place = p;
      }
    }
    const total = best - x * unit;
    if (total < (cost[x] ?? 0)) {
      cost[x] = total;
      orderTo[x] = place;
    }
  }
}

/** The same at a price that ends at a quantity: the least of a window that moves with x. */
function windowed(
  { first, end, shortest, longest, unit }: Reach & { readonly longest: number },
  worth: Float64Array,
  cost: Float64Array,
  orderTo: Int32Array,
  { places, values }: Queue,
): void {
  let head = 0;
  let tail = 0;
  let p = Math.min(worth.length - 1, end - 1 + longest) + 1;
  for (let x = end - 1; x >= first; x--) {
    const low = x + shortest > end ? x + shortest : end;
    while (p > low) {
      p--;
      const value = (worth[p] ?? 0) + p * unit;
      while (tail > head && (values[tail - 1] ?? 0) >= value) tail--;
      places[tail] = p;
      values[tail] = value;
      tail++;
    }
    while (tail > head && (places[head] ?? 0) > x + longest) head++;
    if (tail === head) continue;
    const total = (values[head] ?? 0) - x * unit;
    if (total < (cost[x] ?? 0)) {
      cost[x] = total;
      orderTo[x] = places[head] ?? 0;
    }
  }
}
