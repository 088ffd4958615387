import type { BookRow, Shop, ShopRow } from "@pinwright/book";
import { type Decimal, decimal } from "@pinwright/kernel";
import { type DayNumber, groupRows } from "../../model/index.ts";
import type { Supply } from "../needs/net.ts";
import { openReceipts } from "./receipts.ts";
import { stockOf, usableStock } from "./stock.ts";

/**
 * A function that gives what is there and on its way of each part: stock of its present revision, what was kitted for
 * or used in each run, and orders of that revision that were placed.
 * @param runs in the order of their ship days
 */
export function supplies(
  shop: Shop,
  parts: ReadonlyMap<string, BookRow<"parts">>,
  runs: readonly ShopRow<"runs">[],
  today: DayNumber,
): (partId: string) => Supply {
  const stock = stockOf(shop);
  const receipts = groupRows(openReceipts(shop, today), (receipt) => receipt.partId);
  const issued = issuedTo(shop, runs);
  return (partId) => {
    const revision = parts.get(partId)?.revision ?? "";
    return {
      stock: usableStock(stock.get(partId), revision),
      issued: issued.get(partId) ?? NONE,
      receipts: (receipts.get(partId) ?? [])
        .filter((receipt) => receipt.revision === "" || receipt.revision === revision)
        .map(({ dueDay, quantity }) => ({ day: dueDay, quantity })),
    };
  };
}

const NONE: ReadonlyMap<number, Decimal> = new Map();

/** What has gone into each run, by part and place of the run. */
function issuedTo(
  { tables }: Shop,
  runs: readonly ShopRow<"runs">[],
): ReadonlyMap<string, ReadonlyMap<number, Decimal>> {
  const places = new Map(runs.map((run, r) => [run.id, r]));
  const issued = new Map<string, Map<number, Decimal>>();
  for (const { kind, part, run, quantity } of tables.movements) {
    const place = run === null ? undefined : places.get(run);
    if (place === undefined || (kind !== "kitted" && kind !== "used")) continue;
    const own = issued.get(part) ?? new Map<number, Decimal>();
    issued.set(part, own);
    own.set(place, (own.get(place) ?? 0n) + decimal(quantity));
  }
  return issued;
}
