import type { CellTables } from "@pinwright/book";
import type { BookRows, ChangeSet, Problem } from "@pinwright/contract";
import { call, Refused, Unreachable } from "../../api/call.ts";
import type { SyncState } from "../protocol.ts";
import { type PendingSet, Sync } from "./sync.ts";

/** Cells as JSON to cells as maps. */
export const tablesOf = (rows: BookRows["tables"]): CellTables =>
  new Map(
    Object.entries(rows).map(([table, byId]) => [
      table,
      new Map(Object.entries(byId).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );

/** What a book of the server tells whoever holds it. */
export interface ServerBookEvents {
  /** The tables are others than before. */
  readonly changed: () => void;
  readonly sync: (state: SyncState) => void;
  readonly refused: (set: PendingSet, problem: Problem) => void;
}

/** All rows of a book as the server has them now. */
export const fetchRows = (id: string): Promise<BookRows> => call("rows", { parts: { book: id } });

/** Wait before the n-th try again. */
const waitMs = (tries: number): number => Math.min(15_000, 500 * 2 ** tries);

/**
 * A book of the server, held in this browser: edits are shown at once and sent one after the other, each with an
 * id of its own so that sending again is harmless; what others do comes in by its number.
 */
export class ServerBook {
  readonly id: string;
  readonly #token: string | null;
  readonly #events: ServerBookEvents;
  readonly #sync: Sync;
  #sending: Promise<void> | null = null;
  #catching: Promise<void> | null = null;
  #tries = 0;

  private constructor(id: string, token: string | null, sync: Sync, events: ServerBookEvents) {
    this.id = id;
    this.#token = token;
    this.#sync = sync;
    this.#events = events;
  }

  /** @param fetched rows that were fetched in expectation; whatever has changed since is caught up on later */
  static async open(
    id: string,
    token: string | null,
    events: ServerBookEvents,
    fetched: Promise<BookRows> | undefined,
  ): Promise<ServerBook> {
    const rows = await (fetched?.catch(() => fetchRows(id)) ?? fetchRows(id));
    return new ServerBook(id, token, new Sync(tablesOf(rows.tables), rows.book.changeNo), events);
  }

  get tables(): CellTables {
    return this.#sync.tables;
  }

  get changeNo(): number {
    return this.#sync.changeNo;
  }

  /** Does an edit; false when it does not fit what is on the screen. */
  edit(set: PendingSet): boolean {
    if (!this.#sync.edit(set)) return false;
    this.#events.changed();
    this.send();
    return true;
  }

  /** A change set came in; without its cells it is fetched. */
  heard(no: number, set: ChangeSet | null): void {
    if (no <= this.#sync.changeNo) return;
    if (set === null || this.#sync.take(set) === "gap") void this.catchUp();
    else this.#events.changed();
  }

  /** Fetches every change set that is missing here. */
  catchUp(): Promise<void> {
    this.#catching ??= this.#catch().finally(() => {
      this.#catching = null;
    });
    return this.#catching;
  }

  async #catch(): Promise<void> {
    try {
      for (;;) {
        const sets = await call("changesSince", {
          parts: { book: this.id },
          query: { since: this.#sync.changeNo },
        });
        if (sets.length === 0) return;
        for (const set of sets) {
          if (this.#sync.take(set) !== "gap") continue;
          const rows = await fetchRows(this.id);
          this.#sync.reset(tablesOf(rows.tables), rows.book.changeNo);
          break;
        }
        this.#events.changed();
      }
    } catch (error) {
      if (!(error instanceof Unreachable || error instanceof Refused)) throw error;
      this.#events.sync({ state: "offline" });
    }
  }

  /** Sends what waits, one set after the other. */
  send(): void {
    this.#sending ??= this.#sendAll().finally(() => {
      this.#sending = null;
    });
  }

  /** Resolves when nothing waits any more, or nothing can be sent. */
  async settled(): Promise<boolean> {
    this.send();
    await this.#sending;
    return this.#sync.pending.length === 0;
  }

  async #sendAll(): Promise<void> {
    for (;;) {
      const [set] = this.#sync.pending;
      if (set === undefined) break;
      this.#events.sync({ state: "saving" });
      const sent = await this.#sendOne(set);
      if (!sent) return;
    }
    this.#events.sync({ state: "saved" });
  }

  async #sendOne(set: PendingSet): Promise<boolean> {
    try {
      const { no } = await call("change", {
        parts: { book: this.id },
        body: { id: set.id, note: set.note, changes: [...set.changes] },
        token: this.#token,
      });
      this.#tries = 0;
      if (this.#sync.take({ no, id: set.id, changes: set.changes }) === "gap") await this.catchUp();
      return !this.#sync.pending.some((pending) => pending.id === set.id);
    } catch (error) {
      if (error instanceof Refused) {
        if (error.problem.code === "conflict") await this.catchUp();
        this.#sync.drop(set.id);
        this.#events.changed();
        this.#events.refused(set, error.problem);
        return true;
      }
      if (!(error instanceof Unreachable)) throw error;
      this.#events.sync({ state: "offline" });
      setTimeout(() => this.send(), waitMs(this.#tries++));
      return false;
    }
  }
}
