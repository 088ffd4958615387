import type { RunsPlan } from "../model/index.ts";
import type { PlanInput } from "./input.ts";
import { mixFindings } from "./mixes.ts";

/** Everything that follows from the runs of a shop, its stock and its prices. */
export function planRuns({ book, shop }: PlanInput): RunsPlan {
  return {
    currency: shop.tables.currencies.find((currency) => currency.own === "yes")?.id ?? "",
    runs: [],
    needs: [],
    sources: new Map(),
    lots: [],
    orders: [],
    tools: [],
    articles: [],
    stages: [],
    cash: [],
    costs: [],
    findings: mixFindings(book, shop),
  };
}
