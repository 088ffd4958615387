import type { Shop } from "@pinwright/book";
import { compareText, type Decimal, decimal } from "@pinwright/kernel";
import { type DayNumber, groupRows } from "../../model/index.ts";
import { dayNumber } from "../days.ts";

/** What is still to come of a line of an order that was placed. */
export interface Receipt {
  readonly orderId: string;
  readonly partId: string;
  readonly revision: string;
  readonly supplierId: string;
  /** Run that it was ordered for; null: none in particular. */
  readonly runId: string | null;
  readonly quantity: Decimal;
  /** Of one, in the supplier's currency. */
  readonly price: Decimal | null;
  readonly orderDay: DayNumber;
  /** What is overdue counts as coming today. */
  readonly dueDay: DayNumber;
}

const PLACED: ReadonlySet<string> = new Set(["sent", "confirmed"]);

/** What is to come on orders that were sent or confirmed, less what was received with them; by day, then order. */
export function openReceipts(shop: Shop, today: DayNumber): readonly Receipt[] {
  const lines = groupRows(shop.tables.order_lines, (line) => line.order);
  const received = new Map<string, Decimal>();
  for (const { kind, order, part, quantity } of shop.tables.movements) {
    if (kind !== "received" || order === null) continue;
    const name = `${order}\n${part}`;
    received.set(name, (received.get(name) ?? 0n) + decimal(quantity));
  }
  return shop.tables.orders
    .filter((order) => PLACED.has(order.state))
    .flatMap((order) =>
      (lines.get(order.id) ?? []).flatMap((line): readonly Receipt[] => {
        const quantity = decimal(line.quantity) - (received.get(`${order.id}\n${line.part}`) ?? 0n);
        if (quantity <= 0n) return [];
        return [
          {
            orderId: order.id,
            partId: line.part,
            revision: line.revision,
            supplierId: order.supplier,
            runId: order.run,
            quantity,
            price: line.price === null ? null : decimal(line.price),
            orderDay: dayNumber(order.day) ?? today,
            dueDay: Math.max(today, dayNumber(order.due) ?? today),
          },
        ];
      }),
    )
    .sort(
      (a, b) => a.dueDay - b.dueDay || compareText(a.orderId, b.orderId) || compareText(a.partId, b.partId),
    );
}
