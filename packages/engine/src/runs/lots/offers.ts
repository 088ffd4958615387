import type { Shop } from "@pinwright/book";
import { type Decimal, decimal } from "@pinwright/kernel";
import type { PartSource } from "../../model/index.ts";
import { type PriceBook, type PriceBreak, type Tool, type Way, workCost } from "../../parts/index.ts";

/** One way of getting lots of a part: from a supplier in packs of one size, or made here. */
export interface LotOffer {
  /** Null: made here. */
  readonly supplierId: string | null;
  /** ISO 4217; that of the prices. */
  readonly currency: string;
  /** Null: the shop has no rate; prices then count as if they were in its own currency. */
  readonly rate: Decimal | null;
  readonly pack: Decimal;
  /** By quantity, each price of one unit in the currency. */
  readonly breaks: readonly { readonly from: Decimal; readonly price: Decimal }[];
  /** What one costs beside its price, in the shop's own currency: material of our own, work. */
  readonly unitCost: Decimal;
  /** Set-up of each lot, in the shop's own currency. */
  readonly setupCost: Decimal;
  /** Placing and receiving an order, in the shop's own currency; other parts may be in it. */
  readonly orderCost: Decimal;
  readonly leadDays: number;
  readonly tool: Tool | null;
  readonly way: Way;
}

const ONE = decimal(1);

/** The way that a source speaks of. */
function wayOf(prices: PriceBook, partId: string, source: PartSource | null): Way | undefined {
  const ways = prices.waysOf(partId);
  return source === null
    ? ways[0]
    : (ways.find((way) => way.wayId === source.wayId && way.kind === source.kind) ?? ways[0]);
}

/** All that lots of a part can be had from, by supplier in code-point order; none: nobody says how it comes. */
export function lotOffers(
  prices: PriceBook,
  shop: Shop,
  partId: string,
  source: PartSource | null,
): readonly LotOffer[] {
  const way = wayOf(prices, partId, source);
  if (way === undefined) return [];
  const setup = way.setupCost + workCost(prices, way.setupMinutes);
  const unitCost = way.unitCost + workCost(prices, way.minutes);
  const base = { unitCost, setupCost: setup, tool: way.tool, way };
  if (way.offers === null) {
    if (way.wayId === null) return [];
    const own = way.supplierId !== null;
    return [
      {
        ...base,
        supplierId: way.supplierId,
        currency: prices.own,
        rate: ONE,
        pack: 0n,
        // What a supplier is paid for outside work stands in the way itself.
        breaks: [{ from: 0n, price: own ? way.unitCost : 0n }],
        unitCost: own ? unitCost - way.unitCost : unitCost,
        orderCost: own ? orderCostOf(shop, way.supplierId) : 0n,
        leadDays: way.leadDays ?? supplierLead(shop, way.supplierId),
      },
    ];
  }
  return way.offers.flatMap((offer) =>
    byPack(offer.breaks).map(
      (breaks): LotOffer => ({
        ...base,
        supplierId: offer.supplierId,
        currency: offer.currency,
        rate: offer.rate,
        pack: breaks[0]?.pack ?? 0n,
        breaks,
        orderCost: orderCostOf(shop, offer.supplierId),
        leadDays: way.leadDays ?? offer.leadDays,
      }),
    ),
  );
}

function orderCostOf({ tables, numbers }: Shop, supplierId: string | null): Decimal {
  const supplier = tables.suppliers.find((row) => row.id === supplierId);
  return decimal(supplier?.order_cost ?? numbers.order_cost);
}

const supplierLead = ({ tables }: Shop, supplierId: string | null): number =>
  tables.suppliers.find((row) => row.id === supplierId)?.lead_days ?? 0;

/** Breaks by the pack that is sold at them: lots are all in packs of one size. */
function byPack(breaks: readonly PriceBreak[]): readonly (readonly PriceBreak[])[] {
  const packs = [...new Set(breaks.map(({ pack }) => pack))];
  return packs.map((pack) => breaks.filter((b) => b.pack === pack));
}
