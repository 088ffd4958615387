import type { Bill, Machine } from "../../model/index.ts";
import { MACHINE_NODE } from "../bill/nodes.ts";
import { priceBook, type Way } from "../prices/price-book.ts";
import { needsParts } from "./needed.ts";

/** A bought part that only one supplier sells. */
export interface SingleSource {
  readonly partId: string;
  readonly supplierId: string;
}

/** A part that takes long to get, however it is got. */
export interface LongLead {
  readonly partId: string;
  /** The least of its ways, its tool's included. */
  readonly leadDays: number;
}

/** Parts of a machine that are called out, each list in code-point order. */
export interface CallOuts {
  readonly singleSource: readonly SingleSource[];
  readonly longLead: readonly LongLead[];
}

/**
 * Parts that depend on one supplier or take longer than the shop's limit. What is made to the shop's own drawing can go
 * elsewhere and is not called out for its supplier.
 * @param needed nodes that somebody has to get; absent: found from the bill
 */
export function callOuts(
  machine: Pick<Machine, "book" | "shop">,
  bill: Bill,
  needed?: ReadonlySet<string>,
): CallOuts {
  const prices = priceBook(machine);
  const singleSource: SingleSource[] = [];
  const longLead: LongLead[] = [];
  for (const id of needed ?? needsParts(bill, prices)) {
    const partId = bill.nodes.get(id)?.partId ?? null;
    if (partId === null || id === MACHINE_NODE) continue;
    const ways = prices.waysOf(partId);
    const supplierId = onlySupplier(ways);
    if (supplierId !== null) singleSource.push({ partId, supplierId });
    const leadDays = ways.length === 0 ? 0 : Math.min(...ways.map(leadOf));
    if (leadDays > machine.shop.numbers.long_lead_days) longLead.push({ partId, leadDays });
  }
  return { singleSource, longLead };
}

function onlySupplier(ways: readonly Way[]): string | null {
  if (ways.some(({ kind }) => kind !== "buy")) return null;
  const suppliers = new Set(
    ways.flatMap(({ offers, supplierId }) => [
      ...(offers ?? []).map((offer) => offer.supplierId),
      ...(supplierId === null ? [] : [supplierId]),
    ]),
  );
  return suppliers.size === 1 ? ([...suppliers][0] ?? null) : null;
}

/** Days until a part is there in one way: those of the way, else of its quickest supplier, and those of its tool. */
export function leadOf({ leadDays, offers, tool }: Way): number {
  const quickest = (offers ?? []).map((offer) => offer.leadDays);
  const own = leadDays ?? (quickest.length > 0 ? Math.min(...quickest) : 0);
  return own + (tool?.leadDays ?? 0);
}
