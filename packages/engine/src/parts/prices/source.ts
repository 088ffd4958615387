import { type Decimal, decimal, divideDecimal, timesDecimal } from "@pinwright/kernel";
import type { Missing, PartSource, Total } from "../../model/index.ts";
import { buyAt, type Offer, type Purchase } from "./offer.ts";
import type { PriceBook, Way } from "./price-book.ts";
import { addTotals, lacking, total } from "./totals.ts";

/** What so much of a part costs in one way, in the shop's own currency. */
export interface WayCost {
  readonly way: Way;
  readonly purchase: Purchase | null;
  /** All units: prices at the quantity, unit cost, own work, contents. */
  readonly units: Total;
  /** Set-up of the lot. */
  readonly lot: Total;
  /** Tools that this quantity wears out or begins. */
  readonly tooling: Total;
  /** What is bought beyond what is wanted, because of packs and least quantities. */
  readonly leftOver: Decimal;
  /** What must be paid for: units, set-up, tools and what is left over. What decides between ways. */
  readonly outlay: Total;
  /** Units, set-up and tools: the cost of what is used. */
  readonly all: Total;
  /** `all` by the quantity. */
  readonly each: Total;
}

/** How a part is got at a quantity, and what else it could be. */
export interface Sourced {
  readonly source: PartSource;
  readonly cost: WayCost;
  /** Other ways, the cheapest first. */
  readonly others: readonly WayCost[];
}

export interface Priced {
  /** The cheapest; null: no usable price. */
  readonly purchase: Purchase | null;
  /** Of each supplier, the cheapest first; those without a rate last. */
  readonly purchases: readonly Purchase[];
  readonly missing: readonly Missing[];
}

const MINUTES_PER_HOUR = decimal(60);

/** Cost of own work. */
export const workCost = (prices: PriceBook, minutes: Decimal): Decimal =>
  divideDecimal(timesDecimal(minutes, prices.labourRate), MINUTES_PER_HOUR);

/** The least outlay at which some supplier gives so much of a part; equal ones by supplier in code-point order. */
export function priceOf(prices: PriceBook, partId: string, quantity: Decimal): Priced {
  return cheapest(prices, partId, prices.offersOf(partId), quantity);
}

function cheapest(prices: PriceBook, partId: string, offers: readonly Offer[], quantity: Decimal): Priced {
  const purchases = offers.flatMap((offer) => buyAt(offer, quantity) ?? []).sort(byOutlay);
  const [purchase] = purchases;
  if (purchase === undefined)
    return { purchase: null, purchases, missing: quantity > 0n ? [lackOf(prices, partId)] : [] };
  if (purchase.ownAmount === null)
    return { purchase: null, purchases, missing: [{ lack: "no-rate", id: purchase.supplierId }] };
  return { purchase, purchases, missing: [] };
}

const lackOf = (prices: PriceBook, id: string): Missing => ({
  lack: prices.isBad(id) ? "bad-pack" : "no-price",
  id,
});

function byOutlay(a: Purchase, b: Purchase): number {
  if (a.ownAmount === null || b.ownAmount === null)
    return Number(a.ownAmount === null) - Number(b.ownAmount === null);
  return a.ownAmount < b.ownAmount ? -1 : a.ownAmount > b.ownAmount ? 1 : 0;
}

/**
 * What so much of a part costs in one way, in one lot.
 * @param contents cost of what is in one, for what is made; null: the book tells of no contents
 */
export function costOfWay(
  prices: PriceBook,
  way: Way,
  quantity: Decimal,
  contents: Total | null = null,
): WayCost {
  const bought = way.offers === null ? null : cheapest(prices, way.partId, way.offers, quantity);
  const paid = bought === null ? total(0n) : paidFor(bought, quantity);
  const own = timesDecimal(quantity, way.unitCost) + timesDecimal(quantity, workCost(prices, way.minutes));
  const made = way.kind === "make" ? madeOf(way, contents, quantity) : total(0n);
  const units = addTotals([paid, total(own), made]);
  const lot = total(quantity > 0n ? way.setupCost + workCost(prices, way.setupMinutes) : 0n);
  const tooling = toolCost(way, quantity);
  const purchase = bought?.purchase ?? null;
  const leftOver = (purchase?.ownAmount ?? paid.value) - paid.value;
  const all = addTotals([units, lot, tooling]);
  return {
    way,
    purchase,
    units,
    lot,
    tooling,
    leftOver,
    all,
    outlay: addTotals([all, total(leftOver)]),
    each: quantity > 0n ? { ...all, value: divideDecimal(all.value, quantity) } : { ...all, value: 0n },
  };
}

/** What is used of a purchase, at its price; of what must be bought beyond, the shelf bears the cost. */
function paidFor({ purchase, missing }: Priced, quantity: Decimal): Total {
  if (purchase === null || purchase.ownAmount === null) return { value: 0n, missing };
  const used = divideDecimal(timesDecimal(purchase.ownAmount, quantity), purchase.ordered);
  return { value: used, missing };
}

/** What is made and says neither what it contains nor what it costs has no source. */
function madeOf(way: Way, contents: Total | null, quantity: Decimal): Total {
  if (contents !== null) return { ...contents, value: timesDecimal(quantity, contents.value) };
  const told = way.wayId !== null && (way.unitCost > 0n || way.minutes > 0n || way.offers !== null);
  return told ? total(0n) : lacking("no-source", way.partId);
}

/** Whole tools: those that so many parts begin. */
function toolCost({ tool }: Way, quantity: Decimal): Total {
  if (tool === null || quantity <= 0n) return total(0n);
  if (tool.cost === null) return lacking("no-tool-cost", tool.id);
  if (tool.life === null) return total(tool.cost);
  const life = decimal(tool.life);
  const tools = quantity / life + (quantity % life > 0n ? 1n : 0n);
  return total(tool.cost * tools);
}

/**
 * How a part is got at a quantity: the way that somebody chose, else the one with the least outlay; a way whose cost is
 * not known comes after all that are. Ties go to the earlier name in code-point order. Null for a part that the book
 * does not have.
 */
export function sourceOf(
  prices: PriceBook,
  partId: string,
  quantity: Decimal,
  contents: Total | null = null,
): Sourced | null {
  const costs = prices.waysOf(partId).map((way) => costOfWay(prices, way, quantity, contents));
  const [cost, ...others] = costs.sort(byPreference);
  if (cost === undefined) return null;
  const { way, purchase } = cost;
  const supplierId = purchase?.supplierId ?? way.supplierId;
  return { source: { partId, wayId: way.wayId, kind: way.kind, supplierId }, cost, others };
}

const byPreference = (a: WayCost, b: WayCost): number =>
  Number(b.way.chosen) - Number(a.way.chosen) || byCost(a, b);

/** Known costs first, then the lesser outlay; the sort keeps the order of names among equals. */
export function byCost(a: WayCost, b: WayCost): number {
  const lacks = Number(a.outlay.missing.length > 0) - Number(b.outlay.missing.length > 0);
  if (lacks !== 0) return lacks;
  return a.outlay.value < b.outlay.value ? -1 : a.outlay.value > b.outlay.value ? 1 : 0;
}
