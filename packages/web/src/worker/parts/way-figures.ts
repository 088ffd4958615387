import { costOfWay, type PriceBook, type Total, type Way } from "@pinwright/engine";
import { type Decimal, decimal, divideDecimal } from "@pinwright/kernel";

/** The ways of a part at the quantity of some machines, in figures. */
export interface WayFigures {
  /** Outlay of one in each way, in the order of the ways. */
  readonly each: readonly Total[];
  /** Whole machines from which on another way costs least; null: none up to a thousand. */
  readonly change: { readonly machines: number; readonly way: number } | null;
}

/** Numbers of machines at which is looked; between two that differ, halving finds the first. */
const LOOKED_AT = [1, 2, 5, 10, 15, 25, 40, 60, 100, 160, 250, 400, 630, 1000];

/** Pieces for so many machines: whole ones, at least one. */
const piecesFor = (inMachine: Decimal, machines: number): Decimal => {
  const exact = inMachine * BigInt(machines);
  const one = decimal(1);
  return exact < one ? one : exact;
};

/**
 * What one costs in each way, and from how many machines on another way is the cheapest than at this number.
 * @param inMachine how many are in one machine
 */
export function wayFigures(
  prices: PriceBook,
  ways: readonly Way[],
  inMachine: Decimal,
  contents: Total | null,
  machines: number,
): WayFigures {
  const outlays = (count: number): readonly Total[] =>
    ways.map((way) => costOfWay(prices, way, piecesFor(inMachine, count), contents).outlay);
  const cheapest = (count: number): number | null => {
    let best: number | null = null;
    const all = outlays(count);
    for (const [i, { value, missing }] of all.entries())
      if (missing.length === 0 && (best === null || value < (all[best]?.value ?? 0n))) best = i;
    return best;
  };
  const now = cheapest(machines);
  const pieces = piecesFor(inMachine, machines);
  return {
    each: outlays(machines).map((total) => ({ ...total, value: divideDecimal(total.value, pieces) })),
    change: now === null || ways.length < 2 ? null : changeAfter(machines, now, cheapest),
  };
}

function changeAfter(
  machines: number,
  now: number,
  cheapest: (machines: number) => number | null,
): WayFigures["change"] {
  let low = machines;
  for (const count of LOOKED_AT) {
    if (count <= machines) continue;
    if (cheapest(count) === now) {
      low = count;
      continue;
    }
    let high = count;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (cheapest(middle) === now) low = middle;
      else high = middle;
    }
    const way = cheapest(high);
    return way === null ? null : { machines: high, way };
  }
  return null;
}
