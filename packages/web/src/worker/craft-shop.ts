import type { Shop } from "@pinwright/book";

/** Tables of what happened, what is planned and what is measured with: the line reads none of them. */
const RECORDS = [
  "runs",
  "run_mix",
  "run_prices",
  "orders",
  "order_lines",
  "movements",
  "samples",
  "sample_values",
  "instruments",
  "instrument_measures",
] as const satisfies readonly (keyof Shop["tables"])[];

const isRecord = (name: string): boolean => RECORDS.some((one) => one === name);

/**
 * The shop that the line is derived with: the same object for as long as only records are others, so that a movement
 * of stock does not derive a machine anew.
 */
export class CraftShop {
  #shop: Shop | null = null;

  of(shop: Shop): Shop {
    const before = this.#shop;
    if (before !== null && sameCraft(before, shop)) return before;
    this.#shop = shop;
    return shop;
  }
}

function sameCraft(a: Shop, b: Shop): boolean {
  if (a.numbers !== b.numbers) return false;
  const after = new Map<string, unknown>(Object.entries(b.tables));
  return Object.entries(a.tables).every(([name, rows]) => isRecord(name) || after.get(name) === rows);
}
