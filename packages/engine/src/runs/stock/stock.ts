import type { Shop, ShopRow } from "@pinwright/book";
import { compareText, type Decimal, decimal } from "@pinwright/kernel";
import { groupRows } from "../../model/index.ts";
import { dayNumber } from "../days.ts";

/** What is there of a part. */
export interface PartStock {
  readonly partId: string;
  /** Of all revisions and sites. */
  readonly count: Decimal;
  /** Of each revision, in code-point order; blank: nobody wrote one. */
  readonly revisions: readonly { readonly revision: string; readonly count: Decimal }[];
  /** At each site, in code-point order; null: nobody wrote one. */
  readonly sites: readonly { readonly siteId: string | null; readonly count: Decimal }[];
}

/** A movement with what was there afterwards. */
export interface LedgerLine {
  readonly movement: ShopRow<"movements">;
  /** Of the part and revision, at all sites. */
  readonly balance: Decimal;
  /** It leaves less than nothing. */
  readonly isBelowZero: boolean;
}

/** Movements of one part and revision, in the order of their days; those of one day as they were written. */
const inOrder = (rows: readonly ShopRow<"movements">[]): readonly ShopRow<"movements">[] =>
  rows.toSorted((a, b) => (dayNumber(a.day) ?? 0) - (dayNumber(b.day) ?? 0));

const nameOf = ({ part, revision }: ShopRow<"movements">): string => `${part}\n${revision}`;

/** What is there at each site after a movement. A count without a site is of all that there is, wherever it lies. */
function moved(
  before: ReadonlyMap<string | null, Decimal>,
  row: ShopRow<"movements">,
): Map<string | null, Decimal> {
  const quantity = decimal(row.quantity);
  if (row.kind === "counted" && row.site === null) return new Map([[null, quantity]]);
  const here = before.get(row.site) ?? 0n;
  const after =
    row.kind === "counted" ? quantity : row.kind === "received" ? here + quantity : here - quantity;
  return new Map(before).set(row.site, after);
}

const totalOf = (sites: ReadonlyMap<string | null, Decimal>): Decimal =>
  [...sites.values()].reduce((sum, count) => sum + count, 0n);

/**
 * Every movement with what it leaves, by part, revision and day. A receipt adds; what is kitted, used or scrapped is
 * taken away; a count says what is there.
 * @param partId of this part alone
 */
export function stockLedger(shop: Shop, partId?: string): readonly LedgerLine[] {
  const rows = shop.tables.movements.filter((row) => partId === undefined || row.part === partId);
  return [...groupRows(rows, nameOf)]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([, group]) => {
      let sites: ReadonlyMap<string | null, Decimal> = new Map();
      return inOrder(group).map((movement) => {
        sites = moved(sites, movement);
        const balance = totalOf(sites);
        return { movement, balance, isBelowZero: balance < 0n };
      });
    });
}

/** What is there of each part that ever moved. */
export function stockOf(shop: Shop): ReadonlyMap<string, PartStock> {
  const found = [...groupRows(shop.tables.movements, (row) => row.part)].map(([partId, rows]): PartStock => {
    const sites = new Map<string | null, Decimal>();
    const revisions = [...groupRows(rows, (row) => row.revision)].map(([revision, own]) => {
      const here = inOrder(own).reduce<ReadonlyMap<string | null, Decimal>>(moved, new Map());
      for (const [siteId, count] of here) sites.set(siteId, (sites.get(siteId) ?? 0n) + count);
      return { revision, count: totalOf(here) };
    });
    return {
      partId,
      count: totalOf(sites),
      revisions: revisions.sort((a, b) => compareText(a.revision, b.revision)),
      sites: [...sites]
        .map(([siteId, count]) => ({ siteId, count }))
        .sort((a, b) => compareText(a.siteId ?? "", b.siteId ?? "")),
    };
  });
  return new Map(found.sort((a, b) => compareText(a.partId, b.partId)).map((stock) => [stock.partId, stock]));
}

/** What of a part can be built in: of its present revision, and what nobody wrote a revision of. */
export function usableStock(stock: PartStock | undefined, revision: string): Decimal {
  const usable = (stock?.revisions ?? []).filter((r) => r.revision === "" || r.revision === revision);
  const count = usable.reduce((sum, r) => sum + r.count, 0n);
  return count > 0n ? count : 0n;
}
