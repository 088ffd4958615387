import { addTotals, type Bill, type CostRollUp, type Total } from "@pinwright/engine";
import { timesDecimal } from "@pinwright/kernel";

/** What is in one of a node, for whoever makes it; null: the bill tells of no contents. */
export function contentsOf(bill: Bill, { nodes }: CostRollUp, nodeId: string): Total | null {
  const inside = bill.lines.filter(({ parentId }) => parentId === nodeId);
  if (inside.length === 0) return null;
  return addTotals(
    inside.flatMap(({ childId, quantity }) => {
      const each = nodes.get(childId)?.each;
      return each === undefined ? [] : [{ ...each, value: timesDecimal(quantity, each.value) }];
    }),
  );
}
