import type { Book, Shop, ShopRow } from "@pinwright/book";
import type { DayNumber, PartSource } from "../../model/index.ts";
import { PriceBook } from "../../parts/index.ts";
import type { WorkCalendar } from "../calendar.ts";
import { dayNumber } from "../days.ts";
import { type LotOffer, lotOffers } from "../lots/offers.ts";
import { bestOffer, type LotTerms, lotsOf, type OfferLots } from "../lots/part-lots.ts";
import type { Demand, NetDemand } from "../needs/demand.ts";
import type { BeforeLots } from "./before-lots.ts";

/** Lots of one part for runs that have the same prices. */
export interface PlannedLots {
  readonly demand: NetDemand;
  readonly demands: readonly Demand[];
  /** Run whose frozen prices these are; null: those of today. */
  readonly frozenRunId: string | null;
  /** Null: nobody says how it comes. */
  readonly found: OfferLots | null;
}

/** From whom parts come, at whose prices and how soon. */
export class Sourcing {
  readonly #shop: Shop;
  readonly #today: DayNumber;
  readonly #calendar: WorkCalendar;
  readonly #before: BeforeLots;
  readonly #prices: PriceBook;
  readonly #frozen: ReadonlyMap<string, PriceBook>;
  readonly #begin: ReadonlyMap<string, DayNumber>;
  readonly #offers = new Map<string, readonly LotOffer[]>();
  #parts: ReadonlyMap<string, number> = new Map();

  constructor(
    book: Book,
    shop: Shop,
    runs: readonly ShopRow<"runs">[],
    today: DayNumber,
    calendar: WorkCalendar,
    before: BeforeLots,
  ) {
    this.#shop = shop;
    this.#today = today;
    this.#calendar = calendar;
    this.#before = before;
    this.#prices = new PriceBook({ book, shop });
    this.#frozen = new Map(
      runs
        .filter((run) => run.state !== "planned" && shop.tables.run_prices.some((row) => row.run === run.id))
        .map((run) => [run.id, new PriceBook({ book, shop }, run.id)]),
    );
    this.#begin = new Map(runs.map((run) => [run.id, Math.max(today, dayNumber(run.begin) ?? today)]));
  }

  /** The prices of today. */
  get prices(): PriceBook {
    return this.#prices;
  }

  pricesOf(frozenRunId: string | null): PriceBook {
    return (frozenRunId === null ? undefined : this.#frozen.get(frozenRunId)) ?? this.#prices;
  }

  /** Run whose frozen prices hold for a part in a run; null: it is not frozen, or has none of the part. */
  frozenFor(runId: string, partId: string): string | null {
    const prices = this.#frozen.get(runId);
    return prices !== undefined && prices.offersOf(partId).length > 0 ? runId : null;
  }

  offers(partId: string, source: PartSource | null, frozenRunId: string | null): readonly LotOffer[] {
    const name = `${partId}\n${frozenRunId ?? ""}`;
    const known = this.#offers.get(name);
    if (known !== undefined) return known;
    const offers = lotOffers(this.pricesOf(frozenRunId), this.#shop, partId, source);
    this.#offers.set(name, offers);
    return offers;
  }

  /** Neither work nor orders of a run before this day. */
  begin(runId: string): DayNumber {
    return this.#begin.get(runId) ?? this.#today;
  }

  /** First day on which a part can be there for a run; null: nobody says how it comes. */
  firstArrival({ partId, source }: NetDemand, runId: string): DayNumber | null {
    const offers = this.offers(partId, source, this.frozenFor(runId, partId));
    if (offers.length === 0) return null;
    return Math.min(...offers.map((offer) => this.#arrival(partId, offer, this.begin(runId))));
  }

  /**
   * Lots of all parts. What an order costs is shared by the parts that come from its supplier, since they are in the same
   * orders.
   */
  allLots(net: readonly NetDemand[]): readonly PlannedLots[] {
    const parts = new Map<string, number>();
    for (const { source } of net) {
      const id = source?.supplierId ?? null;
      if (id !== null) parts.set(id, (parts.get(id) ?? 0) + 1);
    }
    this.#parts = parts;
    return net.flatMap((demand) => this.#lots(demand));
  }

  /** Lots of a part, apart for runs with frozen prices of their own. */
  #lots(demand: NetDemand): readonly PlannedLots[] {
    const groups = new Map<string, Demand[]>();
    for (const own of demand.demands) {
      const name = this.frozenFor(own.runId, demand.partId) ?? "";
      const group = groups.get(name);
      if (group === undefined) groups.set(name, [own]);
      else group.push(own);
    }
    return [...groups].map(([name, demands]) => this.#lotsFor(demand, demands, name === "" ? null : name));
  }

  #lotsFor(demand: NetDemand, demands: readonly Demand[], frozenRunId: string | null): PlannedLots {
    const { partId, colour, node, source } = demand;
    const begin = Math.min(...demands.map(({ runId }) => this.begin(runId)));
    const terms: LotTerms = {
      today: this.#today,
      holdingPct: this.#shop.numbers.holding_pct,
      orderDay: (due, leadDays) => Math.max(begin, this.#calendar.workDayUpTo(null, due - leadDays)),
      lotCost: ({ setupCost, orderCost, supplierId }) =>
        setupCost + orderCost / BigInt(Math.max(1, this.#parts.get(supplierId ?? "") ?? 1)),
      arrival: (offer) => this.#arrival(partId, offer, begin),
    };
    const unit = node.unit === "each" ? "each" : "other";
    const found = this.offers(partId, source, frozenRunId).map((offer) =>
      lotsOf(partId, colour, unit, demands, offer, terms),
    );
    return { demand, demands, frozenRunId, found: bestOffer(found, terms) };
  }

  #arrival(partId: string, offer: LotOffer, begin: DayNumber): DayNumber {
    return begin + this.#before.days(partId, offer, this.#today);
  }
}
