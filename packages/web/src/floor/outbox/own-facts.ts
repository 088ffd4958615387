import type { Fact } from "@pinwright/contract";
import type { KeptFact, OutboxStore, StreamEnd } from "./store.ts";

/** The device's store with what is in it at hand, for whoever looks at it. */
export class OwnFacts implements OutboxStore {
  readonly #store: OutboxStore;
  readonly #listeners = new Set<() => void>();
  #facts: readonly KeptFact[] = [];

  private constructor(store: OutboxStore) {
    this.#store = store;
  }

  static async of(store: OutboxStore): Promise<OwnFacts> {
    const own = new OwnFacts(store);
    await own.#look();
    return own;
  }

  /** Everything that this device wrote and still keeps, in its order. */
  get facts(): readonly KeptFact[] {
    return this.#facts;
  }

  /** Calls back whenever `facts` is another. */
  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly end = (): Promise<StreamEnd> => this.#store.end();

  readonly append = async (after: StreamEnd, facts: readonly Fact[]): Promise<boolean> => {
    const isThere = await this.#store.append(after, facts);
    if (isThere) this.#tell([...this.#facts, ...facts.map((fact) => ({ fact, sentAt: null, why: null }))]);
    return isThere;
  };

  readonly waiting = (limit: number): Promise<readonly Fact[]> => this.#store.waiting(limit);

  readonly settle = async (facts: readonly KeptFact[]): Promise<void> => {
    await this.#store.settle(facts);
    const settled = new Map(facts.map((one) => [one.fact.hash, one]));
    this.#tell(this.#facts.map((one) => settled.get(one.fact.hash) ?? one));
  };

  readonly sendAgain = async (stream: string, fromSeq: number): Promise<void> => {
    await this.#store.sendAgain(stream, fromSeq);
    await this.#look();
  };

  readonly renew = (): Promise<void> => this.#store.renew();

  readonly all = (): Promise<readonly KeptFact[]> => this.#store.all();

  readonly forget = async (sentBefore: string): Promise<void> => {
    await this.#store.forget(sentBefore);
    await this.#look();
  };

  async #look(): Promise<void> {
    this.#tell(await this.#store.all());
  }

  #tell(facts: readonly KeptFact[]): void {
    this.#facts = facts;
    for (const listener of this.#listeners) listener();
  }
}
