import type { BookRow, ShopRow } from "@pinwright/book";
import type { BillWhy } from "@pinwright/engine";
import { type Decimal, timesDecimal } from "@pinwright/kernel";
import { type Subject, subjectOf } from "../findings/subject-of.ts";
import type { Model } from "../model.ts";
import { namedSupplier, partRows } from "../parts/named-part.ts";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** Something that contains it directly. */
export interface UsedIn extends NamedId {
  readonly why: BillWhy;
  readonly colour: string;
  /** In one of what contains it. */
  readonly quantity: Decimal;
  /** In one machine, by this way; null: what contains it runs in a circle. */
  readonly total: Decimal | null;
  /** Where, the first ones. */
  readonly places: readonly Subject[];
  readonly count: number;
}

/** A price of the shop. */
export interface PartPrice {
  readonly supplier: NamedId | null;
  readonly currency: string;
  readonly fromQuantity: number;
  readonly price: number;
  readonly pack: number;
  /** Days, those of the supplier where the price says nothing. */
  readonly leadDays: number;
  readonly orderNumber: string;
}

/** What the book and the shop say of one thing of the bill. */
export interface PartAbout {
  readonly part: BookRow<"parts"> | null;
  readonly usedIn: readonly UsedIn[];
  readonly prices: readonly PartPrice[];
  readonly tooling: readonly BookRow<"tooling">[];
}

const SHOWN_PLACES = 40;

function usedIn(model: Model, id: string): readonly UsedIn[] {
  const { nodes, lines, totals } = model.line.parts.bill;
  return lines
    .filter(({ childId }) => childId === id)
    .map(({ parentId, why, colour, quantity, at }) => {
      const parents = totals.get(parentId);
      const labels = nodes.get(parentId)?.labels;
      return {
        id: parentId,
        label: labels?.en ?? "",
        labelZh: labels?.zh ?? "",
        why,
        colour,
        quantity,
        total: parents === undefined ? null : timesDecimal(parents, quantity),
        places: at.slice(0, SHOWN_PLACES).map((place) => subjectOf(model, place)),
        count: at.length,
      };
    });
}

function priceOf(model: Model, row: ShopRow<"prices">): PartPrice {
  const supplier = model.shop.tables.suppliers.find(({ id }) => id === row.supplier);
  return {
    supplier: namedSupplier(model, row.supplier),
    currency: supplier?.currency ?? "",
    fromQuantity: row.from_quantity,
    price: row.price,
    pack: row.pack,
    leadDays: row.lead_days ?? supplier?.lead_days ?? 0,
    orderNumber: row.order_number,
  };
}

/** One thing of the bill; no entry when neither bill nor book has it. */
export const partAbout = view<{ readonly id: string }, PartAbout>({
  uses: ({ line, book, shop }) => [
    line.parts.bill,
    line.machine.items,
    book.tables.parts,
    book.tables.tooling,
    shop.tables.prices,
    shop.tables.suppliers,
  ],
  entries: (model, { id }) => {
    const node = model.line.parts.bill.nodes.get(id);
    const part = partRows(model).get(node?.partId ?? id) ?? null;
    if (node === undefined && part === null) return new Map();
    const partId = part?.id;
    return new Map([
      [
        "",
        {
          part,
          usedIn: usedIn(model, id),
          prices: model.shop.tables.prices
            .filter((row) => row.part === partId)
            .toSorted((a, b) => a.from_quantity - b.from_quantity)
            .map((row) => priceOf(model, row)),
          tooling: model.book.tables.tooling.filter((row) => row.part === partId),
        },
      ],
    ]);
  },
  restsInPreview: true,
});
