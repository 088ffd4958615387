import { decimal } from "@pinwright/kernel";
import { type Bill, type Finding, type Lack, type Machine, makeFinding } from "../../model/index.ts";
import { linesByParent } from "../cost/explode.ts";
import type { PriceBook, Way } from "../prices/price-book.ts";
import { sourceOf } from "../prices/source.ts";
import { total } from "../prices/totals.ts";
import { callOuts } from "./call-outs.ts";

/** Which parts have no price or no source, depend on one supplier, or come late. */
export function checkSources(
  machine: Machine,
  bill: Bill,
  prices: PriceBook,
  needed: ReadonlySet<string>,
): readonly Finding[] {
  const byParent = linesByParent(bill);
  const parentsOf = containers(bill);
  const found: Finding[] = [];
  for (const id of needed) {
    const partId = bill.nodes.get(id)?.partId ?? null;
    if (partId === null) continue;
    const ways = prices.waysOf(partId);
    if (!ways.some(({ chosen }) => chosen) && ways.some(isPriced)) continue;
    const contents = (byParent.get(id)?.length ?? 0) > 0 ? total(0n) : null;
    const lacks = sourceOf(prices, partId, decimal(1), contents)?.cost.units.missing ?? [];
    const numbers = { containers: parentsOf.get(id)?.size ?? 0 };
    const lacked = new Set(lacks.map(({ lack }): Lack => lack));
    if (lacked.has("no-price")) found.push(makeFinding("part-no-price", "warning", [partId], numbers));
    if (lacked.has("no-source")) found.push(makeFinding("part-no-source", "warning", [partId], numbers));
  }
  const { singleSource, longLead } = callOuts(machine, bill, needed);
  for (const { partId, supplierId } of singleSource)
    found.push(makeFinding("single-source", "note", [partId, supplierId]));
  for (const { partId, leadDays } of longLead)
    found.push(
      makeFinding("long-lead", "note", [partId], {
        lead_days: leadDays,
        limit_days: machine.shop.numbers.long_lead_days,
      }),
    );
  return found;
}

/** Whether a price with a rate is there, or none is asked for. Then some way's cost is known. */
const isPriced = ({ kind, offers, tool }: Way): boolean =>
  kind !== "make" && tool?.cost !== null && (offers === null || offers.some(({ rate }) => rate !== null));

/** What directly contains each node. */
function containers({ lines }: Bill): ReadonlyMap<string, ReadonlySet<string>> {
  const parents = new Map<string, Set<string>>();
  for (const { parentId, childId } of lines) {
    const own = parents.get(childId) ?? new Set<string>();
    parents.set(childId, own.add(parentId));
  }
  return parents;
}
