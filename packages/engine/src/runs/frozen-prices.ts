import type { ShopRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { RunsPlan } from "../model/index.ts";
import type { PlanInput } from "./input.ts";

/**
 * The rows of `run_prices` with which a run is frozen: every price of today of the parts that it needs, from all their
 * suppliers, with the rates of today.
 */
export function frozenPrices(
  { shop }: Pick<PlanInput, "shop">,
  plan: Pick<RunsPlan, "needs">,
  runId: string,
): readonly ShopRow<"run_prices">[] {
  const { prices, suppliers, currencies } = shop.tables;
  const parts = new Set(plan.needs.filter((need) => need.runId === runId).map((need) => need.partId));
  const currencyOf = new Map(suppliers.map((row) => [row.id, row.currency]));
  const rateOf = new Map(currencies.map((row) => [row.id, row.own === "yes" ? 1 : row.rate]));
  return prices
    .filter((row) => parts.has(row.part))
    .map(({ part, supplier, from_quantity, price, pack, lead_days }) => ({
      run: runId,
      part,
      supplier,
      from_quantity,
      price,
      rate: rateOf.get(currencyOf.get(supplier) ?? "") ?? 1,
      pack,
      lead_days,
    }))
    .sort(
      (a, b) =>
        compareText(a.part, b.part) ||
        compareText(a.supplier, b.supplier) ||
        a.from_quantity - b.from_quantity,
    );
}
