import type { Shop } from "@pinwright/book";
import { type Bill, type CostRollUp, rollUp } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** Costs of one bill by the number of machines, as long as the shop is the same. */
interface Known {
  readonly shop: Shop;
  readonly parts: unknown;
  readonly costs: Map<number, CostRollUp>;
}

const known = new WeakMap<Bill, Known>();

/** Numbers of machines that are kept. */
const MOST_KEPT = 12;

/** What everything in the bill costs when so many machines are made together. */
export function rolledUp({ line, book }: Model, machines: number): CostRollUp {
  const { bill } = line.parts;
  const { shop } = line.machine;
  const { parts } = book.tables;
  let own = known.get(bill);
  if (own === undefined || own.shop !== shop || own.parts !== parts || own.costs.size > MOST_KEPT)
    own = { shop, parts, costs: new Map() };
  known.set(bill, own);
  const cost = own.costs.get(machines) ?? rollUp(line.machine, bill, { machines });
  own.costs.set(machines, cost);
  return cost;
}
