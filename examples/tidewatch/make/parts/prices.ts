import { type BookRow, SHOP_TABLES, type ShopRow } from "@pinwright/book";
import { fillRows } from "../author.ts";
import { CNY_EUR, type Offer } from "./part-kit.ts";

type Kind = BookRow<"parts">["kind"];

/** What a part costs of which nobody has said more: by its kind. */
const USUAL: Readonly<Record<Kind, readonly Offer[]>> = {
  electronic: [
    ["components", 0.24, 10],
    ["components-b", 0.26, 10],
  ],
  connector: [
    ["components", 0.19, 10],
    ["components-b", 0.17, 100],
  ],
  contact: [
    ["components", 0.031, 100],
    ["components-b", 0.026, 1000],
  ],
  wire: [["wire", 0.16, 100]],
  cable: [["wire", 0.95, 50]],
  screw: [
    ["hardware", 0.024, 200],
    ["hardware-b", 0.017, 1000],
  ],
  hardware: [
    ["hardware", 0.08, 100],
    ["hardware-b", 0.065, 500],
  ],
  sheet: [["timber", 24]],
  turned: [["turner", 1.6]],
  "laser-cut": [["metalwork", 2.4]],
  moulded: [["moulder", 0.5 / CNY_EUR, 10]],
  wood: [["timber", 3.5]],
  mechanism: [["metalwork", 18]],
  "bought-in": [["components", 4.2]],
  board: [["boards", 2.4, 5]],
  consumable: [["hardware", 0.6]],
};

type Break = readonly [pieces: number, factor: number];

/** Where work is set up for each lot, a small lot is dear. */
const BY_LOT: readonly Break[] = [
  [0, 1.9],
  [25, 1.2],
  [100, 1],
  [400, 0.9],
  [1500, 0.81],
];
const FROM_MOULD: readonly Break[] = [
  [0, 1.5],
  [100, 1.14],
  [500, 1],
  [2500, 0.88],
];
/** Off the shelf: by full packs. */
const BY_PACK: readonly Break[] = [
  [0, 1.3],
  [10, 1],
  [50, 0.86],
];

const LOT_WORK: ReadonlySet<string> = new Set([
  "metalwork",
  "turner",
  "springs",
  "coils",
  "plastics",
  "glass",
  "print",
  "boards",
  "rubber",
  "packing",
]);

const breaksOf = (supplier: string, pack: number): readonly Break[] => {
  if (supplier === "moulder") return FROM_MOULD;
  if (LOT_WORK.has(supplier)) return BY_LOT;
  return BY_PACK.map(([packs, factor]) => [packs * pack, factor] as const);
};

/** Three figures that count, as a price list has them, and never finer than a hundredth of a cent. */
const rounded = (price: number): number => {
  const step = Math.max(1e-4, 10 ** (Math.floor(Math.log10(price)) - 2));
  return Number((Math.round(price / step) * step).toFixed(4));
};

/** The suppliers' numbers for what is in their lists: five figures that follow from the part's name. */
function listNumber(id: string): string {
  let sum = 7;
  for (const letter of id) sum = (sum * 31 + (letter.codePointAt(0) ?? 0)) % 90000;
  return String(10000 + sum);
}

const pricesOfOffer = (
  part: string,
  [supplier, price, pack = 1, lead]: Offer,
): Partial<ShopRow<"prices">>[] =>
  breaksOf(supplier, pack).map(([from_quantity, factor]) => ({
    part,
    supplier,
    from_quantity,
    price: rounded(price * factor),
    pack,
    lead_days: lead ?? null,
    order_number: LOT_WORK.has(supplier) || supplier === "moulder" ? "" : listNumber(`${supplier} ${part}`),
  }));

/** Prices with their breaks; the ones that are given, and usual ones for all other parts that are not made here. */
export function pricesOf(
  parts: readonly Pick<BookRow<"parts">, "id" | "kind" | "source">[],
  given: ReadonlyMap<string, readonly Offer[]>,
): ShopRow<"prices">[] {
  return fillRows<ShopRow<"prices">>(
    SHOP_TABLES.prices,
    parts.flatMap(({ id, kind, source }) => {
      const own = given.get(id) ?? [];
      const offers = own.length > 0 || source === "make" ? own : USUAL[kind];
      return offers.flatMap((offer) => pricesOfOffer(id, offer));
    }),
  );
}
