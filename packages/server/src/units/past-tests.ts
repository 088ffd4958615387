import { applyChanges, type CellRows } from "@pinwright/book";
import type { ChangeSet } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import type { HeldBook } from "../books/shelf.ts";

/** Sets that are read at once. */
const SETS = 200;
const NO_ROWS: CellRows = new Map();

interface Since {
  /** Number of the last set that was looked at. */
  readonly upTo: number;
  /** Those of them that changed the tests, with what they changed there, in their order. */
  readonly sets: readonly Pick<ChangeSet, "no" | "changes">[];
}

/** The tests of books as they were when units were begun: no later change of a book lets a unit do without them. */
export class PastTests {
  readonly #books: Store["books"];
  readonly #since = new Map<string, Since>();

  constructor(books: Store["books"]) {
    this.#books = books;
  }

  /** Rows of the table as they were after a set; null where they are the same in the book as it is given. */
  async at(book: string, no: number, now: HeldBook): Promise<CellRows | null> {
    const { changeNo } = now.info;
    const { sets } = await this.#changes(book, no, changeNo);
    // More may be known than led to this book: it may be one that was released since.
    const changes = sets.flatMap((set) => (set.no <= changeNo ? set.changes : []));
    if (changes.length === 0) return null;
    const back = changes.map((change) => ({ ...change, from: change.to, to: change.from })).reverse();
    const { tables } = applyChanges(new Map([["tests", now.tables.get("tests") ?? NO_ROWS]]), back);
    // Sets lead from one state to the next; if these did not, nothing would be known of the past.
    return tables?.get("tests") ?? null;
  }

  async #changes(book: string, no: number, upTo: number): Promise<Since> {
    const key = `${book} ${no}`;
    let since = this.#since.get(key) ?? { upTo: no, sets: [] };
    while (since.upTo < upTo) {
      const outcome = await this.#books.since(book, since.upTo, SETS);
      const found = "done" in outcome ? outcome.done.filter((set) => set.no <= upTo) : [];
      const last = found.at(-1);
      if (last === undefined) break;
      const sets = found.flatMap((set) => {
        const changes = set.changes.filter(({ table }) => table === "tests");
        return changes.length === 0 ? [] : [{ no: set.no, changes }];
      });
      since = { upTo: last.no, sets: [...since.sets, ...sets] };
    }
    this.#since.set(key, since);
    return since;
  }
}
