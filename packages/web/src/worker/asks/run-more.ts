import { plainDecimal, type ShopRow } from "@pinwright/book";
import {
  costAgainstQuantity,
  frozenPrices,
  type MachineCost,
  type Shortage,
  shortages,
} from "@pinwright/engine";
import type { Model } from "../model.ts";
import { namedPart, partRows } from "../parts/named-part.ts";
import { type PlanQuestion, planned } from "../runs/planned.ts";
import type { PlanPart } from "./run-plan.ts";

/** What a machine costs when more or fewer are built, and nothing else changes. */
export function runQuantities(
  model: Model,
  {
    runId,
    quantities,
    ...question
  }: PlanQuestion & { readonly runId: string; readonly quantities: readonly number[] },
): { readonly currency: string; readonly costs: readonly MachineCost[] } {
  const { input, plan } = planned(model, question);
  return { currency: plan.currency, costs: costAgainstQuantity(input, runId, quantities) };
}

/** What lacks at each stage of a run, with the names of the parts. */
export function runShortages(
  model: Model,
  { runId, ...question }: PlanQuestion & { readonly runId: string },
): { readonly lines: readonly Shortage[]; readonly parts: ReadonlyMap<string, PlanPart> } {
  const { input, plan } = planned(model, question);
  const lines = shortages(input, plan, runId);
  const rows = partRows(model);
  return {
    lines,
    parts: new Map(
      lines.map(({ partId }) => [
        partId,
        { ...namedPart(model, partId), unit: rows.get(partId)?.unit ?? "each" },
      ]),
    ),
  };
}

type Cells = Readonly<Record<string, string>>;

/** Rows of `run_prices` with which a run keeps the prices of today, as key and other cells. */
export function runPrices(
  model: Model,
  { runId, ...question }: PlanQuestion & { readonly runId: string },
): readonly { readonly key: Cells; readonly cells: Cells }[] {
  const { input, plan } = planned(model, question);
  return frozenPrices(input, plan, runId).map((row) => ({
    key: priceKey(row),
    cells: {
      price: plainDecimal(row.price),
      rate: plainDecimal(row.rate),
      pack: plainDecimal(row.pack),
      lead_days: row.lead_days === null ? "" : plainDecimal(row.lead_days),
    },
  }));
}

const priceKey = ({ run, part, supplier, from_quantity }: ShopRow<"run_prices">): Cells => ({
  run,
  part,
  supplier,
  from_quantity: plainDecimal(from_quantity),
});

/** Keys of the prices that were frozen for a run, as they stand in its cells. */
export const frozenKeys = ({ shopTables }: Model, { runId }: { readonly runId: string }): readonly Cells[] =>
  [...(shopTables.get("run_prices")?.values() ?? [])]
    .filter((cells) => cells.get("run") === runId)
    .map((cells) => ({
      run: runId,
      part: cells.get("part") ?? "",
      supplier: cells.get("supplier") ?? "",
      from_quantity: cells.get("from_quantity") ?? "",
    }));
