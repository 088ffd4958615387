import type { ShopRow } from "@pinwright/book";
import { type Decimal, decimal, timesDecimal } from "@pinwright/kernel";
import type { PlanPart } from "../asks/run-plan.ts";
import { namedPart, namedSupplier, partRows } from "../parts/named-part.ts";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** An order that was placed, with what is still to come of it. */
export interface PlacedOrder {
  readonly id: string;
  readonly supplier: NamedId;
  readonly currency: string;
  readonly day: string;
  readonly due: string;
  readonly state: ShopRow<"orders">["state"];
  readonly remark: string;
  /** Of the lines that have a price, in the supplier's currency. */
  readonly total: Decimal;
  readonly lines: readonly {
    readonly part: PlanPart;
    readonly revision: string;
    readonly quantity: Decimal;
    readonly open: Decimal;
    readonly price: Decimal | null;
  }[];
}

/** Orders for a run, and those that are for no run in particular, by id; the newest first. */
export const placedOrders = view<{ readonly runId: string }, PlacedOrder>({
  uses: ({ book, shop: { tables } }) => [
    tables.orders,
    tables.order_lines,
    tables.movements,
    tables.suppliers,
    book.tables.parts,
  ],
  entries: (model, { runId }) => {
    const { orders, order_lines, movements, suppliers } = model.shop.tables;
    const parts = partRows(model);
    const received = new Map<string, Decimal>();
    for (const { kind, order, part, quantity } of movements)
      if (kind === "received" && order !== null) {
        const key = `${order} ${part}`;
        received.set(key, (received.get(key) ?? 0n) + decimal(quantity));
      }
    const found = orders.filter(({ run }) => run === null || run === runId).reverse();
    return new Map(
      found.map((order): readonly [string, PlacedOrder] => {
        const lines = order_lines
          .filter((line) => line.order === order.id)
          .map((line) => {
            const quantity = decimal(line.quantity);
            const open = quantity - (received.get(`${order.id} ${line.part}`) ?? 0n);
            return {
              part: { ...namedPart(model, line.part), unit: parts.get(line.part)?.unit ?? "each" },
              revision: line.revision,
              quantity,
              open: open > 0n ? open : 0n,
              price: line.price === null ? null : decimal(line.price),
            };
          });
        const { id, day, due, state, remark } = order;
        const supplier = namedSupplier(model, order.supplier) ?? {
          id: order.supplier,
          label: "",
          labelZh: "",
        };
        return [
          id,
          {
            id,
            supplier,
            currency: suppliers.find((one) => one.id === order.supplier)?.currency ?? "",
            day,
            due,
            state,
            remark,
            total: lines.reduce((sum, { price, quantity }) => sum + timesDecimal(price ?? 0n, quantity), 0n),
            lines,
          },
        ];
      }),
    );
  },
  restsInPreview: true,
});
