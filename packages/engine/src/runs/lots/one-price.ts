import { costOfOrders, type PackPlan, type PackProblem } from "./problem.ts";

/**
 * Orders as if every pack had the lowest price and no order were too small. Each then lasts for whole periods (H. M.
 * Wagner and T. M. Whitin, "Dynamic version of the economic lot size model", Management Science 5, 1958), and what it
 * costs no orders at real prices can beat. The orders themselves are often good: where each is large enough for the
 * lowest price they are the best there are. An order that is too small is filled up.
 */
export function onePricePlan(problem: PackProblem): PackPlan {
  const { demand, orderCost, holdingCost, breaks } = problem;
  const price = breaks.reduce((least, b) => Math.min(least, b.price), Number.POSITIVE_INFINITY);
  const periods = demand.length;
  const cost = new Float64Array(periods + 1);
  const until = new Int32Array(periods);
  for (let t = periods - 1; t >= 0; t--) {
    cost[t] = (demand[t] ?? 0) === 0 ? (cost[t + 1] ?? 0) : Number.POSITIVE_INFINITY;
    until[t] = t;
    if ((demand[t] ?? 0) === 0) continue;
    // Holding of one pack from period t on, and of all that an order covers.
    let each = 0;
    let held = 0;
    let units = 0;
    for (let last = t; last < periods; last++) {
      units += demand[last] ?? 0;
      held += (demand[last] ?? 0) * each;
      each += holdingCost[last] ?? 0;
      const all = orderCost + units * price + held + (cost[last + 1] ?? 0);
      if (all < (cost[t] ?? 0)) {
        cost[t] = all;
        until[t] = last + 1;
      }
      if (held > orderCost + units * price) break;
    }
  }
  const orders = filledUp(problem, until);
  return { orders, cost: costOfOrders(problem, orders), lowerBound: cost[0] ?? 0 };
}

/** Orders that last until the periods that were found, none below the least order. */
function filledUp({ demand, breaks }: PackProblem, until: Int32Array): readonly number[] {
  const least = breaks[0]?.from ?? 0;
  const orders = demand.map(() => 0);
  let left = 0;
  for (let t = 0; t < demand.length; t++) {
    const need = demand[t] ?? 0;
    if (left < need) {
      const last = Math.max(t + 1, until[t] ?? t + 1);
      const wanted = demand.slice(t, last).reduce((sum, d) => sum + d, 0) - left;
      const order = Math.max(wanted, least);
      orders[t] = order;
      left += order;
    }
    left -= need;
  }
  return orders;
}
