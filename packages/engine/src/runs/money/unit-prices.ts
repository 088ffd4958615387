import { type Decimal, divideDecimal, timesDecimal } from "@pinwright/kernel";
import type { Missing } from "../../model/index.ts";
import { sourceOf, workCost } from "../../parts/index.ts";
import type { PlannedLots, Sourcing } from "../buy/sourcing.ts";
import type { Use } from "../needs/demand.ts";

/** What one of something costs, in the shop's own currency. */
interface UnitPrice {
  readonly price: Decimal;
  readonly missing: readonly Missing[];
  readonly supplierId: string | null;
  readonly kind: "make" | "have-made" | "buy";
}

/** The price of what is used. */
export type UnitPrices = (use: Use) => UnitPrice;

/**
 * What one of everything costs in each run: the mean of its lots, set-up included; where all of it is there already,
 * what so much of it would cost today. What is made here of its contents costs what its way says beside them.
 */
export function unitPrices(
  lots: readonly PlannedLots[],
  sourcing: Sourcing,
  uses: readonly Use[],
): UnitPrices {
  const prices = new Map<string, UnitPrice>();
  for (const own of lots) prices.set(`${own.demand.key}\n${own.frozenRunId ?? ""}`, meanPrice(own));
  const used = new Map<string, Decimal>();
  for (const use of uses) used.set(use.key, (used.get(use.key) ?? 0n) + use.build + use.scrap);
  return (use) => {
    const frozen = sourcing.frozenFor(use.runId, use.partId);
    const name = `${use.key}\n${frozen ?? ""}`;
    const known = prices.get(name);
    if (known !== undefined) return known;
    const quantity = used.get(use.key) ?? 0n;
    const price = use.isMade
      ? madePrice(sourcing, use, quantity)
      : priceToday(sourcing, use, frozen, quantity);
    prices.set(name, price);
    return price;
  };
}

function madePrice(sourcing: Sourcing, { partId, source }: Use, quantity: Decimal): UnitPrice {
  const made: UnitPrice = { price: 0n, missing: [], supplierId: null, kind: "make" };
  const way = sourcing.prices
    .waysOf(partId)
    .find(({ wayId, kind }) => kind === "make" && wayId === source?.wayId);
  if (way === undefined || quantity === 0n) return made;
  const each = way.unitCost + workCost(sourcing.prices, way.minutes);
  const setup = way.setupCost + workCost(sourcing.prices, way.setupMinutes);
  return { ...made, price: each + divideDecimal(setup, quantity) };
}

function meanPrice({ demand: { partId, source }, found }: PlannedLots): UnitPrice {
  const kind = source?.kind ?? "buy";
  if (found === null) {
    const lack = kind === "make" ? "no-source" : "no-price";
    return { price: 0n, missing: [{ lack, id: partId }], supplierId: null, kind };
  }
  const { offer, lots } = found;
  let quantity = 0n;
  let amount = 0n;
  for (const lot of lots.orders) {
    quantity += lot.quantity;
    amount += timesDecimal(timesDecimal(lot.quantity, lot.price ?? 0n), offer.rate ?? 0n);
    amount += timesDecimal(lot.quantity, offer.unitCost) + offer.setupCost;
  }
  const missing: Missing[] = offer.rate === null ? [{ lack: "no-rate", id: offer.supplierId ?? partId }] : [];
  return {
    price: quantity === 0n ? 0n : divideDecimal(amount, quantity),
    missing,
    supplierId: lots.supplierId,
    kind: offer.way.kind,
  };
}

function priceToday(
  sourcing: Sourcing,
  { partId, source }: Use,
  frozenRunId: string | null,
  quantity: Decimal,
): UnitPrice {
  const kind = source?.kind ?? "buy";
  const found = sourceOf(sourcing.pricesOf(frozenRunId), partId, quantity);
  if (found === null || quantity === 0n)
    return {
      price: 0n,
      missing: found === null ? [{ lack: "no-source", id: partId }] : [],
      supplierId: null,
      kind,
    };
  const { units, lot } = found.cost;
  return {
    price: divideDecimal(units.value + lot.value, quantity),
    missing: units.missing,
    supplierId: found.source.supplierId,
    kind: found.source.kind,
  };
}
