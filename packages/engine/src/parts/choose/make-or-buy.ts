import { type Decimal, decimal } from "@pinwright/kernel";
import type { Languages, Total } from "../../model/index.ts";
import type { PriceBook, Way } from "../prices/price-book.ts";
import { byCost, costOfWay } from "../prices/source.ts";

/** One way of getting a part, and what it costs at each of the quantities asked about. */
export interface WayCurve {
  readonly wayId: string | null;
  readonly kind: Way["kind"];
  readonly labels: Languages;
  readonly supplierId: string | null;
  readonly toolId: string | null;
  readonly toolCost: Decimal | null;
  readonly toolLife: number | null;
  readonly chosen: boolean;
  /** Outlay for so many: units in whole packs, set-up, tools. In the order of the quantities. */
  readonly costs: readonly Total[];
}

/** From this quantity on another way is the cheapest. */
export interface Change {
  readonly from: number;
  readonly fromWay: number;
  readonly toWay: number;
}

export interface MakeOrBuy {
  readonly partId: string;
  readonly quantities: readonly number[];
  readonly ways: readonly WayCurve[];
  /** Index of the cheapest way at each quantity; null: no way has a known cost. */
  readonly cheapest: readonly (number | null)[];
  /** Whole quantities at which the cheapest way changes, up to the largest quantity; at most 200. */
  readonly changes: readonly Change[];
}

const MOST_CHANGES = 200;
/** Quantities tried one by one; beyond them, steps that find a change and then halve their way to it. */
const MOST_STEPS = 2000;

/**
 * The ways of getting a part against the quantity, each in one lot, and the quantities from which another one is the
 * cheapest. A way of which some cost is not known is never the cheapest.
 * @param quantities whole numbers above zero, ascending
 * @param contents cost of what is in one, for making it
 */
export function makeOrBuy(
  prices: PriceBook,
  partId: string,
  quantities: readonly number[],
  contents: Total | null = null,
): MakeOrBuy {
  const ways = prices.waysOf(partId);
  const curves = ways.map(
    (way): WayCurve => ({
      wayId: way.wayId,
      kind: way.kind,
      labels: way.labels,
      supplierId: way.supplierId,
      toolId: way.tool?.id ?? null,
      toolCost: way.tool?.cost ?? null,
      toolLife: way.tool?.life ?? null,
      chosen: way.chosen,
      costs: quantities.map((quantity) => costOfWay(prices, way, decimal(quantity), contents).outlay),
    }),
  );
  const cheapestAt = (quantity: number): number | null => {
    const costs = ways.map((way) => costOfWay(prices, way, decimal(quantity), contents));
    const [best] = [...costs].sort(byCost);
    return best === undefined || best.outlay.missing.length > 0 ? null : costs.indexOf(best);
  };
  const cheapest = quantities.map(cheapestAt);
  const changes = ways.length < 2 ? [] : changesUpTo(quantities.at(-1) ?? 0, cheapestAt);
  return { partId, quantities, ways: curves, cheapest, changes };
}

function changesUpTo(most: number, cheapestAt: (quantity: number) => number | null): readonly Change[] {
  const changes: Change[] = [];
  const step = Math.max(1, Math.ceil(most / MOST_STEPS));
  let [at, way] = [1, cheapestAt(1)];
  while (at < most && changes.length < MOST_CHANGES) {
    const next = Math.min(most, at + step);
    const nextWay = cheapestAt(next);
    if (nextWay === way) {
      at = next;
      continue;
    }
    const from = firstChange(at, next, way, cheapestAt);
    const toWay = cheapestAt(from);
    if (way !== null && toWay !== null) changes.push({ from, fromWay: way, toWay });
    [at, way] = [from, toWay];
  }
  return changes;
}

/** The least quantity found by halving at which the way is another than at `low`. */
function firstChange(
  low: number,
  high: number,
  way: number | null,
  cheapestAt: (quantity: number) => number | null,
): number {
  let [a, b] = [low, high];
  while (b - a > 1) {
    const middle = Math.floor((a + b) / 2);
    if (cheapestAt(middle) === way) a = middle;
    else b = middle;
  }
  return b;
}
