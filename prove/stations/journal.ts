import { appendFileSync, existsSync, readFileSync } from "node:fs";
import { type Fact, factSchema } from "@pinwright/contract";
import { freshEnd } from "../../packages/web/src/floor/outbox/outbox.ts";
import type { KeptFact, OutboxStore, StreamEnd } from "../../packages/web/src/floor/outbox/store.ts";

/** Facts of a journal, in the order in which they were written. */
export const readJournal = (file: string): readonly Fact[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => factSchema.parse(JSON.parse(line)));

/**
 * What a station keeps: every fact goes to the end of a file before it counts as written, and so before it is sent. Which
 * ones the server has is known in memory only; opened again, the station sends them all once more.
 */
export class Journal implements OutboxStore {
  readonly #file: string;
  #end: StreamEnd = freshEnd();
  readonly #facts: KeptFact[];
  readonly #places: Map<string, number>;
  /** All facts before this place are at the server. */
  #sentTo = 0;
  /** How often the stream was given up; a station that nothing else writes for never does. */
  renewals = 0;

  constructor(file: string) {
    this.#file = file;
    const facts = existsSync(file) ? readJournal(file) : [];
    this.#facts = facts.map((fact) => ({ fact, sentAt: null, why: null }));
    this.#places = new Map(facts.map(({ hash }, i) => [hash, i]));
    const last = facts.at(-1);
    if (last !== undefined) this.#end = { stream: last.stream, seq: last.seq, hash: last.hash };
  }

  readonly end = async (): Promise<StreamEnd> => this.#end;

  readonly append = async (after: StreamEnd, facts: readonly Fact[]): Promise<boolean> => {
    const last = facts.at(-1);
    if (after.stream !== this.#end.stream || after.seq !== this.#end.seq || last === undefined) return false;
    appendFileSync(this.#file, facts.map((fact) => `${JSON.stringify(fact)}\n`).join(""));
    for (const fact of facts) {
      this.#places.set(fact.hash, this.#facts.length);
      this.#facts.push({ fact, sentAt: null, why: null });
    }
    this.#end = { stream: last.stream, seq: last.seq, hash: last.hash };
    return true;
  };

  readonly waiting = async (limit: number): Promise<readonly Fact[]> => {
    while (this.#facts[this.#sentTo]?.sentAt != null) this.#sentTo++;
    const found: Fact[] = [];
    for (let i = this.#sentTo; i < this.#facts.length && found.length < limit; i++) {
      const kept = this.#facts[i];
      if (kept?.sentAt === null) found.push(kept.fact);
    }
    return found;
  };

  readonly settle = async (facts: readonly KeptFact[]): Promise<void> => {
    for (const kept of facts) {
      const place = this.#places.get(kept.fact.hash);
      if (place !== undefined) this.#facts[place] = kept;
    }
  };

  readonly sendAgain = async (stream: string, fromSeq: number): Promise<void> => {
    for (const [i, kept] of this.#facts.entries())
      if (kept.fact.stream === stream && kept.fact.seq >= fromSeq)
        this.#facts[i] = { ...kept, sentAt: null, why: null };
    this.#sentTo = 0;
  };

  readonly renew = async (): Promise<void> => {
    this.renewals++;
    this.#end = freshEnd();
  };

  readonly all = async (): Promise<readonly KeptFact[]> => this.#facts;

  // The journal is what the server's records are held against: nothing of it goes.
  readonly forget = async (): Promise<void> => undefined;
}
