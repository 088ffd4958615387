import { type ChangeSet, EVENT_CELLS } from "@pinwright/contract";
import type { Shelf } from "../books/shelf.ts";
import type { Hub } from "./hub.ts";

/** Sets that are remembered as announced. */
const KEPT = 2_000;

/** Tells every open browser of a change set, once, and lets the book in memory follow. */
export class Announcer {
  readonly #shelf: Shelf;
  readonly #hub: Hub;
  readonly #told = new Set<string>();

  constructor(shelf: Shelf, hub: Hub) {
    this.#shelf = shelf;
    this.#hub = hub;
  }

  announce(book: string, set: ChangeSet): void {
    const key = `${book} ${set.no}`;
    if (this.#told.has(key)) return;
    this.#told.add(key);
    for (const oldest of this.#told) {
      if (this.#told.size <= KEPT) break;
      this.#told.delete(oldest);
    }
    this.#shelf.took(book, set);
    this.#hub.push({ type: "change", book, no: set.no, set: set.changes.length > EVENT_CELLS ? null : set });
  }

  /** The files of a book are no longer the same. */
  files(book: string): void {
    this.#hub.push({ type: "files", book });
  }

  /** The list of books is no longer the same. */
  books(): void {
    this.#hub.push({ type: "books" });
  }
}
