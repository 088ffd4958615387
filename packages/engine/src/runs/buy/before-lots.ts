import type { Book, BookRow, Shop } from "@pinwright/book";
import { type DayNumber, groupRows } from "../../model/index.ts";
import { dayNumber } from "../days.ts";
import type { LotOffer } from "../lots/offers.ts";

/** Days in which a first article is looked at and decided on: common practice, no source. */
const DECIDE_DAYS = 1;

/** What has to be there before a lot of a part can be ordered. */
export class BeforeLots {
  readonly #marked: ReadonlySet<string>;
  readonly #samples: ReadonlyMap<string, readonly Sample[]>;
  readonly #parts: ReadonlyMap<string, BookRow<"parts">>;
  readonly #madeBefore: ReadonlySet<string>;

  constructor(book: Book, shop: Shop, parts: ReadonlyMap<string, BookRow<"parts">>) {
    this.#parts = parts;
    this.#marked = new Set(book.tables.dimensions.map((row) => row.part));
    this.#samples = groupRows(shop.tables.samples, (row) => row.part);
    const cancelled = new Set(
      shop.tables.orders.filter((o) => o.state === "cancelled" || o.state === "draft").map((o) => o.id),
    );
    this.#madeBefore = new Set([
      ...shop.tables.order_lines.filter((line) => !cancelled.has(line.order)).map((line) => line.part),
      ...shop.tables.movements.filter((row) => row.kind === "received").map((row) => row.part),
    ]);
  }

  /** Whether a tool has to be ordered: nothing was ever ordered or received of what it makes. */
  lacksTool(partId: string, offer: LotOffer): boolean {
    return offer.tool !== null && !this.#madeBefore.has(partId);
  }

  /**
   * Whether a first article has still to be approved: the designer has marked dimensions of the part, and the latest
   * sample of its present revision is not approved.
   */
  lacksApproval(partId: string): boolean {
    return this.#marked.has(partId) && this.#latest(partId)?.state !== "approved";
  }

  /** Days from the day of ordering until a lot is there: tool, first article and its decision, then the lot. */
  days(partId: string, offer: LotOffer, today: DayNumber): number {
    return this.toolDays(partId, offer) + this.articleDays(partId, offer, today) + offer.leadDays;
  }

  toolDays(partId: string, offer: LotOffer): number {
    return this.lacksTool(partId, offer) ? (offer.tool?.leadDays ?? 0) : 0;
  }

  /** Days from when there is a tool until the first article is decided on; less when it was asked for or has come. */
  articleDays(partId: string, offer: LotOffer, today: DayNumber): number {
    if (!this.lacksApproval(partId)) return 0;
    const latest = this.#latest(partId);
    if (latest?.state === "received") return DECIDE_DAYS;
    const asked = latest?.state === "asked" && latest.asked !== "" ? dayNumber(latest.asked) : null;
    const left = asked === null ? offer.leadDays : Math.max(0, asked + offer.leadDays - today);
    return left + DECIDE_DAYS;
  }

  #latest(partId: string): Sample | undefined {
    const revision = this.#parts.get(partId)?.revision ?? "";
    return (this.#samples.get(partId) ?? [])
      .filter((row) => row.revision === revision)
      .toSorted((a, b) => dayOf(a) - dayOf(b))
      .at(-1);
  }
}

type Sample = Shop["tables"]["samples"][number];

const dayOf = ({ asked, received, decided }: Sample): number =>
  [decided, received, asked].reduce(
    (day, text) => Math.max(day, text === "" ? 0 : (dayNumber(text) ?? 0)),
    0,
  );
