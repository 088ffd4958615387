import type { Shop, ShopRow } from "@pinwright/book";
import {
  compareText,
  currencyPlaces,
  type Decimal,
  decimal,
  divideDecimal,
  roundDecimal,
  timesDecimal,
} from "@pinwright/kernel";
import {
  type CashWeek,
  type DayNumber,
  groupRows,
  type ProposedLine,
  type ProposedOrder,
  rowsById,
  type StageBlock,
  type ToolPurchase,
} from "../../model/index.ts";
import { mondayOf } from "../calendar.ts";
import type { Receipt } from "../stock/receipts.ts";
import type { Unordered } from "./unordered.ts";

const HUNDRED = decimal(100);

type Weights = ReadonlyMap<string, bigint>;

interface Payment {
  readonly day: DayNumber;
  readonly kind: "material" | "tooling" | "work";
  readonly amount: Decimal;
  /** What it is for, in proportion: by run; blank: for none in particular. */
  readonly weights: Weights;
}

/** All that money is paid for. */
export interface Paid {
  readonly orders: readonly ProposedOrder[];
  /** Placed before and still to come. */
  readonly receipts: readonly Receipt[];
  /** Lots that are in no order: their material and outside work, in the shop's own currency. */
  readonly unordered: readonly Unordered[];
  readonly tools: readonly ToolPurchase[];
  readonly stages: readonly StageBlock[];
  /** Cost of a minute at each stage, overhead included, by its id. */
  readonly minuteCost: ReadonlyMap<string, Decimal>;
  readonly today: DayNumber;
}

/**
 * Money that goes out week by week, in the shop's own currency: a deposit with the order and the rest so many days
 * after each delivery, as each supplier wants it; tools when they are there; work in the week in which it is done. Every week
 * from the first payment to the last.
 */
export function cashWeeks(shop: Shop, own: string, paid: Paid): readonly CashWeek[] {
  const places = currencyPlaces(own);
  const suppliers = rowsById(shop.tables.suppliers);
  const payments = [
    ...paid.orders.flatMap((order) => orderPayments(order, suppliers.get(order.supplierId), places)),
    ...paid.receipts.flatMap((receipt) =>
      receiptPayments(shop, own, receipt, suppliers.get(receipt.supplierId)),
    ),
    ...paid.unordered.map(
      ({ day, amount, shares }): Payment => ({
        day,
        kind: "material",
        amount: roundDecimal(amount, places),
        weights: new Map(shares.map(({ runId, quantity }) => [runId, quantity])),
      }),
    ),
    ...paid.tools.map(
      (tool): Payment => ({
        day: tool.dueDay,
        kind: "tooling",
        amount: tool.cost ?? 0n,
        weights: new Map([[tool.runId, 1n]]),
      }),
    ),
    ...paid.stages.flatMap(({ runId, stageId, days }) =>
      days.map(({ day, minutes }): Payment => {
        const amount = timesDecimal(decimal(minutes.toFixed(6)), paid.minuteCost.get(stageId) ?? 0n);
        return { day, kind: "work", amount: roundDecimal(amount, places), weights: new Map([[runId, 1n]]) };
      }),
    ),
  ];
  return weekly(
    payments.filter(({ day, amount }) => amount !== 0n && day >= paid.today),
    places,
  );
}

type Supplier = ShopRow<"suppliers"> | undefined;

const depositOf = (supplier: Supplier, amount: Decimal, places: number): Decimal =>
  roundDecimal(timesDecimal(amount, divideDecimal(decimal(supplier?.deposit_pct ?? 0), HUNDRED)), places);

const restDay = (supplier: Supplier, orderDay: DayNumber, dueDay: DayNumber): DayNumber =>
  Math.max(orderDay, dueDay + (supplier?.payment_days ?? 0));

/** A deposit on the whole, and the rest of each delivery after it; carriage comes with the first one. */
function orderPayments(order: ProposedOrder, supplier: Supplier, places: number): readonly Payment[] {
  const { orderDay, lines, shipping, total, ownTotal } = order;
  const deliveries = [...groupRows(lines, (line) => String(line.dueDay))].map(([, own]) => own);
  deliveries.sort((a, b) => (a[0]?.dueDay ?? 0) - (b[0]?.dueDay ?? 0));
  const deposit = depositOf(supplier, ownTotal.value, places);
  const rest = ownTotal.value - deposit;
  const payments: Payment[] = [
    { day: orderDay, kind: "material", amount: deposit, weights: weightsOf(lines) },
  ];
  let upTo = shipping;
  let paid = 0n;
  for (const own of deliveries) {
    for (const line of own) upTo += line.amount;
    const owed = total.value === 0n ? rest : roundDecimal((rest * upTo) / total.value, places);
    const day = restDay(supplier, orderDay, own[0]?.dueDay ?? orderDay);
    payments.push({ day, kind: "material", amount: owed - paid, weights: weightsOf(own) });
    paid = owed;
  }
  return payments;
}

function receiptPayments(shop: Shop, own: string, receipt: Receipt, supplier: Supplier): readonly Payment[] {
  const { orderDay, dueDay, runId } = receipt;
  const amount = ownAmount(shop, own, receipt);
  const deposit = depositOf(supplier, amount, currencyPlaces(own));
  const weights: Weights = new Map([[runId ?? "", 1n]]);
  return [
    { day: orderDay, kind: "material", amount: deposit, weights },
    { day: restDay(supplier, orderDay, dueDay), kind: "material", amount: amount - deposit, weights },
  ];
}

/** Amounts of lines by the runs that use them; what is left over of packs is for none in particular. */
function weightsOf(lines: readonly ProposedLine[]): Weights {
  const weights = new Map<string, bigint>();
  for (const { amount, quantity, shares } of lines) {
    let left = amount;
    for (const share of shares) {
      const own = quantity === 0n ? 0n : (amount * share.quantity) / quantity;
      weights.set(share.runId, (weights.get(share.runId) ?? 0n) + own);
      left -= own;
    }
    weights.set("", (weights.get("") ?? 0n) + left);
  }
  return weights;
}

/** What is still to be paid for an open receipt. */
function ownAmount({ tables }: Shop, own: string, { quantity, price, supplierId }: Receipt): Decimal {
  const currency = tables.suppliers.find((row) => row.id === supplierId)?.currency ?? own;
  const rate = currency === own ? 1 : (tables.currencies.find((row) => row.id === currency)?.rate ?? 0);
  return roundDecimal(timesDecimal(timesDecimal(quantity, price ?? 0n), decimal(rate)), currencyPlaces(own));
}

interface Week {
  readonly sums: { material: Decimal; tooling: Decimal; work: Decimal };
  readonly runs: Map<string, Decimal>;
}

function weekly(payments: readonly Payment[], places: number): readonly CashWeek[] {
  const weeks = new Map<DayNumber, Week>();
  for (const { day, kind, amount, weights } of payments) {
    const week = mondayOf(day);
    const own = weeks.get(week) ?? { sums: { material: 0n, tooling: 0n, work: 0n }, runs: new Map() };
    weeks.set(week, own);
    own.sums[kind] += amount;
    const all = [...weights.values()].reduce((sum, weight) => sum + weight, 0n);
    for (const [runId, weight] of weights)
      if (runId !== "" && all > 0n)
        own.runs.set(runId, (own.runs.get(runId) ?? 0n) + (amount * weight) / all);
  }
  const mondays = [...weeks.keys()].sort((a, b) => a - b);
  const first = mondays[0] ?? 0;
  const last = mondays.at(-1) ?? first - 7;
  const result: CashWeek[] = [];
  let total = 0n;
  for (let week = first; week <= last; week += 7) {
    const own = weeks.get(week);
    const { material, tooling, work } = own?.sums ?? { material: 0n, tooling: 0n, work: 0n };
    total += material + tooling + work;
    const runs = [...(own?.runs ?? [])]
      .map(([runId, amount]) => ({ runId, amount: roundDecimal(amount, places) }))
      .sort((a, b) => compareText(a.runId, b.runId));
    result.push({ week, material, tooling, work, total, runs });
  }
  return result;
}
