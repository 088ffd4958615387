import type { Shop } from "@pinwright/book";
import {
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
  type ProposedOrder,
  rowsById,
  type StageBlock,
  type ToolPurchase,
} from "../../model/index.ts";
import { mondayOf } from "../calendar.ts";
import type { Receipt } from "../stock/receipts.ts";

const HUNDRED = decimal(100);

interface Payment {
  readonly day: DayNumber;
  readonly kind: "material" | "tooling" | "work";
  readonly amount: Decimal;
}

/** All that money is paid for. */
export interface Paid {
  readonly orders: readonly ProposedOrder[];
  /** Placed before and still to come. */
  readonly receipts: readonly Receipt[];
  /** Lots that are in no order: their material and outside work, in the shop's own currency. */
  readonly unordered: readonly { readonly day: DayNumber; readonly amount: Decimal }[];
  readonly tools: readonly ToolPurchase[];
  readonly stages: readonly StageBlock[];
  /** Cost of a minute at each stage, overhead included, by its id. */
  readonly minuteCost: ReadonlyMap<string, Decimal>;
  readonly today: DayNumber;
}

/**
 * Money that goes out week by week, in the shop's own currency: a deposit with the order and the rest so many days
 * after delivery, as each supplier wants it; tools when they are there; work in the week in which it is done. Every week
 * from the first payment to the last.
 */
export function cashWeeks(shop: Shop, own: string, paid: Paid): readonly CashWeek[] {
  const places = currencyPlaces(own);
  const suppliers = rowsById(shop.tables.suppliers);
  const split = (supplierId: string, orderDay: DayNumber, dueDay: DayNumber, amount: Decimal): Payment[] => {
    const supplier = suppliers.get(supplierId);
    const share = divideDecimal(decimal(supplier?.deposit_pct ?? 0), HUNDRED);
    const deposit = roundDecimal(timesDecimal(amount, share), places);
    const restDay = Math.max(orderDay, dueDay + (supplier?.payment_days ?? 0));
    return [
      { day: orderDay, kind: "material", amount: deposit },
      { day: restDay, kind: "material", amount: amount - deposit },
    ];
  };
  const payments = [
    ...paid.orders.flatMap((o) => split(o.supplierId, o.orderDay, o.dueDay, o.ownTotal.value)),
    ...paid.receipts.flatMap((r) => split(r.supplierId, r.orderDay, r.dueDay, ownAmount(shop, own, r))),
    ...paid.unordered.map(
      ({ day, amount }): Payment => ({
        day,
        kind: "material",
        amount: roundDecimal(amount, places),
      }),
    ),
    ...paid.tools.map((t): Payment => ({ day: t.dueDay, kind: "tooling", amount: t.cost ?? 0n })),
    ...paid.stages.flatMap(({ stageId, days }) =>
      days.map(({ day, minutes }): Payment => {
        const amount = timesDecimal(decimal(minutes.toFixed(6)), paid.minuteCost.get(stageId) ?? 0n);
        return { day, kind: "work", amount: roundDecimal(amount, places) };
      }),
    ),
  ];
  return weekly(payments.filter(({ day, amount }) => amount !== 0n && day >= paid.today));
}

/** What is still to be paid for an open receipt. */
function ownAmount({ tables }: Shop, own: string, { quantity, price, supplierId }: Receipt): Decimal {
  const currency = tables.suppliers.find((row) => row.id === supplierId)?.currency ?? own;
  const rate = currency === own ? 1 : (tables.currencies.find((row) => row.id === currency)?.rate ?? 0);
  return roundDecimal(timesDecimal(timesDecimal(quantity, price ?? 0n), decimal(rate)), currencyPlaces(own));
}

function weekly(payments: readonly Payment[]): readonly CashWeek[] {
  const weeks = new Map<DayNumber, { material: Decimal; tooling: Decimal; work: Decimal }>();
  for (const { day, kind, amount } of payments) {
    const week = mondayOf(day);
    const sums = weeks.get(week) ?? { material: 0n, tooling: 0n, work: 0n };
    weeks.set(week, sums);
    sums[kind] += amount;
  }
  const mondays = [...weeks.keys()].sort((a, b) => a - b);
  const first = mondays[0] ?? 0;
  const last = mondays.at(-1) ?? first - 7;
  const result: CashWeek[] = [];
  let total = 0n;
  for (let week = first; week <= last; week += 7) {
    const { material, tooling, work } = weeks.get(week) ?? { material: 0n, tooling: 0n, work: 0n };
    total += material + tooling + work;
    result.push({ week, material, tooling, work, total });
  }
  return result;
}
