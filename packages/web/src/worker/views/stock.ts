import { type LedgerLine, stockLedger, stockOf, type Total } from "@pinwright/engine";
import { type Decimal, timesDecimal } from "@pinwright/kernel";
import type { Model } from "../model.ts";
import { namedPart, partRows } from "../parts/named-part.ts";
import { costBasis, rolledUp } from "../parts/rolled-up.ts";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** A part with what lies on the shelf of it. */
export interface StockLine extends NamedId {
  readonly unit: string;
  /** Revision that is made now; blank: it has none. */
  readonly revision: string;
  readonly isInBook: boolean;
  /** Null: it never moved. */
  readonly count: Decimal | null;
  readonly revisions: readonly { readonly revision: string; readonly count: Decimal }[];
  readonly sites: readonly { readonly siteId: string | null; readonly count: Decimal }[];
  readonly lastDay: string;
  /** In one machine with its usual options. */
  readonly inMachine: Decimal;
  /** All that lies there at what one costs in a run of so many machines. */
  readonly worth: Total | null;
}

/** Machines whose prices a shelf is worth. */
const PRICED_AT = 25;

function inMachines({ line }: Model): ReadonlyMap<string, Decimal> {
  const { nodes, totals } = line.parts.bill;
  const found = new Map<string, Decimal>();
  for (const { id, partId } of nodes.values())
    if (partId !== null) found.set(partId, (found.get(partId) ?? 0n) + (totals.get(id) ?? 0n));
  return found;
}

/** Every part of the book, and whatever else ever moved, by id: what moved comes first. */
export const stock = view<null, StockLine>({
  uses: (model) => [...costBasis(model), model.shop.tables.movements],
  entries: (model) => {
    const stocks = stockOf(model.shop);
    const wanted = inMachines(model);
    const { nodes } = rolledUp(model, PRICED_AT);
    const rows = partRows(model);
    const lastDays = new Map<string, string>();
    for (const { part, day } of model.shop.tables.movements)
      if (day > (lastDays.get(part) ?? "")) lastDays.set(part, day);
    const ids = new Set([...stocks.keys(), ...rows.keys()]);
    return new Map(
      [...ids].map((id): readonly [string, StockLine] => {
        const found = stocks.get(id);
        const each = nodes.get(id)?.each;
        return [
          id,
          {
            ...namedPart(model, id),
            unit: rows.get(id)?.unit ?? "each",
            revision: rows.get(id)?.revision ?? "",
            isInBook: rows.has(id),
            count: found?.count ?? null,
            revisions: found?.revisions ?? [],
            sites: found?.sites ?? [],
            lastDay: lastDays.get(id) ?? "",
            inMachine: wanted.get(id) ?? 0n,
            worth:
              found === undefined || each === undefined
                ? null
                : { ...each, value: timesDecimal(found.count, each.value) },
          },
        ];
      }),
    );
  },
  restsInPreview: true,
});

/** One movement of a part, with what lay there afterwards. */
export type StockMovement = LedgerLine["movement"] & Pick<LedgerLine, "balance" | "isBelowZero">;

/** Movements of one part, the oldest first, by id. */
export const stockHistory = view<{ readonly id: string }, StockMovement>({
  uses: ({ shop }) => [shop.tables.movements],
  entries: ({ shop }, { id }) =>
    new Map(
      stockLedger(shop, id).map(({ movement, balance, isBelowZero }) => [
        movement.id,
        { ...movement, balance, isBelowZero },
      ]),
    ),
  restsInPreview: true,
});

/** What a movement can name: runs, stages, orders and sites of the shop. */
export interface StockNames {
  readonly currency: string;
  readonly runs: readonly NamedId[];
  readonly stages: readonly NamedId[];
  readonly orders: readonly string[];
  readonly sites: readonly NamedId[];
}

const named = (row: { readonly id: string; readonly label: string; readonly label_zh: string }): NamedId => ({
  id: row.id,
  label: row.label,
  labelZh: row.label_zh,
});

export const stockNames = view<null, StockNames>({
  uses: ({ shop: { tables } }) => [
    tables.runs,
    tables.stages,
    tables.orders,
    tables.sites,
    tables.currencies,
  ],
  entries: ({ shop: { tables } }) =>
    new Map([
      [
        "",
        {
          currency: tables.currencies.find(({ own }) => own === "yes")?.id ?? "",
          runs: tables.runs.filter(({ state }) => state !== "done").map(named),
          stages: tables.stages.map(named),
          orders: tables.orders.filter(({ state }) => state !== "cancelled").map(({ id }) => id),
          sites: tables.sites.map(named),
        },
      ],
    ]),
  restsInPreview: true,
});
