import type { Shop, ShopRow } from "@pinwright/book";
import type { MachineCost } from "../model/index.ts";
import { changeRun } from "./change.ts";
import { dayText } from "./days.ts";
import type { PlanInput } from "./input.ts";
import { planRuns } from "./plan-runs.ts";

/** Days that a run is given when only its cost is asked for: enough for any lead time. */
const AMPLE_DAYS = 20_000;

/** Numbers of machines that are shown when nobody says otherwise. */
export const USUAL_QUANTITIES: readonly number[] = [10, 25, 100, 1000];

/**
 * What one machine of a run would cost if so many were built, each time as a run by itself: with its mix in proportion,
 * nothing in stock or on order, tools bought anew, and time enough.
 * @param runId run whose mix, prices and spares count; null: machines with the usual options
 */
export function costAgainstQuantity(
  input: PlanInput,
  runId: string | null,
  quantities: readonly number[] = USUAL_QUANTITIES,
): readonly MachineCost[] {
  const { book, shop, today } = input;
  const row = shop.tables.runs.find((run) => run.id === runId) ?? usualRun(book.machine.id);
  return quantities.flatMap((machines) => {
    const alone = changeRun(aloneIn(shop, row), { machines, ship: dayText(today + AMPLE_DAYS), begin: "" });
    return planRuns({ ...input, shop: alone }).costs;
  });
}

const usualRun = (bookId: string): ShopRow<"runs"> => ({
  id: "usual",
  label: "",
  label_zh: "",
  book: bookId,
  machines: 1,
  ship: "",
  begin: "",
  state: "planned",
  confidence_pct: 95,
  spare_years: 0,
  remark: "",
});

/** The shop with one run alone, and empty shelves. */
function aloneIn(shop: Shop, run: ShopRow<"runs">): Shop {
  return {
    ...shop,
    tables: {
      ...shop.tables,
      runs: [run.state === "done" ? { ...run, state: "planned" } : run],
      orders: [],
      order_lines: [],
      movements: [],
    },
  };
}
