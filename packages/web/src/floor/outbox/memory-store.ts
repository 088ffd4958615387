import type { Fact } from "@pinwright/contract";
import { freshEnd } from "./outbox.ts";
import type { KeptFact, OutboxStore, StreamEnd } from "./store.ts";

/** What a device keeps, in memory: for tests of what is built on it. */
export class MemoryStore implements OutboxStore {
  #end: StreamEnd = freshEnd();
  #facts: readonly KeptFact[] = [];

  readonly end = async (): Promise<StreamEnd> => this.#end;

  readonly append = async (after: StreamEnd, facts: readonly Fact[]): Promise<boolean> => {
    if (after.stream !== this.#end.stream || after.seq !== this.#end.seq) return false;
    const last = facts.at(-1);
    if (last !== undefined) this.#end = { stream: last.stream, seq: last.seq, hash: last.hash };
    this.#facts = [...this.#facts, ...facts.map((fact) => ({ fact, sentAt: null, why: null }))];
    return true;
  };

  readonly waiting = async (limit: number): Promise<readonly Fact[]> =>
    this.#facts
      .filter(({ sentAt }) => sentAt === null)
      .slice(0, limit)
      .map(({ fact }) => fact);

  readonly settle = async (facts: readonly KeptFact[]): Promise<void> => {
    const settled = new Map(facts.map((one) => [one.fact.hash, one]));
    this.#facts = this.#facts.map((one) => settled.get(one.fact.hash) ?? one);
  };

  readonly sendAgain = async (stream: string, fromSeq: number): Promise<void> => {
    this.#facts = this.#facts.map((one) =>
      one.fact.stream === stream && one.fact.seq >= fromSeq ? { ...one, sentAt: null, why: null } : one,
    );
  };

  readonly renew = async (): Promise<void> => {
    this.#end = freshEnd();
  };

  readonly all = async (): Promise<readonly KeptFact[]> => this.#facts;

  readonly forget = async (sentBefore: string): Promise<void> => {
    this.#facts = this.#facts.filter(({ sentAt }) => sentAt === null || sentAt >= sentBefore);
  };
}
