import type { BookRow, ShopRow } from "@pinwright/book";
import { compareText, type Decimal, decimal, SharedMemory } from "@pinwright/kernel";
import { groupRows, type Languages, labelsOf, type Machine, rowsById } from "../../model/index.ts";
import type { Offer } from "./offer.ts";

/** A way of getting a part, from the shop's rows or from how the book says that it comes. */
export interface Way {
  readonly partId: string;
  /** Name of the row of `ways`; null: what the book says by itself. */
  readonly wayId: string | null;
  readonly kind: "make" | "have-made" | "buy";
  readonly labels: Languages;
  /** Suppliers whose price it costs, the cheapest counting; null: nobody is paid for it. */
  readonly offers: readonly Offer[] | null;
  /** Supplier that the row names. */
  readonly supplierId: string | null;
  /** Material and outside work for one, in the shop's currency. */
  readonly unitCost: Decimal;
  /** Own work for one. */
  readonly minutes: Decimal;
  readonly setupCost: Decimal;
  readonly setupMinutes: Decimal;
  readonly tool: Tool | null;
  readonly leadDays: number | null;
  readonly chosen: boolean;
}

export interface Tool {
  readonly id: string;
  readonly labels: Languages;
  /** Null: nobody knows yet. */
  readonly cost: Decimal | null;
  /** Parts that it makes; null: no limit. */
  readonly life: number | null;
  readonly leadDays: number;
}

/**
 * What the shop knows of prices, money and ways, read once and asked often. A pack of nothing and a price of nothing
 * cannot be used; they are left out and told of by `isBad`.
 * @param runId a run from whose frozen prices to read, where it has some; else the prices of today
 */
export class PriceBook {
  readonly parts: ReadonlyMap<string, BookRow<"parts">>;
  /** The shop's own currency, as an ISO 4217 code; blank: nobody has said. */
  readonly own: string;
  readonly labourRate: Decimal;
  readonly #rows: ReadonlyMap<string, readonly PriceRow[]>;
  readonly #suppliers: ReadonlyMap<string, ShopRow<"suppliers">>;
  readonly #rates: ReadonlyMap<string, Decimal>;
  readonly #known = new Map<string, { readonly offers: readonly Offer[]; ways: readonly Way[] | null }>();
  readonly #ways: ReadonlyMap<string, readonly ShopRow<"ways">[]>;
  readonly #tools: ReadonlyMap<string, Tool>;

  constructor({ book, shop }: Pick<Machine, "book" | "shop">, runId: string | null = null) {
    const { tables } = shop;
    this.parts = rowsById(book.tables.parts);
    this.own = ownCurrency(shop.tables);
    this.labourRate = decimal(shop.numbers.labour_rate);
    const frozen = tables.run_prices.filter((row) => row.run === runId);
    const rows: readonly PriceRow[] =
      frozen.length === 0 ? tables.prices : frozen.map((row) => ({ ...row, order_number: "" }));
    const rates = new Map(tables.currencies.map(({ id, rate }) => [id, decimal(rate)]));
    if (this.own !== "") rates.set(this.own, decimal(1));
    this.#rows = groupRows(rows, (row) => row.part);
    this.#suppliers = rowsById(tables.suppliers);
    this.#rates = rates;
    this.#ways = groupRows(tables.ways, (row) => row.part);
    this.#tools = new Map(book.tables.tooling.map((row) => [row.id, toolOf(row)]));
  }

  /** Offers of a part, by supplier in code-point order. */
  offersOf(partId: string): readonly Offer[] {
    return this.#of(partId).offers;
  }

  /** Whether some price of a part cannot be used. */
  isBad(partId: string): boolean {
    return this.#rows.get(partId)?.some((row) => !isUsable(row)) ?? false;
  }

  /**
   * Ways of getting a part: the shop's rows in code-point order of their names, after them what the book says by itself
   * when no row is of that kind.
   */
  waysOf(partId: string): readonly Way[] {
    const known = this.#of(partId);
    known.ways ??= this.#findWays(partId, known.offers);
    return known.ways;
  }

  /** What is read of a part once it is asked for. */
  #of(partId: string): { readonly offers: readonly Offer[]; ways: readonly Way[] | null } {
    const known = this.#known.get(partId);
    if (known !== undefined) return known;
    const offers = readOffers(this.#rows.get(partId) ?? [], this.#suppliers, this.#rates);
    const fresh = { offers, ways: null };
    this.#known.set(partId, fresh);
    return fresh;
  }

  #findWays(partId: string, offers: readonly Offer[]): readonly Way[] {
    const rows = this.#ways.get(partId) ?? [];
    const ways = rows
      .map((row) => this.#wayOf(row, offers))
      .sort((a, b) => compareText(a.wayId ?? "", b.wayId ?? ""));
    const part = this.parts.get(partId);
    if (part === undefined || ways.some(({ kind }) => kind === part.source)) return ways;
    const named = new Set(ways.map(({ supplierId }) => supplierId));
    const others = offers.filter(({ supplierId }) => !named.has(supplierId));
    // What no supplier offers beside the rows is no way of its own.
    if (ways.length > 0 && part.source !== "make" && others.length === 0) return ways;
    return [
      ...ways,
      {
        ...PLAIN,
        partId,
        kind: part.source,
        labels: labelsOf(part, part.id),
        offers: part.source === "make" ? null : others,
      },
    ];
  }

  #wayOf(row: ShopRow<"ways">, offers: readonly Offer[]): Way {
    const own = row.supplier === null ? null : offers.filter((o) => o.supplierId === row.supplier);
    const free = row.supplier === null && row.kind !== "make" && row.unit_cost === 0 ? offers : null;
    return {
      partId: row.part,
      wayId: row.way,
      kind: row.kind,
      labels: labelsOf(row, row.way),
      // A price is asked for where somebody is named, or where nothing else says what it costs.
      offers: own !== null && own.length === 0 && row.unit_cost > 0 ? null : (own ?? free),
      supplierId: row.supplier,
      unitCost: decimal(row.unit_cost),
      minutes: decimal(row.minutes),
      setupCost: decimal(row.setup_cost),
      setupMinutes: decimal(row.setup_minutes),
      tool: row.tooling === "" ? null : (this.#tools.get(row.tooling) ?? { ...NO_TOOL, id: row.tooling }),
      leadDays: row.lead_days,
      chosen: row.chosen === "yes",
    };
  }
}

const PLAIN: Omit<Way, "partId" | "kind" | "labels" | "offers"> = {
  wayId: null,
  supplierId: null,
  unitCost: 0n,
  minutes: 0n,
  setupCost: 0n,
  setupMinutes: 0n,
  tool: null,
  leadDays: null,
  chosen: false,
};

/** A tool that the book does not know. */
const NO_TOOL: Omit<Tool, "id"> = { labels: { en: "", zh: "" }, cost: null, life: null, leadDays: 0 };

const toolOf = (row: BookRow<"tooling">): Tool => ({
  id: row.id,
  labels: labelsOf(row, row.id),
  cost: row.cost === null ? null : decimal(row.cost),
  life: row.life,
  leadDays: row.lead_days ?? 0,
});

/** The one that is said to be the shop's own; else the only one that its suppliers take. */
export function ownCurrency({
  currencies,
  suppliers,
}: Pick<Machine["shop"]["tables"], "currencies" | "suppliers">): string {
  const said = currencies.filter(({ own }) => own === "yes").map(({ id }) => id);
  const [first] = said.sort(compareText);
  if (first !== undefined) return first;
  const taken = new Set(suppliers.map(({ currency }) => currency));
  return taken.size === 1 ? ([...taken][0] ?? "") : "";
}

type PriceRow = Pick<
  ShopRow<"prices">,
  "part" | "supplier" | "from_quantity" | "price" | "pack" | "lead_days" | "order_number"
> & {
  /** Of a frozen price; else that of the currency. */
  readonly rate?: number;
};

const isUsable = ({ price, pack }: Pick<PriceRow, "price" | "pack">): boolean => price > 0 && pack > 0;

/** Offers of one part from its rows. */
function readOffers(
  rows: readonly PriceRow[],
  suppliers: ReadonlyMap<string, ShopRow<"suppliers">>,
  rates: ReadonlyMap<string, Decimal>,
): readonly Offer[] {
  const bySupplier = groupRows(rows.filter(isUsable), (row) => row.supplier);
  const offers = [...bySupplier.values()].flatMap((group): readonly Offer[] => {
    const sorted = [...group].sort((a, b) => a.from_quantity - b.from_quantity);
    const [first] = sorted;
    if (first === undefined) return [];
    const supplier = suppliers.get(first.supplier);
    const currency = supplier?.currency ?? "";
    return [
      {
        partId: first.part,
        supplierId: first.supplier,
        currency,
        rate: first.rate === undefined ? (rates.get(currency) ?? null) : decimal(first.rate),
        leadDays: first.lead_days ?? supplier?.lead_days ?? 0,
        orderNumber: sorted.find((row) => row.order_number !== "")?.order_number ?? "",
        breaks: sorted.map((row) => ({
          from: decimal(row.from_quantity),
          price: decimal(row.price),
          pack: decimal(row.pack),
        })),
      },
    ];
  });
  return offers.sort((a, b) => compareText(a.supplierId, b.supplierId));
}

const books = new SharedMemory<readonly ShopRow<"prices">[], PriceBook>();

/** The price book of today's prices, shared by all who ask for as long as nothing in it has changed. */
export function priceBook({ book, shop }: Pick<Machine, "book" | "shop">): PriceBook {
  const { prices, run_prices, suppliers, currencies, ways } = shop.tables;
  const { parts, tooling } = book.tables;
  const inputs = [run_prices, suppliers, currencies, ways, parts, tooling, shop.numbers.labour_rate];
  return books.ask(prices, inputs, () => new PriceBook({ book, shop }));
}
