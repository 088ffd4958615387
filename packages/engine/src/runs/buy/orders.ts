import type { Shop, ShopRow } from "@pinwright/book";
import {
  compareText,
  currencyPlaces,
  type Decimal,
  decimal,
  roundDecimal,
  timesDecimal,
} from "@pinwright/kernel";
import {
  groupRows,
  type ProposedLine,
  type ProposedOrder,
  type RunShare,
  rowsById,
  type Total,
} from "../../model/index.ts";
import { dayText } from "../days.ts";
import type { PlannedLots } from "./sourcing.ts";

/** One lot with all that an order says of it. */
interface OrderedLot extends ProposedLine {
  readonly supplierId: string;
  readonly orderDay: number;
  readonly lacksPrice: boolean;
}

/** An order while lines are still joined to it. */
interface Draft {
  readonly supplierId: string;
  readonly orderDay: number;
  readonly lines: readonly OrderedLot[];
}

/**
 * Orders from the lots: those that one supplier gets within the shop's days of merging are one order with part
 * deliveries, placed on the day of the earliest; each line keeps its own day. An order below the supplier's least value goes with the one that is nearest in time.
 */
export function ordersOf(shop: Shop, lots: readonly PlannedLots[], own: string): readonly ProposedOrder[] {
  const suppliers = rowsById(shop.tables.suppliers);
  const drafts = [...groupRows(lots.flatMap(orderedLots), (lot) => lot.supplierId)].flatMap(
    ([supplierId, ownLots]) =>
      joined(together(supplierId, ownLots, shop.numbers.order_merge_days), suppliers.get(supplierId)),
  );
  return drafts
    .map((draft) => orderOf(shop, draft, suppliers.get(draft.supplierId), own))
    .sort((a, b) => a.orderDay - b.orderDay || compareText(a.supplierId, b.supplierId));
}

function orderedLots({ demand, found }: PlannedLots): readonly OrderedLot[] {
  const supplierId = found?.lots.supplierId ?? null;
  if (found === null || supplierId === null) return [];
  const { pack, orders } = found.lots;
  const places = currencyPlaces(found.offer.currency);
  return orders.map(({ day, orderDay, quantity, price, runIds, shares }) => ({
    partId: demand.partId,
    colour: demand.colour,
    revision: demand.part?.revision ?? "",
    quantity,
    pack,
    packs: Number(quantity / pack),
    price,
    amount: roundDecimal(timesDecimal(quantity, price ?? 0n), places),
    dueDay: day,
    runIds,
    shares,
    supplierId,
    orderDay,
    lacksPrice: price === null,
  }));
}

/** Lots that a supplier gets within so many days are one order, on the day of the earliest. */
function together(supplierId: string, lots: readonly OrderedLot[], days: number): readonly Draft[] {
  const drafts: Draft[] = [];
  for (const lot of [...lots].sort((a, b) => a.orderDay - b.orderDay)) {
    const last = drafts.at(-1);
    if (last !== undefined && lot.orderDay - last.orderDay <= days)
      drafts[drafts.length - 1] = { ...last, lines: [...last.lines, lot] };
    else drafts.push({ supplierId, orderDay: lot.orderDay, lines: [lot] });
  }
  return drafts;
}

const amountOf = ({ lines }: Draft): Decimal => lines.reduce((sum, line) => sum + line.amount, 0n);

/** Drafts, each that is too small joined to the one that is nearest to it in time; the earlier of the two days counts. */
function joined(drafts: readonly Draft[], supplier: ShopRow<"suppliers"> | undefined): readonly Draft[] {
  const least = decimal(supplier?.least_order ?? 0);
  const result = [...drafts];
  for (let i = 0; i < result.length; ) {
    const draft = result[i];
    if (draft === undefined || result.length === 1) break;
    if (amountOf(draft) >= least) {
      i++;
      continue;
    }
    const daysTo = (at: number): number =>
      Math.abs((result[at]?.orderDay ?? Number.POSITIVE_INFINITY) - draft.orderDay);
    const first = daysTo(i - 1) <= daysTo(i + 1) ? i - 1 : i;
    const [a, b] = result.slice(first, first + 2);
    if (a === undefined || b === undefined) break;
    result.splice(first, 2, { ...a, lines: [...a.lines, ...b.lines] });
    i = first;
  }
  return result;
}

function orderOf(
  { tables }: Shop,
  { supplierId, orderDay, lines }: Draft,
  supplier: ShopRow<"suppliers"> | undefined,
  own: string,
): ProposedOrder {
  const currency = supplier?.currency ?? own;
  const shipping = decimal(supplier?.shipping ?? 0);
  const value = lines.reduce((sum, line) => sum + line.amount, shipping);
  const unpriced = [...new Set(lines.filter((line) => line.lacksPrice).map((line) => line.partId))];
  const missing: Total["missing"] = unpriced.sort(compareText).map((id) => ({ lack: "no-price", id }));
  const rate = currency === own ? 1 : (tables.currencies.find((row) => row.id === currency)?.rate ?? null);
  const places = currencyPlaces(own);
  const sameParts = mergedLines(lines);
  return {
    id: `${supplierId}.${dayText(orderDay)}`,
    supplierId,
    currency,
    orderDay,
    dueDay: lines.reduce((day, line) => Math.max(day, line.dueDay), orderDay),
    lines: sameParts,
    shipping,
    total: { value, missing },
    ownTotal: {
      value: rate === null ? 0n : roundDecimal(timesDecimal(value, decimal(rate)), places),
      missing: rate === null ? [...missing, { lack: "no-rate", id: supplierId }] : missing,
    },
  };
}

function joinedShares(shares: readonly RunShare[]): readonly RunShare[] {
  const sums = new Map<string, Decimal>();
  for (const { runId, quantity } of shares) sums.set(runId, (sums.get(runId) ?? 0n) + quantity);
  return [...sums].map(([runId, quantity]) => ({ runId, quantity }));
}

/** Lines by part, colour and day; what is wanted of one on one day is one line. */
function mergedLines(lots: readonly OrderedLot[]): readonly ProposedLine[] {
  const lines = new Map<string, ProposedLine>();
  for (const { supplierId: _, orderDay: __, lacksPrice: ___, ...line } of lots) {
    const name = `${line.partId}\n${line.colour}\n${line.dueDay}\n${line.price}`;
    const before = lines.get(name);
    lines.set(
      name,
      before === undefined
        ? line
        : {
            ...before,
            quantity: before.quantity + line.quantity,
            packs: before.packs + line.packs,
            amount: before.amount + line.amount,
            runIds: [...new Set([...before.runIds, ...line.runIds])],
            shares: joinedShares([...before.shares, ...line.shares]),
          },
    );
  }
  return [...lines.values()].sort(
    (a, b) => compareText(a.partId, b.partId) || compareText(a.colour, b.colour) || a.dueDay - b.dueDay,
  );
}
