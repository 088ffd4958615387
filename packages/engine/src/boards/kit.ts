import type { BookRow, ShopRow } from "@pinwright/book";
import { compareText, decimal, timesDecimal } from "@pinwright/kernel";
import {
  type BoardKit,
  type BoardKitLine,
  groupRows,
  labelsOf,
  type Machine,
  rowsById,
} from "../model/index.ts";
import { placementsOf } from "./joints.ts";
import { stuffingOrder } from "./stuffing/order.ts";

/** Kinds of parts that are lost and spoilt by the share and least number of small parts. */
const SMALL: ReadonlySet<BookRow<"parts">["kind"]> = new Set(["electronic", "contact"]);

/**
 * How many more of a part are laid out than the boards take: small parts by the shop's attrition, at least its least
 * number; all others by the shop's share of spoilt parts; a part with a share of its own by that. Rounded up.
 */
export function attrition(
  { shop }: Pick<Machine, "shop">,
  part: BookRow<"parts"> | undefined,
  needed: number,
): number {
  const { part_attrition_pct, part_attrition_each, scrap_pct } = shop.numbers;
  if (needed === 0) return 0;
  const isSmall = part !== undefined && SMALL.has(part.kind);
  const share = part?.scrap_pct ?? (isSmall ? part_attrition_pct : scrap_pct);
  const least = isSmall && part.scrap_pct === null ? part_attrition_each : 0;
  return Math.max(Math.ceil(roundedPercent(needed, share)), least);
}

/** Of 50, 2 per cent are 1, and not a little more for the sake of binary fractions. */
const roundedPercent = (needed: number, share: number): number => Number(((needed * share) / 100).toFixed(6));

/**
 * The packs to open for a quantity: of the offer whose whole packs cost least at this quantity, supplier by supplier
 * in code-point order when equal. Prices of suppliers with other currencies are compared by the shop's rates. Null: no
 * price is known, or packs of nothing.
 */
export function packFor(
  { shop }: Pick<Machine, "shop">,
  partId: string,
  quantity: number,
): BoardKitLine["pack"] {
  const { prices, suppliers, currencies } = shop.tables;
  const offers = prices.filter((row) => row.part === partId && row.pack > 0);
  const rateOf = (supplierId: string): number => {
    const currency = suppliers.find((row) => row.id === supplierId)?.currency;
    return currencies.find((row) => row.id === currency)?.rate ?? 1;
  };
  const best = [...groupRows(offers, (row) => row.supplier)]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([supplierId, rows]) => {
      const row = breakFor(rows, quantity);
      if (row === undefined) return [];
      const packs = Math.max(1, Math.ceil(roundedPercent(quantity / row.pack, 100)));
      const each = timesDecimal(decimal(row.price), decimal(rateOf(supplierId)));
      return [{ supplierId, size: row.pack, packs, cost: timesDecimal(each, decimal(packs * row.pack)) }];
    })
    .reduce<{ supplierId: string; size: number; packs: number; cost: bigint } | null>(
      (least, offer) => (least === null || offer.cost < least.cost ? offer : least),
      null,
    );
  return best === null ? null : { supplierId: best.supplierId, size: best.size, packs: best.packs };
}

/** The price break that holds at a quantity; below the first one, the first. */
function breakFor(rows: readonly ShopRow<"prices">[], quantity: number): ShopRow<"prices"> | undefined {
  const sorted = rows.toSorted((a, b) => a.from_quantity - b.from_quantity);
  return sorted.findLast((row) => row.from_quantity <= quantity) ?? sorted[0];
}

/**
 * What is laid out for a batch of boards of one type: the bare boards, then box by box in the order in which the parts
 * are first wanted, with what is lost and spoilt on top, and the packs to open.
 * @param boards boards in the batch
 * @throws RangeError when `boards` is not a whole number from 0 up.
 */
export function boardKit(machine: Machine, typeId: string, boards: number): BoardKit {
  if (!Number.isInteger(boards) || boards < 0)
    throw new RangeError(`boards is ${boards}, expected a whole number from 0 up`);
  const parts = rowsById(machine.book.tables.parts);
  const groups = groupRows(stuffingOrder(placementsOf(machine, typeId)), (row) => row.part);
  const bare = machine.book.tables.board_types.find((row) => row.id === typeId)?.part ?? null;
  const lineOf = (box: number, partId: string, perBoard: number, references: readonly string[]) => {
    const part = parts.get(partId);
    const needed = perBoard * boards;
    const extra = attrition(machine, part, needed);
    return {
      box,
      partId,
      labels: part === undefined ? { en: partId, zh: partId } : labelsOf(part, partId),
      value: part?.value ?? "",
      references,
      perBoard,
      needed,
      extra,
      total: needed + extra,
      pack: needed === 0 ? null : packFor(machine, partId, needed + extra),
    };
  };
  const lines = [...groups].map(([partId, rows], i) =>
    lineOf(
      i + 1,
      partId,
      rows.length,
      rows.map((row) => row.reference),
    ),
  );
  return {
    typeId,
    boards,
    lines: bare === null || groups.size === 0 ? lines : [lineOf(0, bare, 1, []), ...lines],
  };
}
