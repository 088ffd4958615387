import type { Acknowledged, ChangeSet } from "@pinwright/contract";
import type { Database } from "../database/database.ts";
import type { Outcome } from "../store.ts";
import { applyDrafts, type Draft } from "./apply-drafts.ts";
import { changesJson } from "./cells-json.ts";
import { changeSet, SET_COLUMNS } from "./heads.ts";
import { lockBook, repeated } from "./lock.ts";

export type Change = Acknowledged & { readonly set: ChangeSet };

interface Waiting {
  readonly draft: Draft;
  readonly answer: (outcome: Outcome<Change>) => void;
  readonly fail: (reason: unknown) => void;
}

/** Most that goes into one transaction. */
const SETS_AT_ONCE = 100;
const CELLS_AT_ONCE = 10_000;

/**
 * Change sets of many people who write to a book at once. Those that came while the last transaction ran go into the
 * next one together, each accepted or refused by itself, so that one wait for the disk serves them all.
 */
export class ChangeQueue {
  readonly #database: Database;
  readonly #now: () => string;
  /** Per book, while a transaction of it runs. */
  readonly #waiting = new Map<string, Waiting[]>();

  constructor(database: Database, now: () => string) {
    this.#database = database;
    this.#now = now;
  }

  change(book: string, draft: Draft): Promise<Outcome<Change>> {
    return new Promise((answer, fail) => {
      const waiting = this.#waiting.get(book);
      if (waiting) {
        waiting.push({ draft, answer, fail });
        return;
      }
      const queue: Waiting[] = [{ draft, answer, fail }];
      this.#waiting.set(book, queue);
      void this.#run(book, queue);
    });
  }

  async #run(book: string, queue: Waiting[]): Promise<void> {
    while (queue.length > 0) {
      const batch = queue.splice(0, together(queue));
      if (!(await this.#settle(book, batch)) && batch.length > 1) {
        for (const one of batch) await this.#settle(book, [one]);
      }
    }
    this.#waiting.delete(book);
  }

  /** Answers a batch. A batch of several that fails is left unanswered (false), since one may have failed it for all. */
  async #settle(book: string, batch: readonly Waiting[]): Promise<boolean> {
    try {
      const outcomes = await this.#commit(
        book,
        batch.map(({ draft }) => draft),
      );
      for (const [index, { answer }] of batch.entries()) answer(outcomes[index] ?? { refused: "not-found" });
      return true;
    } catch (error) {
      if (batch.length > 1) return false;
      for (const { fail } of batch) fail(error);
      return true;
    }
  }

  #commit(book: string, drafts: readonly Draft[]): Promise<readonly Outcome<Change>[]> {
    const { kind, write } = this.#database;
    return write(async (db) => {
      const row = await lockBook(db, kind, book);
      if (row === undefined) return [];
      const ids = drafts.map(({ id }) => id);
      const rows = await db
        .selectFrom("change_sets")
        .select(SET_COLUMNS)
        .where("book", "=", book)
        .where("id", "in", ids)
        .execute();
      const made = new Map(rows.map((set) => [set.id, changeSet(set)]));
      const fresh = drafts.filter(({ id }) => !made.has(id));
      const outcomes = [...(await applyDrafts(db, row, fresh, this.#now()))];
      return drafts.map((draft): Outcome<Change> => {
        const before = made.get(draft.id);
        const outcome = before ? again(before, draft) : outcomes.shift();
        if (outcome === undefined) throw new RangeError("Every draft has an outcome.");
        if ("refused" in outcome) return outcome;
        return { done: { no: outcome.done.no, repeated: before !== undefined, set: outcome.done } };
      });
    });
  }
}

const again = (set: ChangeSet, draft: Draft): Outcome<ChangeSet> =>
  changesJson(set.changes) === changesJson(draft.changes) ? repeated(set, draft) : { refused: "taken" };

/** How many from the front of a queue go into one transaction: as many as fit, no request twice. */
function together(queue: readonly Waiting[]): number {
  const ids = new Set<string>();
  let cells = 0;
  for (const [index, { draft }] of queue.entries()) {
    cells += draft.changes.length;
    if (index > 0 && (index === SETS_AT_ONCE || cells > CELLS_AT_ONCE || ids.has(draft.id))) return index;
    ids.add(draft.id);
  }
  return queue.length;
}
