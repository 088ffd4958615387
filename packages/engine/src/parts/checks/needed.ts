import type { Bill } from "../../model/index.ts";
import { MACHINE_NODE } from "../bill/nodes.ts";
import { linesByParent } from "../cost/explode.ts";
import type { PriceBook } from "../prices/price-book.ts";

/** Nodes that somebody has to get, in code-point order: all but what comes within what is only bought or had made. */
export function needsParts(bill: Bill, prices: PriceBook): ReadonlySet<string> {
  const byParent = linesByParent(bill);
  const reached = new Set<string>();
  const waiting = [MACHINE_NODE];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (reached.has(id)) continue;
    reached.add(id);
    const partId = bill.nodes.get(id)?.partId ?? null;
    const ways = partId === null ? [] : prices.waysOf(partId);
    if (ways.length > 0 && !ways.some(({ kind }) => kind === "make")) continue;
    for (const { childId } of byParent.get(id) ?? []) waiting.push(childId);
  }
  return new Set([...bill.nodes.keys()].filter((id) => reached.has(id)));
}
