import type { Shop, ShopRow } from "@pinwright/book";

/** What is different in a plan of what would be if. */
export interface RunChange {
  /** Run that machines and days are of; absent: every one. */
  readonly runId?: string;
  readonly machines?: number;
  /** As year-month-day. */
  readonly ship?: string;
  readonly begin?: string;
  /** Prices of suppliers, in per cent of what they are. */
  readonly pricesPct?: number;
  /** Prices of this supplier alone. */
  readonly supplierId?: string;
  /** Lead times, in per cent of what they are. */
  readonly leadPct?: number;
}

/**
 * The shop with a change, to plan with; its tables stay as they are. When a run gets more or fewer machines, the rows of
 * its mix grow and shrink with it.
 */
export function changeRun(shop: Shop, change: RunChange): Shop {
  const { tables } = shop;
  const isMeant = (runId: string): boolean => change.runId === undefined || change.runId === runId;
  const before = new Map(tables.runs.map((run) => [run.id, run.machines]));
  const machinesOf = (runId: string): number | undefined => (isMeant(runId) ? change.machines : undefined);
  const price = <
    R extends { readonly supplier: string; readonly price: number; readonly lead_days: number | null },
  >(
    row: R,
  ): R => {
    if (change.supplierId !== undefined && row.supplier !== change.supplierId) return row;
    return {
      ...row,
      price: percent(row.price, change.pricesPct),
      lead_days: row.lead_days === null ? null : Math.round(percent(row.lead_days, change.leadPct)),
    };
  };
  return {
    ...shop,
    tables: {
      ...tables,
      runs: tables.runs.map((run) => (isMeant(run.id) ? changedRun(run, change) : run)),
      run_mix: tables.run_mix.map((row) => {
        const machines = machinesOf(row.run);
        const old = before.get(row.run) ?? 0;
        return machines === undefined || old === 0
          ? row
          : { ...row, machines: Math.floor((row.machines * machines) / old) };
      }),
      prices: tables.prices.map(price),
      run_prices: tables.run_prices.map(price),
      suppliers: tables.suppliers.map((supplier) =>
        change.supplierId !== undefined && supplier.id !== change.supplierId
          ? supplier
          : { ...supplier, lead_days: Math.round(percent(supplier.lead_days, change.leadPct)) },
      ),
    },
  };
}

const changedRun = (run: ShopRow<"runs">, change: RunChange): ShopRow<"runs"> => ({
  ...run,
  machines: change.machines ?? run.machines,
  ship: change.ship ?? run.ship,
  begin: change.begin ?? run.begin,
});

/** A price or time in per cent of itself, to a millionth. */
const percent = (value: number, pct: number | undefined): number =>
  pct === undefined ? value : Math.round(value * pct * 10_000) / 1_000_000;
