import { applyChanges, type CellRows, type Cells, type CellTables } from "@pinwright/book";
import type { BookInfo, ChangeSet } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import { done, Refused } from "../http/problem.ts";
import type { TableJson } from "../threads/cells-json.ts";

/** Books that are kept in memory; the one that was asked for longest ago goes first. */
const KEPT = 12;
/** Sets that are caught up with; beyond, the book is read anew. */
const CATCH_UP = 200;

/** A book as it stood at one change number. */
export interface HeldBook {
  readonly info: BookInfo;
  readonly tables: CellTables;
}

const encoder = new TextEncoder();

/**
 * Books in memory, so that nobody waits while one is read whole. The store stays the truth: its change number is
 * asked each time, and sets that are missing here, also those of another server on the same store, are made up for.
 */
export class Shelf {
  readonly #store: Store;
  readonly #held = new Map<string, HeldBook>();
  readonly #reading = new Map<string, Promise<HeldBook>>();
  readonly #tables = new WeakMap<CellRows, Uint8Array>();
  readonly #rows = new WeakMap<Cells, string>();

  constructor(store: Store) {
    this.#store = store;
  }

  /** The book as it is now. */
  async now(book: string): Promise<HeldBook> {
    const wanted = await this.#store.books.info(book);
    if (wanted === null) throw new Refused("not-found", `There is no book ${book}.`);
    let held = this.#held.get(book);
    if (held !== undefined && held.info.changeNo < wanted.changeNo) {
      if (wanted.changeNo - held.info.changeNo <= CATCH_UP) {
        const sets = done(await this.#store.books.since(book, held.info.changeNo, CATCH_UP), `book ${book}`);
        for (const set of sets) this.took(book, set);
        held = this.#held.get(book);
      } else held = undefined;
    }
    if (held === undefined || held.info.changeNo < wanted.changeNo) held = await this.#read(book);
    const now = { info: { ...wanted, changeNo: held.info.changeNo }, tables: held.tables };
    this.#keep(book, now);
    return now;
  }

  /** A set was made: the book in memory follows, if it stands just before. */
  took(book: string, set: ChangeSet): void {
    const held = this.#held.get(book);
    if (held === undefined || set.no !== held.info.changeNo + 1) return;
    const { tables } = applyChanges(held.tables, set.changes);
    if (tables === null) this.#held.delete(book);
    else this.#held.set(book, { info: { ...held.info, changeNo: set.no, changedAt: set.at }, tables });
  }

  /** The tables of a book as JSON each. What did not change is the same bytes as before. */
  jsonOf(tables: CellTables): readonly TableJson[] {
    return [...tables].map(([name, rows]) => ({ name, json: this.#tableJson(rows) }));
  }

  /** The tables of a book as one JSON object, in pieces. */
  pieces(tables: CellTables): readonly Uint8Array[] {
    const parts = this.jsonOf(tables).flatMap(({ name, json }, i) => [
      encoder.encode(`${i === 0 ? "" : ","}${JSON.stringify(name)}:`),
      json,
    ]);
    return [encoder.encode("{"), ...parts, encoder.encode("}")];
  }

  /** Reads a book and makes its pieces, a table at a time, so that nobody has to wait for the first reader's. */
  async warm(book: string): Promise<void> {
    const { tables } = await this.now(book);
    for (const rows of tables.values()) {
      this.#tableJson(rows);
      await new Promise(setImmediate);
    }
  }

  #read(book: string): Promise<HeldBook> {
    const reading =
      this.#reading.get(book) ??
      this.#store.books
        .rows(book)
        .then((outcome) => done(outcome, `book ${book}`))
        .finally(() => this.#reading.delete(book));
    this.#reading.set(book, reading);
    return reading;
  }

  #keep(book: string, held: HeldBook): void {
    const known = this.#held.get(book);
    if (known !== undefined && known.info.changeNo > held.info.changeNo) return;
    // Put last: the first one of a map is the one that was asked for longest ago.
    this.#held.delete(book);
    this.#held.set(book, held);
    for (const oldest of this.#held.keys()) {
      if (this.#held.size <= KEPT) break;
      this.#held.delete(oldest);
    }
  }

  #tableJson(rows: CellRows): Uint8Array {
    const known = this.#tables.get(rows);
    if (known !== undefined) return known;
    const texts: string[] = [];
    for (const [id, cells] of rows) texts.push(`${JSON.stringify(id)}:${this.#rowJson(cells)}`);
    const json = encoder.encode(`{${texts.join(",")}}`);
    this.#tables.set(rows, json);
    return json;
  }

  #rowJson(cells: Cells): string {
    const known = this.#rows.get(cells);
    if (known !== undefined) return known;
    const json = JSON.stringify(Object.fromEntries(cells));
    this.#rows.set(cells, json);
    return json;
  }
}
