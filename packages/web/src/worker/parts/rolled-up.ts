import { type Bill, type CostRollUp, ownMinutes, rollUp } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** Costs of one bill by the number of machines, as long as all else that they are made of is the same. */
interface Known {
  readonly basis: readonly unknown[];
  readonly costs: Map<number, CostRollUp>;
}

const known = new WeakMap<Bill, Known>();

/** Numbers of machines that are kept. */
const MOST_KEPT = 12;

/** Everything that costs are made of: whoever shows them looks whether one of these is another. */
export const costBasis = ({ line, book, shop }: Model): readonly unknown[] => [
  line.parts.bill,
  line.machine.shop,
  line.steps,
  line.boards,
  line.panels,
  book.tables.parts,
  book.tables.tooling,
  shop.tables.suppliers,
];

/** What everything in the bill costs when so many machines are made together: material, tools, and the own work. */
export function rolledUp(model: Model, machines: number): CostRollUp {
  const { line } = model;
  const { bill } = line.parts;
  const basis = costBasis(model);
  let own = known.get(bill);
  if (own === undefined || own.costs.size > MOST_KEPT || !basis.every((one, i) => one === own?.basis[i]))
    own = { basis, costs: new Map() };
  known.set(bill, own);
  const cost =
    own.costs.get(machines) ?? rollUp(line.machine, bill, { machines, minutes: ownMinutes(line, machines) });
  own.costs.set(machines, cost);
  return cost;
}
