import { setImmediate } from "node:timers/promises";
import type { Fact } from "@pinwright/contract";
import type { Database } from "../database/database.ts";
import type { TakenFacts } from "../store.ts";
import type { SentFacts } from "./judge.ts";
import { takeFacts } from "./take.ts";

interface Waiting extends SentFacts {
  readonly answer: (taken: TakenFacts) => void;
  readonly fail: (reason: unknown) => void;
}

/** Most requests and facts of one transaction. */
const REQUESTS_AT_ONCE = 200;
const FACTS_AT_ONCE = 4_000;

/**
 * Facts of many stations that send at once. Those that came while the last transaction ran go into the next one together,
 * so that one wait for the disk serves them all.
 */
export class FactQueue {
  readonly #database: Database;
  readonly #now: () => string;
  readonly #waiting: Waiting[] = [];
  #running = false;

  constructor(database: Database, now: () => string) {
    this.#database = database;
    this.#now = now;
  }

  take(facts: readonly Fact[], refuse: SentFacts["refuse"]): Promise<TakenFacts> {
    return new Promise((answer, fail) => {
      this.#waiting.push({ facts, refuse, answer, fail });
      if (!this.#running) void this.#run();
    });
  }

  async #run(): Promise<void> {
    this.#running = true;
    while (this.#waiting.length > 0) {
      // What has arrived already is read first: a database that answers at once would take each request by itself.
      await setImmediate();
      let facts = 0;
      const end = this.#waiting.findIndex((one, i) => {
        facts += one.facts.length;
        return i > 0 && (i >= REQUESTS_AT_ONCE || facts > FACTS_AT_ONCE);
      });
      const batch = this.#waiting.splice(0, end < 0 ? this.#waiting.length : end);
      if (!(await this.#settle(batch))) for (const one of batch) await this.#settle([one]);
    }
    this.#running = false;
  }

  /** Answers a batch. One of several that fails is left unanswered (false), since one of them may have failed it for all. */
  async #settle(batch: readonly Waiting[]): Promise<boolean> {
    const { kind, write } = this.#database;
    try {
      const taken = await write((db) => takeFacts(db, kind, batch, this.#now()));
      taken.forEach((one, i) => {
        batch[i]?.answer(one);
      });
      return true;
    } catch (error) {
      if (batch.length > 1) return false;
      for (const { fail } of batch) fail(error);
      return true;
    }
  }
}
