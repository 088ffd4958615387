import { type Decimal, timesDecimal } from "@pinwright/kernel";
import type { DayNumber, RunShare } from "../../model/index.ts";
import { workCost } from "../../parts/index.ts";
import type { PlannedLots, Sourcing } from "../buy/sourcing.ts";
import type { NetDemand } from "../needs/demand.ts";

/** Money that goes out without an order. */
export interface Unordered {
  readonly day: DayNumber;
  /** In the shop's own currency. */
  readonly amount: Decimal;
  /** Runs that it is for. */
  readonly shares: readonly RunShare[];
}

/**
 * What lots cost beside what an order pays: material and work of their way and its set-up, on the day on which each is
 * there.
 */
export function unorderedOf({ found }: PlannedLots): readonly Unordered[] {
  if (found === null) return [];
  const { offer, lots } = found;
  return lots.orders.flatMap(({ day, quantity, shares }) => {
    const amount = timesDecimal(quantity, offer.unitCost) + offer.setupCost;
    return amount === 0n ? [] : [{ day, amount, shares }];
  });
}

/** What making things of their contents costs beside these, by the way of each; set up once. */
export function madeCosts({ prices }: Sourcing, made: readonly NetDemand[]): readonly Unordered[] {
  return made.flatMap(({ partId, source, demands }) => {
    const way = prices
      .waysOf(partId)
      .find(({ wayId, kind }) => kind === "make" && wayId === (source?.wayId ?? null));
    if (way === undefined) return [];
    const each = way.unitCost + workCost(prices, way.minutes);
    const setup = way.setupCost + workCost(prices, way.setupMinutes);
    if (each === 0n && setup === 0n) return [];
    return demands.map(({ day, quantity, runId }, i) => ({
      day,
      amount: timesDecimal(quantity, each) + (i === 0 ? setup : 0n),
      shares: [{ runId, quantity }],
    }));
  });
}
