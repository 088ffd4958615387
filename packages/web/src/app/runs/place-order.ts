import { type Decimal, textOfDecimal } from "@pinwright/kernel";
import { dayText } from "./days.ts";
import type { Plan } from "./run-tab.ts";

type Order = Plan["orders"][number];
type Line = Order["lines"][number];
type Cells = Readonly<Record<string, string>>;
interface Put {
  readonly table: string;
  readonly key: Cells;
  readonly cells: Cells;
}

/** Lines of one part: a wire's colours are one line of an order that was placed. */
function byPart(lines: readonly Line[]): ReadonlyMap<string, readonly Line[]> {
  const parts = new Map<string, Line[]>();
  for (const line of lines) {
    const own = parts.get(line.partId);
    if (own === undefined) parts.set(line.partId, [line]);
    else own.push(line);
  }
  return parts;
}

const sum = (lines: readonly Line[]): Decimal => lines.reduce((total, { quantity }) => total + quantity, 0n);

/** What of a wire is wanted in which colour, as text: `wire.hu-24 RD 300, BU 100`. */
const coloursOf = (partId: string, lines: readonly Line[]): readonly string[] => {
  const coloured = lines.filter(({ colour }) => colour !== "");
  if (coloured.length === 0) return [];
  return [
    `${partId} ${coloured.map(({ colour, quantity }) => `${colour} ${textOfDecimal(quantity)}`).join(", ")}`,
  ];
};

/** An id of an order: made of supplier and day, and something that nobody else makes up. */
const orderId = (supplierId: string, day: string): string =>
  `po.${supplierId}.${day.replaceAll("-", "")}.${crypto.randomUUID().slice(0, 4)}`;

/**
 * Rows of the shop that say that a proposed order was sent today. It comes as many days later as was planned.
 * @param remark says which colours of wire are meant
 */
export function placedOrder(
  order: Order,
  day: string,
  runId: string,
  remark: (colours: string) => string,
  id = orderId(order.supplierId, day),
): readonly Put[] {
  const parts = byPart(order.lines);
  const colours = [...parts].flatMap(([partId, lines]) => coloursOf(partId, lines));
  const runIds = new Set(order.lines.flatMap((line) => line.runIds));
  return [
    {
      table: "orders",
      key: { id },
      cells: {
        supplier: order.supplierId,
        day,
        due: dayText(order.dueDay),
        run: runIds.size === 1 ? runId : "",
        state: "sent",
        remark: colours.length === 0 ? "" : remark(colours.join("; ")),
      },
    },
    ...[...parts].map(([part, lines]): Put => {
      const price = lines[0]?.price ?? null;
      return {
        table: "order_lines",
        key: { order: id, part },
        cells: {
          revision: lines[0]?.revision ?? "",
          quantity: textOfDecimal(sum(lines)),
          price: price === null ? "" : textOfDecimal(price),
        },
      };
    }),
  ];
}
