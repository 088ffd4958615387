import { ceilToDecimal, type Decimal, timesDecimal } from "@pinwright/kernel";

/** A price from a quantity on. */
export interface PriceBreak {
  readonly from: Decimal;
  /** Of one unit, in the supplier's currency. */
  readonly price: Decimal;
  /** Sold in packs of. */
  readonly pack: Decimal;
}

/** One supplier's prices of one part. */
export interface Offer {
  readonly partId: string;
  readonly supplierId: string;
  readonly currency: string;
  /** What one of the currency is worth in the shop's own; null: the shop has no rate for it. */
  readonly rate: Decimal | null;
  readonly leadDays: number;
  readonly orderNumber: string;
  /** By quantity; each above zero in price and pack. */
  readonly breaks: readonly PriceBreak[];
}

/** So much of a part from one supplier. */
export interface Purchase {
  readonly partId: string;
  readonly supplierId: string;
  readonly currency: string;
  /** What is wanted. */
  readonly needed: Decimal;
  /** What is ordered: whole packs, and no less than the supplier sells. */
  readonly ordered: Decimal;
  readonly pack: Decimal;
  readonly packs: number;
  /** Quantity from which the price holds. */
  readonly from: Decimal;
  /** Of one unit, in the supplier's currency. */
  readonly price: Decimal;
  /** Of all that is ordered, in the supplier's currency. */
  readonly amount: Decimal;
  /** The same in the shop's own currency; null: no rate. */
  readonly ownAmount: Decimal | null;
  readonly leadDays: number;
}

/**
 * The least outlay that gets so much of a part from one supplier: whole packs at the price that holds for what is
 * ordered (all units at one price), up to the next break when the larger quantity costs less. Null when nothing is
 * sold, or nothing is wanted.
 */
export function buyAt(offer: Offer, needed: Decimal): Purchase | null {
  if (needed <= 0n) return null;
  let best: Purchase | null = null;
  for (const [i, at] of offer.breaks.entries()) {
    const ordered = ceilToDecimal(needed > at.from ? needed : at.from, at.pack);
    const next = offer.breaks[i + 1];
    // Beyond the next break its price holds, which is tried by itself.
    if (next !== undefined && ordered >= next.from) continue;
    const amount = timesDecimal(ordered, at.price);
    if (best !== null && amount >= best.amount) continue;
    best = purchase(offer, at, needed, ordered, amount);
  }
  return best;
}

function purchase(
  { partId, supplierId, currency, rate, leadDays }: Offer,
  { from, price, pack }: PriceBreak,
  needed: Decimal,
  ordered: Decimal,
  amount: Decimal,
): Purchase {
  return {
    partId,
    supplierId,
    currency,
    needed,
    ordered,
    pack,
    packs: Number(ordered / pack),
    from,
    price,
    amount,
    ownAmount: rate === null ? null : timesDecimal(amount, rate),
    leadDays,
  };
}
