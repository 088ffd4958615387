import { type Decimal, timesDecimal } from "@pinwright/kernel";
import type { Bill, BillLine, PartSource } from "../../model/index.ts";

/** Lines of a bill by what contains them. */
export function linesByParent(bill: Pick<Bill, "lines">): ReadonlyMap<string, readonly BillLine[]> {
  const byParent = new Map<string, BillLine[]>();
  for (const line of bill.lines) {
    const own = byParent.get(line.parentId);
    if (own === undefined) byParent.set(line.parentId, [line]);
    else own.push(line);
  }
  return byParent;
}

/** What is bought or had made comes whole; whatever else is made takes what it contains. */
export const takesContents = (source: Pick<PartSource, "kind"> | undefined): boolean =>
  source === undefined || source.kind === "make";

/**
 * Gross quantities of everything that so much of some nodes takes, themselves included, through all levels. What is in
 * a circle counts as nothing. The explosion of bills as in material requirements planning (Orlicky 1975).
 * @param sources how nodes are got, by node; those that are not named are made
 * @param wanted how much of what, by node: `machine`, or spare parts as well
 */
export function explode(
  bill: Pick<Bill, "lines" | "order">,
  sources: ReadonlyMap<string, Pick<PartSource, "kind">>,
  wanted: ReadonlyMap<string, Decimal>,
): ReadonlyMap<string, Decimal> {
  const byParent = linesByParent(bill);
  const ranked = new Set(bill.order);
  const gross = new Map<string, Decimal>(wanted);
  for (let i = bill.order.length - 1; i >= 0; i -= 1) {
    const id = bill.order[i] ?? "";
    const times = gross.get(id);
    if (times === undefined || times === 0n || !takesContents(sources.get(id))) continue;
    for (const { childId, quantity } of byParent.get(id) ?? []) {
      if (!ranked.has(childId)) continue;
      gross.set(childId, (gross.get(childId) ?? 0n) + timesDecimal(times, quantity));
    }
  }
  return gross;
}
