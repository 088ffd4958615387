import { breakPlan } from "./break-plan.ts";
import { onePricePlan } from "./one-price.ts";
import { costOfOrders, type PackBreak, type PackPlan, type PackProblem } from "./problem.ts";

/** Most steps, packs × periods, that the exact programme takes for one part. */
const MOST_STEPS = 4_000_000;

/**
 * The orders of least cost for one part, with what no other orders can beat. Most are proven by the plan with one price
 * alone; the others by the exact programme over packs. What is too large for it is planned in several packs at a time:
 * then the bound is that of one price, and the two may differ.
 * @param mostSteps limit of the exact programme
 */
export function packLots(asked: PackProblem, mostSteps = MOST_STEPS): PackPlan {
  const problem = { ...asked, breaks: usefulBreaks(asked) };
  const one = onePricePlan(problem);
  if (one.cost <= one.lowerBound) return one;
  const packs = asked.demand.reduce((sum, d) => sum + d, 0) + (problem.breaks.at(-1)?.from ?? 0);
  const steps = packs * asked.demand.length;
  if (steps <= mostSteps) return breakPlan(problem);
  const coarse = coarsePlan(problem, Math.ceil(steps / mostSteps));
  return { ...(coarse.cost < one.cost ? coarse : one), lowerBound: one.lowerBound };
}

/** Breaks without those that cost more than buying all that is ever needed in another way. */
function usefulBreaks({ demand, breaks }: PackProblem): readonly PackBreak[] {
  const all = demand.reduce((sum, d) => sum + d, 0);
  const useful: PackBreak[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (const [j, { from, price }] of breaks.entries()) {
    if (from > all && price * from >= least) continue;
    useful.push({ from, price });
    const quantity = Math.max(all, from);
    const next = breaks[j + 1]?.from ?? Number.POSITIVE_INFINITY;
    if (quantity < next) least = Math.min(least, price * quantity);
  }
  return useful;
}

/** Orders in so many packs at a time: what each period needs is rounded up early, and each break with it. */
function coarsePlan(problem: PackProblem, size: number): PackPlan {
  let sum = 0;
  let given = 0;
  const demand = problem.demand.map((d) => {
    sum += d;
    const upTo = Math.ceil(sum / size);
    const own = upTo - given;
    given = upTo;
    return own;
  });
  const breaks = new Map(problem.breaks.map((b) => [Math.ceil(b.from / size), b.price * size]));
  const plan = breakPlan({
    demand,
    orderCost: problem.orderCost,
    holdingCost: problem.holdingCost.map((h) => h * size),
    breaks: [...breaks].map(([from, price]) => ({ from, price })),
  });
  const orders = plan.orders.map((order) => order * size);
  return { orders, cost: costOfOrders(problem, orders), lowerBound: 0 };
}
