import { numberOfDecimal } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding } from "../../model/index.ts";
import type { Offer } from "../prices/offer.ts";
import type { PriceBook } from "../prices/price-book.ts";

/** Whether the prices of these parts can be used, and what tools cost. */
export function checkPrices(
  machine: Machine,
  prices: PriceBook,
  partIds: ReadonlySet<string>,
): readonly Finding[] {
  const offers = [...partIds].flatMap((partId) => prices.offersOf(partId));
  return [
    ...badPacks(machine, prices, partIds),
    ...offers.flatMap(risingPrices),
    ...unknownMoney(offers),
    ...toolsWithoutCost(machine, prices, partIds),
  ];
}

/** Packs of nothing, prices of nothing, and packs that cannot hold whole parts. */
function badPacks({ shop }: Machine, prices: PriceBook, partIds: ReadonlySet<string>): readonly Finding[] {
  return shop.tables.prices.flatMap((row) => {
    if (!partIds.has(row.part)) return [];
    const each = prices.parts.get(row.part)?.unit === "each";
    const good = row.price > 0 && row.pack > 0 && !(each && !Number.isInteger(row.pack));
    const numbers = { from_quantity: row.from_quantity, pack: row.pack, price: row.price };
    return good ? [] : [makeFinding("pack-bad", "warning", [row.part, row.supplier], numbers)];
  });
}

/** Breaks at which a larger quantity costs more each. */
function risingPrices({ partId, supplierId, breaks }: Offer): readonly Finding[] {
  return breaks.flatMap(({ from, price }, i) => {
    const before = breaks[i - 1];
    if (before === undefined || price <= before.price) return [];
    const numbers = {
      from_quantity: numberOfDecimal(from),
      price: numberOfDecimal(price),
      before: numberOfDecimal(before.price),
    };
    return [makeFinding("price-order", "warning", [partId, supplierId], numbers)];
  });
}

/** Suppliers whose money the shop cannot reckon in its own. */
function unknownMoney(offers: readonly Offer[]): readonly Finding[] {
  const without = new Map<string, { currency: string; parts: number }>();
  for (const { supplierId, currency, rate } of offers) {
    if (rate !== null) continue;
    const known = without.get(supplierId) ?? { currency, parts: 0 };
    known.parts += 1;
    without.set(supplierId, known);
  }
  return [...without].map(([supplierId, { currency, parts }]) =>
    makeFinding("price-currency", "warning", [supplierId], { currency, parts }),
  );
}

/** Tools that the ways of these parts need, and that nobody has a price for. */
function toolsWithoutCost(
  { book }: Machine,
  prices: PriceBook,
  partIds: ReadonlySet<string>,
): readonly Finding[] {
  const used = [...partIds].flatMap((partId) =>
    prices.waysOf(partId).flatMap(({ tool }) => (tool?.cost === null ? [[tool.id, partId] as const] : [])),
  );
  const told = book.tables.tooling
    .filter((row) => row.cost === null && partIds.has(row.part))
    .map((row) => [row.id, row.part] as const);
  const tools = new Map([...told, ...used].map(([tool, part]) => [`${tool} ${part}`, [tool, part]]));
  return [...tools.values()].map((subjects) => makeFinding("tool-no-cost", "warning", subjects));
}
