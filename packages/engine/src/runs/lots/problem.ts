/** Price of a pack from a number of packs on, in whole units of money. */
export interface PackBreak {
  readonly from: number;
  readonly price: number;
}

/**
 * What has to be there when, in packs and whole units of money. Prices and the cost of an order are the same in every
 * period.
 */
export interface PackProblem {
  /** Packs that have to be opened in each period; nothing is there before. */
  readonly demand: readonly number[];
  readonly orderCost: number;
  /** Cost of a pack from each period to the next; after the last one it is of what nobody needs. */
  readonly holdingCost: readonly number[];
  /** Rising quantities with prices that do not rise; the first is the least order. */
  readonly breaks: readonly PackBreak[];
}

/** Orders with their cost, and what no other orders can beat. */
export interface PackPlan {
  /** Ordered in each period. */
  readonly orders: readonly number[];
  /** Orders, packs and holding. */
  readonly cost: number;
  readonly lowerBound: number;
}

/** What orders cost; infinite when they do not meet the demand or are less than the least order. */
export function costOfOrders(problem: PackProblem, orders: readonly number[]): number {
  let left = 0;
  let cost = 0;
  for (const [t, demand] of problem.demand.entries()) {
    const order = orders[t] ?? 0;
    if (order > 0) {
      const price = problem.breaks.findLast(({ from }) => order >= from)?.price;
      if (price === undefined) return Number.POSITIVE_INFINITY;
      cost += problem.orderCost + order * price;
    }
    left += order - demand;
    if (left < 0) return Number.POSITIVE_INFINITY;
    cost += left * (problem.holdingCost[t] ?? 0);
  }
  return cost;
}
