/** What an order of one size costs in a year. */
export interface YearlyCost {
  readonly quantity: number;
  readonly price: number;
  readonly purchase: number;
  readonly ordering: number;
  readonly holding: number;
  readonly total: number;
}

export interface EconomicQuantity {
  readonly best: YearlyCost;
  /** Every quantity that was weighed, ascending. */
  readonly weighed: readonly YearlyCost[];
}

export interface EconomicQuestion {
  /** Units used in a year. */
  readonly yearly: number;
  /** Cost of one order. */
  readonly orderCost: number;
  /** Cost of holding a unit's worth of stock for a year, as a share of its value in percent. */
  readonly holdingPct: number;
  /** Price of all units from a quantity on, ascending. */
  readonly breaks: readonly { readonly from: number; readonly price: number }[];
  /** Orders are whole packs of this; absent: any quantity. */
  readonly pack?: number;
}

/**
 * Economic order quantity with all-units price breaks: for each price √(2 D S ÷ (i c)) where it lies in its range, else
 * the quantity of the range that is nearest to it (Harris 1913; all-units breaks as in Snyder and Shen, Fundamentals of
 * Supply Chain Theory, 3.4). With packs, the whole packs below and above each. Floating point: a planning figure, not
 * money that is paid. Null when nothing is used or no price is usable.
 */
export function economicQuantity(question: EconomicQuestion): EconomicQuantity | null {
  const { yearly, breaks } = question;
  if (!(yearly > 0) || breaks.length === 0) return null;
  const quantities = new Set<number>();
  for (const [i, { from, price }] of breaks.entries()) {
    const holdingEach = (question.holdingPct / 100) * price;
    if (!(price > 0)) continue;
    const free = holdingEach > 0 ? Math.sqrt((2 * yearly * question.orderCost) / holdingEach) : yearly;
    const below = breaks[i + 1]?.from ?? Number.POSITIVE_INFINITY;
    const wanted = Math.max(from, Math.min(free, below));
    for (const quantity of wholePacks(wanted, question.pack))
      if (quantity > 0 && quantity >= from && quantity < below) quantities.add(quantity);
    // A range that holds no whole pack near the free quantity has its first one.
    if (question.pack !== undefined) {
      const first = Math.max(1, Math.ceil(from / question.pack)) * question.pack;
      if (first < below) quantities.add(first);
    }
  }
  const weighed = [...quantities].sort((a, b) => a - b).map((quantity) => yearlyCost(question, quantity));
  const [first, ...rest] = weighed;
  if (first === undefined) return null;
  return { best: rest.reduce((best, next) => (next.total < best.total ? next : best), first), weighed };
}

function wholePacks(quantity: number, pack: number | undefined): readonly number[] {
  if (pack === undefined) return [quantity];
  return [Math.floor(quantity / pack) * pack, Math.ceil(quantity / pack) * pack];
}

/** What it costs in a year to order always so many. */
export function yearlyCost(
  { yearly, orderCost, holdingPct, breaks }: EconomicQuestion,
  quantity: number,
): YearlyCost {
  const price = breaks.findLast(({ from }) => quantity >= from)?.price ?? breaks[0]?.price ?? 0;
  const purchase = yearly * price;
  const ordering = (yearly / quantity) * orderCost;
  const holding = (quantity / 2) * (holdingPct / 100) * price;
  return { quantity, price, purchase, ordering, holding, total: purchase + ordering + holding };
}
