import { compareText, type Decimal } from "@pinwright/kernel";
import type { DayNumber } from "../../model/index.ts";

/** So much that is wanted on a day, before what is there is taken off. */
export interface Slice {
  /** Place of what wants it among all that is netted together. */
  readonly want: number;
  readonly key: string;
  readonly day: DayNumber;
  /** Place of the run in the order of their ship days; of two needs on one day the earlier ship goes first. */
  readonly run: number;
  readonly stage: number;
  readonly isSpare: boolean;
  readonly quantity: Decimal;
}

/** The same with where it comes from: the three add up to its quantity. */
export interface NetSlice extends Slice {
  readonly fromStock: Decimal;
  readonly fromOrders: Decimal;
  readonly net: Decimal;
}

/** What is there and what comes of one part. */
export interface Supply {
  readonly stock: Decimal;
  /** In stock for one run alone: what was kitted for it and is built in. By place of the run. */
  readonly issued: ReadonlyMap<number, Decimal>;
  /** By day. */
  readonly receipts: readonly { readonly day: DayNumber; readonly quantity: Decimal }[];
}

/** In the order in which needs are met: by day, then the run that ships first, then the stage. */
const byTurn = (a: Slice, b: Slice): number =>
  a.day - b.day || a.run - b.run || a.stage - b.stage || compareText(a.key, b.key);

const sameTurn = (a: Slice, b: Slice): boolean => a.day === b.day && a.run === b.run && a.stage === b.stage;

/**
 * Nets needs against what is there and what comes in time: net = gross − on hand − scheduled receipts, need by need in
 * the order of the days (Orlicky, Material Requirements Planning, 1975, the netting rule). An order that comes too late
 * for one need is there for the next. What is wanted of several colours at once shares stock in proportion, since stock
 * is counted by part.
 */
export function netSlices(slices: readonly Slice[], supply: Supply): readonly NetSlice[] {
  const sorted = [...slices].sort(byTurn);
  const issued = new Map(supply.issued);
  let stock = supply.stock;
  let ordered = 0n;
  let next = 0;
  const result: NetSlice[] = [];
  for (let i = 0; i < sorted.length; ) {
    const first = sorted[i];
    if (first === undefined) break;
    let end = i + 1;
    for (let other = sorted[end]; other !== undefined && sameTurn(first, other); other = sorted[end]) end++;
    const turn = sorted.slice(i, end);
    i = end;
    for (let r = supply.receipts[next]; r !== undefined && r.day <= first.day; r = supply.receipts[++next])
      ordered += r.quantity;
    const wanted = turn.reduce((sum, slice) => sum + slice.quantity, 0n);
    const own = first.isSpare ? 0n : least(issued.get(first.run) ?? 0n, wanted);
    const fromStock = least(stock, wanted - own);
    const fromOrders = least(ordered, wanted - own - fromStock);
    issued.set(first.run, (issued.get(first.run) ?? 0n) - own);
    stock -= fromStock;
    ordered -= fromOrders;
    const stockShares = shares(turn, own + fromStock);
    const orderShares = shares(
      turn.map((slice, k) => ({ quantity: slice.quantity - (stockShares[k] ?? 0n) })),
      fromOrders,
    );
    for (const [k, slice] of turn.entries()) {
      const taken = stockShares[k] ?? 0n;
      const coming = orderShares[k] ?? 0n;
      result.push({ ...slice, fromStock: taken, fromOrders: coming, net: slice.quantity - taken - coming });
    }
  }
  return result;
}

const least = (a: Decimal, b: Decimal): Decimal => (a < b ? a : b);

/** Parts of an amount in proportion to quantities that are no less in all; they add up to it. */
function shares(of: readonly { readonly quantity: Decimal }[], amount: Decimal): readonly Decimal[] {
  if (of.length === 1) return [amount];
  const all = of.reduce((sum, { quantity }) => sum + quantity, 0n);
  if (all === 0n) return of.map(() => 0n);
  let upTo = 0n;
  let given = 0n;
  return of.map(({ quantity }) => {
    upTo += quantity;
    const share = (amount * upTo) / all - given;
    given += share;
    return share;
  });
}
