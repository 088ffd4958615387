import { applyChanges, type CellChange, type CellRows } from "@pinwright/book";
import type { Store } from "@pinwright/store";
import type { HeldBook } from "../books/shelf.ts";

/** Sets that are read at once. */
const SETS = 200;
const NO_ROWS: CellRows = new Map();

interface Since {
  /** Number of the last set that was looked at. */
  readonly upTo: number;
  /** What these sets changed in the tests, in their order. */
  readonly changes: readonly CellChange[];
}

/** The tests of books as they were when units were begun: no later change of a book lets a unit do without them. */
export class PastTests {
  readonly #books: Store["books"];
  readonly #since = new Map<string, Since>();

  constructor(books: Store["books"]) {
    this.#books = books;
  }

  /** Rows of the table as they were after a set; null where they are the same now. */
  async at(book: string, no: number, now: HeldBook): Promise<CellRows | null> {
    const { changes } = await this.#changes(book, no, now.info.changeNo);
    if (changes.length === 0) return null;
    const back = changes.map((change) => ({ ...change, from: change.to, to: change.from })).reverse();
    const { tables } = applyChanges(new Map([["tests", now.tables.get("tests") ?? NO_ROWS]]), back);
    // Sets lead from one state to the next; if these did not, nothing would be known of the past.
    return tables?.get("tests") ?? null;
  }

  async #changes(book: string, no: number, upTo: number): Promise<Since> {
    const key = `${book} ${no}`;
    let since = this.#since.get(key) ?? { upTo: no, changes: [] };
    while (since.upTo < upTo) {
      const outcome = await this.#books.since(book, since.upTo, SETS);
      const sets = "done" in outcome ? outcome.done.filter((set) => set.no <= upTo) : [];
      const last = sets.at(-1);
      if (last === undefined) break;
      const changes = sets.flatMap((set) => set.changes.filter(({ table }) => table === "tests"));
      since = { upTo: last.no, changes: [...since.changes, ...changes] };
    }
    this.#since.set(key, since);
    return since;
  }
}
