import type { CellRows, CellTables } from "@pinwright/book";
import { type ArrivedFact, type FactBody, SHOP_ID } from "@pinwright/contract";
import { byArrival } from "@pinwright/engine";
import type { Store } from "@pinwright/store";
import type { HeldBook, Shelf } from "../books/shelf.ts";
import { Refused } from "../http/problem.ts";
import { KEPT_TABLES } from "../releases/kept-shop.ts";
import { releasedTables } from "../service-book/past-book.ts";
import type { GateCase } from "../threads/messages.ts";
import { PastTests } from "./past-tests.ts";

type Begun = Extract<FactBody, { kind: "begun" }>;

/** Tables that tests speak of: what is not there cannot be named. */
const TEST_TABLES = ["board_types", "harnesses", "mechanism_types", "options"] as const;

/** A book as it was released, with what the release keeps of the shop. */
interface Released {
  readonly held: HeldBook;
  readonly shop: CellTables;
  readonly hash: string;
}

/** A book as it is for some units. */
interface HeldFor {
  readonly held: HeldBook;
  /** The release that it is of; null: it is the book as it is now. */
  readonly release: Released | null;
  readonly options: string[];
  readonly revision: string;
}

/** A unit's case, and what was recorded, by arrival. */
export interface UnitCase {
  readonly given: GateCase;
  readonly arrived: readonly ArrivedFact[];
  readonly recalls: readonly ArrivedFact[];
}

/** Revisions whose book is kept in memory. */
const KEPT_RELEASES = 3;

/** Gathers everything that the release of a unit is judged by. */
export class GateFacts {
  readonly #store: Store;
  readonly #shelf: Shelf;
  readonly #past: PastTests;
  /** Books as they were released, by the hash of the release. */
  readonly #released = new Map<string, Released>();
  /** Numbers of tables of the shop: one that did not change keeps its number. */
  readonly #marks = new WeakMap<CellRows, number>();
  #marked = 0;

  constructor(store: Store, shelf: Shelf) {
    this.#store = store;
    this.#shelf = shelf;
    this.#past = new PastTests(store.books);
  }

  /** The case of a unit without the tables of its lines, for a thread that may know them. */
  async of(unit: string): Promise<UnitCase> {
    const { records } = this.#store;
    const [arrived, recalls] = await Promise.all([records.ofUnit(unit), records.recallFacts()]);
    if (arrived.length === 0) throw new Refused("not-found", `There is no unit ${unit}.`);
    const begun = arrived.flatMap(({ fact: { body } }) => (body.kind === "begun" ? [body] : []));
    const root = begun.find((body) => body.unit === unit);
    const books = await this.#books([...(root === undefined ? [] : [root]), ...begun]);
    const shop = this.#shopMark((await this.#shelf.now(SHOP_ID)).tables);
    const lines = [...books].map(([book, { held, release, options, revision }]) => ({
      ...{ book, options, revision, tables: null, shop: null },
      key: JSON.stringify([
        book,
        ...(release === null ? [held.info.changeNo, shop] : [release.hash]),
        [...options].sort(),
      ]),
    }));
    const past = await this.#pasts(begun, books);
    return {
      given: { unit, facts: byArrival(arrived), recalls: byArrival(recalls), lines, past },
      arrived,
      recalls,
    };
  }

  /** The case with the tables of those lines that a thread does not know. */
  async withTables(given: GateCase, cold: readonly string[]): Promise<GateCase> {
    const shop = await this.#shelf.now(SHOP_ID);
    const lines = await Promise.all(
      given.lines.map(async (line) => {
        if (!cold.includes(line.key)) return line;
        const release = await this.#releaseOf(line.book, line.revision);
        const { tables } = release?.held ?? (await this.#shelf.now(line.book));
        const kept = release?.shop ?? shop.tables;
        return { ...line, tables: [...this.#shelf.jsonOf(tables)], shop: [...this.#shelf.jsonOf(kept)] };
      }),
    );
    return { ...given, lines };
  }

  /** Books that units are of, each with the options and in the revision of the first of them. */
  async #books(begun: readonly Begun[]) {
    const books = new Map<string, HeldFor>();
    for (const { book, options, revision } of begun) {
      if (books.has(book) || (await this.#store.books.info(book)) === null) continue;
      const release = await this.#releaseOf(book, revision);
      books.set(book, { held: release?.held ?? (await this.#shelf.now(book)), release, options, revision });
    }
    return books;
  }

  /** A book as it was released under a name; null: nothing was. */
  async #releaseOf(book: string, name: string): Promise<Released | null> {
    const outcome = await this.#store.releases.get(book, name);
    if ("refused" in outcome) return null;
    const { hash, changeNo } = outcome.done;
    const known = this.#released.get(hash);
    if (known !== undefined) return known;
    const { info } = await this.#shelf.now(book);
    const [tables, shop] = await Promise.all([
      releasedTables(this.#store, book, name, "book"),
      releasedTables(this.#store, book, name, "shop"),
    ]);
    const release: Released = { held: { info: { ...info, changeNo }, tables }, shop, hash };
    const [oldest] = this.#released.keys();
    if (oldest !== undefined && this.#released.size >= KEPT_RELEASES) this.#released.delete(oldest);
    this.#released.set(hash, release);
    return release;
  }

  /** Number of the change that a revision is of: of a release, or `@12`; null: it names none. */
  async #changeOf(book: string, revision: string): Promise<number | null> {
    const no = /^@(\d+)$/.exec(revision)?.[1];
    if (no !== undefined) return Number(no);
    const outcome = await this.#store.releases.get(book, revision);
    return "refused" in outcome ? null : outcome.done.changeNo;
  }

  async #pasts(
    begun: readonly Begun[],
    books: ReadonlyMap<string, Pick<HeldFor, "held">>,
  ): Promise<GateCase["past"]> {
    const past = new Map<string, GateCase["past"][number]>();
    for (const { book, revision } of begun) {
      const held = books.get(book)?.held;
      const no = await this.#changeOf(book, revision);
      // Two revisions may be of one change: the thread looks tests up by the revision's name.
      const key = JSON.stringify([book, revision, no, held?.info.changeNo]);
      if (held === undefined || no === null || past.has(key)) continue;
      const rows = await this.#past.at(book, no, held);
      if (rows === null) continue;
      const named = TEST_TABLES.flatMap((name) => {
        const table = held.tables.get(name);
        return table === undefined ? [] : [[name, table] as const];
      });
      const tables = this.#shelf.jsonOf(new Map([["tests", rows], ...named]));
      past.set(key, { book, revision, key, tables: [...tables] });
    }
    return [...past.values()];
  }

  #shopMark(tables: HeldBook["tables"]): string {
    return KEPT_TABLES.map((name) => {
      const rows = tables.get(name);
      if (rows === undefined) return 0;
      const mark = this.#marks.get(rows) ?? ++this.#marked;
      this.#marks.set(rows, mark);
      return mark;
    }).join(" ");
  }
}
