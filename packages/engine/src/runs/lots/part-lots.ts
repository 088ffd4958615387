import { type Decimal, decimal, divideDecimal, numberOfDecimal, timesDecimal } from "@pinwright/kernel";
import type { DayNumber, Lot, PartLots, RunShare } from "../../model/index.ts";
import { mondayOf } from "../calendar.ts";
import type { Demand } from "../needs/demand.ts";
import type { LotOffer } from "./offers.ts";
import { packLots } from "./pack-lots.ts";

const YEAR_DAYS = decimal(365);
const HUNDRED = decimal(100);
const ONE = decimal(1);
/** Smallest lot of what is not sold in packs: a piece, or a thousandth of a metre. */
const STEP = decimal("0.001");
/** Money that a plan may reach at most in its smallest units, and the finest unit that it is reckoned in. */
const MOST_MONEY = 2e15;
const FINEST = 1e6;

/** What all lots are planned with. */
export interface LotTerms {
  readonly today: DayNumber;
  readonly holdingPct: number;
  /** Working day on which to order for a day: never before today. */
  readonly orderDay: (due: DayNumber, leadDays: number) => DayNumber;
  /** What one lot costs beside its units: set-up, and its share in an order. */
  readonly lotCost: (offer: LotOffer) => Decimal;
  /** First day on which a lot can be there. */
  readonly arrival: (offer: LotOffer) => DayNumber;
}

/** Lots of one part in one way. */
export interface OfferLots {
  readonly offer: LotOffer;
  readonly lots: PartLots;
  /** Day by day in time: nothing waits for it. */
  readonly isInTime: boolean;
}

/** Needs within one week, met together on its first day. */
interface Period {
  readonly day: DayNumber;
  quantity: Decimal;
}

function periodsOf(demands: readonly Demand[]): readonly Period[] {
  const periods: Period[] = [];
  for (const { day, quantity } of [...demands].sort((a, b) => a.day - b.day)) {
    const before = periods.at(-1);
    if (before !== undefined && mondayOf(before.day) === mondayOf(day)) before.quantity += quantity;
    else periods.push({ day, quantity });
  }
  return periods;
}

/**
 * Lots of one part from one offer over all its needs, at the least cost of ordering, units and holding.
 * @param unit step of what is not sold in packs
 */
export function lotsOf(
  partId: string,
  colour: string,
  unit: "each" | "other",
  demands: readonly Demand[],
  offer: LotOffer,
  terms: LotTerms,
): OfferLots {
  const pack = offer.pack > 0n ? offer.pack : unit === "each" ? ONE : STEP;
  const periods = periodsOf(demands);
  const rate = offer.rate ?? ONE;
  const lotCost = terms.lotCost(offer);
  const ownPrice = (price: Decimal): Decimal => timesDecimal(price, rate) + offer.unitCost;
  const all = periods.reduce((sum, { quantity }) => sum + quantity, 0n);
  const reached = offer.breaks.findLast(({ from }) => from <= all) ?? offer.breaks[0];
  const held = timesDecimal(
    ownPrice(reached?.price ?? 0n),
    divideDecimal(decimal(terms.holdingPct), HUNDRED),
  );
  const daysTo = (p: number): number =>
    (periods[p + 1]?.day ?? periods[p]?.day ?? 0) - (periods[p]?.day ?? 0);
  const holding = (p: number, quantity: Decimal): Decimal =>
    divideDecimal(timesDecimal(quantity, held) * BigInt(daysTo(p)), YEAR_DAYS);

  const scale = scaleFor(numberOfDecimal(all), numberOfDecimal(ownPrice(offer.breaks[0]?.price ?? 0n)));
  const units = (money: Decimal): number => Math.round(numberOfDecimal(money) * scale);
  let prior = Number.POSITIVE_INFINITY;
  const plan = packLots({
    demand: packsOf(periods, pack),
    orderCost: units(lotCost),
    holdingCost: periods.map((_, p) => units(holding(p, pack))),
    // A price that rises with the quantity is nobody's: the part is bought in smaller orders.
    breaks: offer.breaks.map(({ from, price }) => {
      prior = Math.min(prior, units(timesDecimal(ownPrice(price), pack)));
      return { from: packsUp(from, pack), price: prior };
    }),
  });

  const lots: Lot[] = [];
  let cost = 0n;
  let left = 0n;
  const served = servedRuns(demands);
  let ordered = 0n;
  for (const [p, { day, quantity }] of periods.entries()) {
    const count = BigInt(plan.orders[p] ?? 0);
    if (count > 0n) {
      const lot = count * pack;
      const price = (offer.breaks.findLast(({ from }) => from <= lot) ?? offer.breaks[0])?.price ?? 0n;
      const due = Math.max(day, terms.arrival(offer));
      const shares = served(ordered, ordered + lot);
      const runIds = shares.map(({ runId }) => runId);
      lots.push({
        day: due,
        orderDay: terms.orderDay(due, offer.leadDays),
        quantity: lot,
        price,
        runIds,
        shares,
      });
      ordered += lot;
      cost += lotCost + timesDecimal(lot, ownPrice(price));
      left += lot;
    }
    left -= quantity;
    cost += holding(p, left);
  }
  const isProven = plan.cost <= plan.lowerBound;
  const bound = isProven ? cost : decimal(Math.floor(plan.lowerBound) / scale);
  return {
    offer,
    lots: {
      partId,
      colour,
      supplierId: offer.supplierId,
      pack,
      orders: lots,
      cost,
      lowerBound: bound < cost ? bound : cost,
    },
    isInTime: terms.arrival(offer) <= (periods[0]?.day ?? 0),
  };
}

function scaleFor(quantity: number, price: number): number {
  let scale = FINEST;
  while (scale > 1 && quantity * Math.max(price, 1e-6) * 4 * scale > MOST_MONEY) scale /= 10;
  return scale;
}

const packsUp = (quantity: Decimal, pack: Decimal): number =>
  Number(quantity / pack + (quantity % pack > 0n ? 1n : 0n));

/** Packs that have to be opened in each period: what is left of one serves the next. */
function packsOf(periods: readonly Period[], pack: Decimal): readonly number[] {
  let sum = 0n;
  let opened = 0;
  return periods.map(({ quantity }) => {
    sum += quantity;
    const upTo = packsUp(sum, pack);
    const own = upTo - opened;
    opened = upTo;
    return own;
  });
}

/** A function that tells how much of a stretch of all that is ordered each run uses. */
function servedRuns(demands: readonly Demand[]): (from: Decimal, to: Decimal) => readonly RunShare[] {
  const sorted = [...demands].sort((a, b) => a.day - b.day);
  return (from, to) => {
    const shares = new Map<string, Decimal>();
    let sum = 0n;
    for (const { quantity, runId } of sorted) {
      const start = sum > from ? sum : from;
      sum += quantity;
      const own = (sum < to ? sum : to) - start;
      if (own > 0n) shares.set(runId, (shares.get(runId) ?? 0n) + own);
      if (sum >= to) break;
    }
    return [...shares].map(([runId, quantity]) => ({ runId, quantity }));
  };
}

const least = (a: Decimal, b: Decimal): Decimal => (a < b ? a : b);

/**
 * Lots from the offer that is in time and costs least; where none is, from the one that comes first. Their bound is
 * that of all offers that come as early.
 */
export function bestOffer(found: readonly OfferLots[], terms: LotTerms): OfferLots | null {
  const [first] = [...found].sort(
    (a, b) =>
      Number(b.isInTime) - Number(a.isInTime) ||
      (a.isInTime ? 0 : terms.arrival(a.offer) - terms.arrival(b.offer)) ||
      Number(a.offer.rate === null) - Number(b.offer.rate === null) ||
      (a.lots.cost < b.lots.cost ? -1 : a.lots.cost > b.lots.cost ? 1 : 0),
  );
  if (first === undefined) return null;
  const rivals = found.filter(
    (other) =>
      other.isInTime === first.isInTime &&
      (first.isInTime || terms.arrival(other.offer) === terms.arrival(first.offer)),
  );
  const lowerBound = rivals.reduce((bound, other) => least(bound, other.lots.lowerBound), first.lots.cost);
  return { ...first, lots: { ...first.lots, lowerBound } };
}
