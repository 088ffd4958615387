import type { Store } from "@pinwright/store";
import type { Announcer } from "./announcer.ts";

/** How often another server's changes are looked for; they are to be seen within a second. */
const EVERY_MS = 400;
/** Sets that are passed on one by one; of more, browsers hear the last ones and ask for those before. */
const MOST = 50;

/** Follows what other servers do to the same store. */
export class Others {
  readonly #store: Store;
  readonly #announcer: Announcer;
  readonly #seen = new Map<string, number>();
  readonly #timer: NodeJS.Timeout;
  #state = "";
  #busy = false;

  constructor(store: Store, announcer: Announcer, log: (line: string) => void) {
    this.#store = store;
    this.#announcer = announcer;
    this.#timer = setInterval(() => {
      this.#look().catch((error: unknown) => log(`looking for changes of other servers: ${String(error)}`));
    }, EVERY_MS);
    this.#timer.unref();
  }

  close(): void {
    clearInterval(this.#timer);
  }

  async #look(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    try {
      const books = await this.#store.books.list();
      const state = books.map((book) => `${book.id} ${book.archived}`).join("\n");
      if (this.#state !== "" && state !== this.#state) this.#announcer.books();
      this.#state = state;
      for (const { id, changeNo } of books) {
        const seen = this.#seen.get(id) ?? changeNo;
        this.#seen.set(id, changeNo);
        if (seen < changeNo) await this.#passOn(id, Math.max(seen, changeNo - MOST));
      }
    } finally {
      this.#busy = false;
    }
  }

  async #passOn(book: string, after: number): Promise<void> {
    const outcome = await this.#store.books.since(book, after, MOST);
    if ("done" in outcome) for (const set of outcome.done) this.#announcer.announce(book, set);
  }
}
