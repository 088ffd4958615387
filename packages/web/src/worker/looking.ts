import type { CellTables } from "@pinwright/book";
import { call, Refused } from "../api/call.ts";
import { tablesOf } from "./sync/server-book.ts";

/** What of a book is looked at: a release by its name, or the book as it is now. */
export interface Looked {
  readonly release: string | null;
  /** `none`: there is no such release; `away`: it could not be fetched. Both show the book as it is now. */
  readonly is: "shown" | "none" | "away";
}

/** Tables as a release keeps them. */
export interface Past {
  readonly tables: CellTables;
  readonly shop: CellTables;
}

/** Releases that are kept in memory. */
const KEPT = 2;
const NOW: Looked = { release: null, is: "shown" };

async function fetchPast(book: string, release: string): Promise<Past> {
  const { tables, shop } = await call("releasedLine", { parts: { book, release } });
  return { tables: tablesOf(tables), shop: tablesOf(shop) };
}

/** Minds whether a book is looked at as it is now or as it was released, and fetches what a release keeps. */
export class Looking {
  readonly #changed: () => void;
  readonly #kept = new Map<string, Past>();
  #book: string | null = null;
  #wanted: string | null = null;
  #missing: Looked | null = null;

  /** @param changed called when something else is to be looked at */
  constructor(changed: () => void) {
    this.#changed = changed;
  }

  /** The book is open: what was asked for before can be fetched. */
  opened(book: string): void {
    this.#book = book;
    void this.#fetch();
  }

  /** Looks at a release; null: at the book as it is now. Asked again, what could not be fetched is tried once more. */
  look(release: string | null): void {
    this.#wanted = release;
    this.#missing = null;
    void this.#fetch();
  }

  /** Tables of the release that is looked at; null: it is the book as it is now. */
  get past(): Past | null {
    return this.#wanted === null ? null : (this.#kept.get(this.#wanted) ?? null);
  }

  /** What is looked at; null while it is on its way. */
  get looked(): Looked | null {
    if (this.#wanted === null) return NOW;
    return this.#kept.has(this.#wanted) ? { release: this.#wanted, is: "shown" } : this.#missing;
  }

  async #fetch(): Promise<void> {
    const [book, release] = [this.#book, this.#wanted];
    if (book === null) return;
    if (release !== null && !this.#kept.has(release)) {
      try {
        const past = await fetchPast(book, release);
        const [oldest] = this.#kept.keys();
        if (oldest !== undefined && this.#kept.size >= KEPT) this.#kept.delete(oldest);
        this.#kept.set(release, past);
      } catch (error) {
        if (this.#wanted !== release) return;
        const isNone = error instanceof Refused && error.problem.code === "not-found";
        this.#missing = { release, is: isNone ? "none" : "away" };
      }
      if (this.#wanted !== release) return;
    }
    this.#changed();
  }
}
